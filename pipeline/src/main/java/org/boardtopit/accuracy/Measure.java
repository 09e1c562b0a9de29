package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boardtopit.measures.BodyAngle;

/**
 * A measure of an attempt whose error is counted.
 *
 * @param name as in the report; unique
 * @param group what the report pools it with
 * @param unit of the reported errors
 * @param perUnit how many of that unit make one of the pipeline's own (seconds, metres, degrees, points)
 */
record Measure(String name, Group group, String unit, double perUnit) {

    /** What belongs together in the report. */
    enum Group {
        TIMES("contact times"),
        APPROACH("approach contacts"),
        PLACES("places"),
        DISTANCES("distances"),
        SHARES("shares"),
        SPEEDS("speeds"),
        ANGLES_TOUCHDOWN("angles at touchdown"),
        ANGLES_TOE_OFF("angles at toe-off");

        private final String label;

        Group(String label) {
            this.label = label;
        }

        String label() {
            return label;
        }
    }

    static final Measure TOUCHDOWN = new Measure("touchdown", Group.TIMES, "ms", 1000);
    static final Measure PIT_TOUCHDOWN = new Measure("touchdown in the pit", Group.TIMES, "ms", 1000);
    static final Measure TOE_OFF = new Measure("toe-off", Group.TIMES, "ms", 1000);
    static final Measure SUPPORT = new Measure("support time", Group.TIMES, "ms", 1000);
    static final Measure APPROACH_TOUCHDOWN = new Measure("touchdown, approach", Group.APPROACH, "ms", 1000);
    static final Measure APPROACH_TOE_OFF = new Measure("toe-off, approach", Group.APPROACH, "ms", 1000);
    static final Measure APPROACH_SUPPORT = new Measure("support time, approach", Group.APPROACH, "ms", 1000);
    static final Measure TOE_PLACE = new Measure("toe place", Group.PLACES, "cm", 100);
    static final Measure TOE_TO_BOARD = new Measure("toe to board", Group.PLACES, "cm", 100);
    static final Measure PIT_MARK = new Measure("rear heel in the pit", Group.PLACES, "cm", 100);
    static final Measure DISTANCE = new Measure("phase distance", Group.DISTANCES, "cm", 100);
    static final Measure EFFECTIVE = new Measure("effective distance", Group.DISTANCES, "cm", 100);
    static final Measure SHARE = new Measure("share", Group.SHARES, "points", 1);
    static final Measure LEAD = new Measure("lead", Group.SHARES, "points", 1);
    static final Measure VX = new Measure("vx at take-off", Group.SPEEDS, "m/s", 1);
    static final Measure VY = new Measure("vy at take-off", Group.SPEEDS, "m/s", 1);
    static final Measure TAKEOFF_ANGLE = new Measure("take-off angle", Group.SPEEDS, "deg", 1);
    static final Measure APPROACH_SPEED = new Measure("approach speed", Group.SPEEDS, "m/s", 1);
    static final Measure SPEED_CHANGE = new Measure("speed change", Group.SPEEDS, "m/s", 1);
    static final Measure LAST_STRIDES = new Measure("last two strides", Group.DISTANCES, "cm", 100);
    static final Measure COM_HEIGHT = new Measure("centre of mass at take-off", Group.SPEEDS, "cm", 100);
    static final Measure GRAVITY = new Measure("gravity ratio", Group.SPEEDS, "%", 100);

    /** In the order of the report. */
    static final List<BodyAngle> ANGLES = List.of(
            BodyAngle.KNEE,
            BodyAngle.HIP,
            BodyAngle.TRUNK,
            BodyAngle.ANKLE,
            BodyAngle.THIGH,
            BodyAngle.SHANK,
            BodyAngle.FREE_KNEE,
            BodyAngle.FREE_THIGH,
            BodyAngle.FOOT_AHEAD);

    static Measure angle(BodyAngle angle, boolean touchdown) {
        String name = angle.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        boolean length = angle == BodyAngle.FOOT_AHEAD;
        return new Measure(
                name + (touchdown ? " at touchdown" : " at toe-off"),
                touchdown ? Group.ANGLES_TOUCHDOWN : Group.ANGLES_TOE_OFF,
                length ? "cm" : "deg",
                length ? 100 : 1);
    }

    /** All, in the order of the report. */
    static List<Measure> all() {
        List<Measure> all = new ArrayList<>(List.of(
                TOUCHDOWN,
                PIT_TOUCHDOWN,
                TOE_OFF,
                SUPPORT,
                APPROACH_TOUCHDOWN,
                APPROACH_TOE_OFF,
                APPROACH_SUPPORT,
                TOE_PLACE,
                TOE_TO_BOARD,
                PIT_MARK,
                DISTANCE,
                EFFECTIVE,
                SHARE,
                LEAD,
                VX,
                VY,
                TAKEOFF_ANGLE,
                SPEED_CHANGE,
                LAST_STRIDES,
                APPROACH_SPEED,
                COM_HEIGHT,
                GRAVITY));
        for (boolean touchdown : new boolean[] {true, false}) {
            ANGLES.forEach(angle -> all.add(angle(angle, touchdown)));
        }
        return all;
    }
}
