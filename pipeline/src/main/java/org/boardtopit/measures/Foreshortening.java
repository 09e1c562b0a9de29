package org.boardtopit.measures;

/**
 * What a camera that does not look square at the runway does to the angle of a line in the running plane.
 *
 * <p>A yaw phi (about the vertical, from square) shortens what lies along the runway: tan(seen) = tan(true) cos(phi), for an
 * angle from the vertical. A tilt eps (camera looking down or up) shortens heights: tan(seen) = tan(true) / cos(eps). Both
 * hold for a camera far away; near the edge of a wide picture the direction to the athlete counts, not the lens axis.
 */
public final class Foreshortening {

    private Foreshortening() {}

    /** Angle from the vertical as seen with a yaw, degrees; -90 to 90 in, -90 to 90 out. */
    public static double seenDeg(double trueDeg, double yawDeg) {
        return scaled(trueDeg, Math.cos(Math.toRadians(yawDeg)));
    }

    /** True angle from the vertical of one seen with a known yaw, degrees; -90 to 90, yaw less than 90 in size. */
    public static double correctedDeg(double seenDeg, double yawDeg) {
        if (!(Math.abs(yawDeg) < 90)) {
            throw new IllegalArgumentException("a yaw of 90 degrees or more shows nothing of the side, was " + yawDeg);
        }
        return scaled(seenDeg, 1 / Math.cos(Math.toRadians(yawDeg)));
    }

    /** Angle from the vertical as seen by a camera tilted up or down, degrees. */
    public static double seenWithTiltDeg(double trueDeg, double tiltDeg) {
        return scaled(trueDeg, 1 / Math.cos(Math.toRadians(tiltDeg)));
    }

    /**
     * Share by which lengths are taken too large when the athlete is nearer than the plane the scale was made for.
     *
     * @param nearerM how much nearer, m, negative when further
     * @param distanceM camera to that plane, m
     */
    public static double scaleError(double nearerM, double distanceM) {
        return nearerM / distanceM;
    }

    /** Sine and cosine instead of the tangent, so that 90 degrees stays 90. */
    private static double scaled(double angleDeg, double factor) {
        double angle = Math.toRadians(angleDeg);
        return Math.toDegrees(Math.atan2(Math.sin(angle) * factor, Math.cos(angle)));
    }
}
