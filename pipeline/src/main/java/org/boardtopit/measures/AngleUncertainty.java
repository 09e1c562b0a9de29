package org.boardtopit.measures;

import org.boardtopit.signal.Point2;

/**
 * Standard deviation of the angles of {@link JointAngles} in degrees, to first order, from points that err independently
 * and alike in both directions.
 *
 * <p>For an angle at V between A and B with arms a = |VA| and b = |VB|, moving A across its arm turns it by 1/a, moving B by
 * 1/b, and moving V by |AB| / (a b):
 *
 * <pre>sd^2 = (sdA / a)^2 + (sdB / b)^2 + (sdV |AB| / (a b))^2   in radians</pre>
 *
 * <p>First order does not know that an inner angle cannot pass 180 degrees: of a straight limb with noise, the angle read
 * is on average some sd too small. Errors shared by the points (a camera off square, see {@link Foreshortening}) are not in
 * it.
 */
public final class AngleUncertainty {

    private AngleUncertainty() {}

    /** Of an inner angle (knee, hip, ankle, elbow). NaN when a point or an sd is unknown or an arm has no length. */
    public static double innerSdDeg(
            Point2 first, Point2 vertex, Point2 second, double sdFirst, double sdVertex, double sdSecond) {
        double a = first.distanceTo(vertex);
        double b = second.distanceTo(vertex);
        if (!(a > 0 && b > 0)) {
            return Double.NaN;
        }
        double ofFirst = sdFirst / a;
        double ofSecond = sdSecond / b;
        double ofVertex = sdVertex * first.distanceTo(second) / (a * b);
        return Math.toDegrees(Math.sqrt(ofFirst * ofFirst + ofSecond * ofSecond + ofVertex * ofVertex));
    }

    /** Of the direction of a line (trunk, shank, thigh, leg plant, head). NaN when unknown or of no length. */
    public static double lineSdDeg(Point2 from, Point2 to, double sdFrom, double sdTo) {
        double length = from.distanceTo(to);
        return length > 0 ? Math.toDegrees(Math.hypot(sdFrom, sdTo) / length) : Double.NaN;
    }

    /** Of the middle of two points, such as both shoulders. */
    public static double sdOfMiddle(double sdFirst, double sdSecond) {
        return Math.hypot(sdFirst, sdSecond) / 2;
    }
}
