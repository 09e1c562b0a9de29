package org.boardtopit.accuracy;

import org.boardtopit.contacts.Foot;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/** The true angles of the body in one frame, in the plane of the run; docs/measures.md defines each. Degrees. */
record TrueBody(FrameTruth frame) {

    private Point2 at(BodyPoint point) {
        return frame.places().get(point);
    }

    private Point2 middle(BodyPoint left) {
        return at(left).plus(at(left.otherSide())).times(0.5);
    }

    /** Direction from one point to another against straight down, + ahead. */
    private static double fromHanging(Point2 from, Point2 to) {
        return Math.toDegrees(Math.atan2(to.x() - from.x(), from.y() - to.y()));
    }

    double thigh(Foot leg) {
        return fromHanging(at(leg.hip()), at(leg.knee()));
    }

    double shank(Foot leg) {
        return fromHanging(at(leg.knee()), at(leg.ankle()));
    }

    /** By the law of cosines. */
    double knee(Foot leg) {
        double thigh = at(leg.hip()).distanceTo(at(leg.knee()));
        double shank = at(leg.knee()).distanceTo(at(leg.ankle()));
        double lever = at(leg.hip()).distanceTo(at(leg.ankle()));
        double cosine = (thigh * thigh + shank * shank - lever * lever) / (2 * thigh * shank);
        return Math.toDegrees(Math.acos(Math.max(-1, Math.min(1, cosine))));
    }

    double leverPct(Foot leg) {
        double length =
                at(leg.hip()).distanceTo(at(leg.knee())) + at(leg.knee()).distanceTo(at(leg.ankle()));
        return 100 * at(leg.hip()).distanceTo(at(leg.ankle())) / length;
    }

    double separation() {
        return Math.abs(thigh(Foot.LEFT) - thigh(Foot.RIGHT));
    }

    double meanThigh() {
        return (thigh(Foot.LEFT) + thigh(Foot.RIGHT)) / 2;
    }

    double trunk() {
        return -fromHanging(middle(BodyPoint.LEFT_SHOULDER), middle(BodyPoint.LEFT_HIP));
    }

    double head() {
        return fromHanging(middle(BodyPoint.LEFT_EAR), at(BodyPoint.NOSE)) - 90;
    }

    /** Beyond straight up it goes on, behind hanging it is negative. */
    double arm(boolean left) {
        BodyPoint shoulder = left ? BodyPoint.LEFT_SHOULDER : BodyPoint.RIGHT_SHOULDER;
        BodyPoint wrist = left ? BodyPoint.LEFT_WRIST : BodyPoint.RIGHT_WRIST;
        double angle = fromHanging(at(shoulder), at(wrist));
        return angle < -120 ? angle + 360 : angle;
    }

    /** Centre of mass ahead of the ankle. */
    double pastAnkle(Foot leg) {
        return frame.comAlongM() - at(leg.ankle()).x();
    }

    double footAlong(Foot leg) {
        return (at(leg.heel()).x() + at(leg.ankle()).x() + at(leg.toe()).x()) / 3;
    }

    double heelAheadOfHips(Foot leg) {
        return at(leg.heel()).x() - middle(BodyPoint.LEFT_HIP).x();
    }

    double wristsBehindHips() {
        return middle(BodyPoint.LEFT_HIP).x() - middle(BodyPoint.LEFT_WRIST).x();
    }
}
