package org.boardtopit.measures;

import org.boardtopit.signal.Point2;

/**
 * Angles of the body in the side view, in degrees.
 *
 * <p>All points lie in one plane with x along the running direction and y up, in any one unit. The angles are projections
 * on that plane, as coaches read them off a picture; they are not the three-dimensional joint angles of the biomechanics
 * societies. An unknown point, or two points in one place, gives NaN.
 */
public final class JointAngles {

    private JointAngles() {}

    /** Knee: inner angle hip - knee - ankle, 0 to 180, 180 straight. Flexion is 180 less this. */
    public static double kneeDeg(Point2 hip, Point2 knee, Point2 ankle) {
        return innerDeg(hip, knee, ankle);
    }

    /** Hip, better "trunk-thigh angle": inner angle shoulder - hip - knee, 0 to 180, 180 straight. */
    public static double hipDeg(Point2 shoulder, Point2 hip, Point2 knee) {
        return innerDeg(shoulder, hip, knee);
    }

    /** Ankle, better "shank-foot angle": inner angle knee - ankle - toe tip, 0 to 180, about 100 to 115 when standing. */
    public static double ankleDeg(Point2 knee, Point2 ankle, Point2 toe) {
        return innerDeg(knee, ankle, toe);
    }

    /** Elbow: inner angle shoulder - elbow - wrist, 0 to 180, 180 straight. */
    public static double elbowDeg(Point2 shoulder, Point2 elbow, Point2 wrist) {
        return innerDeg(shoulder, elbow, wrist);
    }

    /** Trunk lean of the line hips - shoulders from the vertical, -180 to 180, 0 upright, + forward. */
    public static double trunkDeg(Point2 shoulders, Point2 hips) {
        return directionDeg(hips, shoulders, true);
    }

    /** Shank from the vertical, -180 to 180, 0 upright, + when the ankle is ahead of the knee (reaching). */
    public static double shankDeg(Point2 knee, Point2 ankle) {
        return hangingDeg(knee, ankle);
    }

    /** Thigh from hanging straight down, -180 to 180, 0 hanging, 90 level with the knee in front. */
    public static double thighDeg(Point2 hip, Point2 knee) {
        return hangingDeg(hip, knee);
    }

    /**
     * Leg plant: line ankle - hip, or ankle - centre of mass, from the ground in front, 90 with the body above the ankle,
     * less than 90 with the foot ahead of the body. Whoever prints it says which of the two was taken.
     */
    public static double legPlantDeg(Point2 hipOrCentre, Point2 ankle) {
        return atan2Deg(hipOrCentre.y() - ankle.y(), ankle.x() - hipOrCentre.x(), hipOrCentre, ankle);
    }

    /** Head: line ear - nose from the horizontal, -180 to 180, 0 level, + looking up. */
    public static double headDeg(Point2 ear, Point2 nose) {
        return directionDeg(ear, nose, false);
    }

    /**
     * Line through both shoulders in the picture against the horizontal, -90 to 90, + when the shoulder further along the
     * run is the higher one. From the side this mixes sideways lean, turn of the trunk and perspective; it is not the tilt
     * seen from the front.
     */
    public static double shoulderTiltDeg(Point2 shoulder, Point2 otherShoulder) {
        boolean ahead = otherShoulder.x() >= shoulder.x();
        return ahead ? directionDeg(shoulder, otherShoulder, false) : directionDeg(otherShoulder, shoulder, false);
    }

    /** How far the foot (its toe tip) is ahead of the centre of mass, in the unit of the points, + ahead. */
    public static double footAhead(Point2 toe, Point2 centre) {
        return toe.x() - centre.x();
    }

    /** Angle at {@code vertex} between the directions to two other points, 0 to 180. */
    public static double innerDeg(Point2 first, Point2 vertex, Point2 second) {
        Point2 a = first.minus(vertex);
        Point2 b = second.minus(vertex);
        if (!(a.length() > 0 && b.length() > 0)) {
            return Double.NaN;
        }
        // atan2 keeps its precision near 0 and 180, where an arc cosine loses half of its digits.
        return Math.toDegrees(Math.atan2(Math.abs(a.x() * b.y() - a.y() * b.x()), a.x() * b.x() + a.y() * b.y()));
    }

    private static double hangingDeg(Point2 upper, Point2 lower) {
        return atan2Deg(lower.x() - upper.x(), upper.y() - lower.y(), upper, lower);
    }

    private static double directionDeg(Point2 from, Point2 to, boolean fromVertical) {
        Point2 line = to.minus(from);
        return fromVertical ? atan2Deg(line.x(), line.y(), from, to) : atan2Deg(line.y(), line.x(), from, to);
    }

    private static double atan2Deg(double opposite, double adjacent, Point2 a, Point2 b) {
        return a.distanceTo(b) > 0 ? Math.toDegrees(Math.atan2(opposite, adjacent)) : Double.NaN;
    }
}
