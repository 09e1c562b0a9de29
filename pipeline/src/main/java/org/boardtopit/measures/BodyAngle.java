package org.boardtopit.measures;

import java.util.Locale;

/**
 * What is read of the body at an instant, in degrees ({@link #FOOT_AHEAD} in metres); {@code docs/measures.md} defines each.
 */
public enum BodyAngle {
    KNEE(4),
    HIP(4),
    ANKLE(6),
    TRUNK(2.5),
    SHANK(3.5),
    THIGH(3.5),
    FREE_KNEE(4),
    FREE_THIGH(3.5),
    LEG_PLANT(2),
    FOOT_AHEAD(0.03),
    HEAD(6),
    ELBOW_L(6),
    ELBOW_R(6);

    private final double noise;

    BodyAngle(double noise) {
        this.noise = noise;
    }

    /** Least standard deviation in one frame, in the unit of the value (measured with an ideal square on our footage). */
    double noise() {
        return noise;
    }

    /** Its column in contacts.csv at an instant, {@code touchdown} or {@code toe_off}. */
    public String column(String instant) {
        return name().toLowerCase(Locale.ROOT) + "_" + instant + (this == FOOT_AHEAD ? "_m" : "_deg");
    }
}
