package org.boardtopit.measures;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.Function;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/** The numbers of the body in one frame, from the fitted points; NaN where a point is unknown. */
final class Posture {
    /**
     * An arm is told from this angle behind hanging to a turn more: a hand that swings back comes no further than some 100
     * degrees behind, and one that goes over the head comes down behind it (anatomy; common practice, no source).
     */
    private static final double FURTHEST_BACK_DEG = -120;

    private final Function<BodyPoint, Point2> places;
    private final Point2 centreOfMass;

    private Posture(Function<BodyPoint, Point2> places, Point2 centreOfMass) {
        this.places = places;
        this.centreOfMass = centreOfMass;
    }

    /** For a value at an instant that is itself fitted through frames: points that were not fitted are as seen. */
    static Posture at(FittedMotion motion, int frame) {
        return new Posture(p -> motion.place(frame, p), motion.centreOfMass(frame));
    }

    /** For a curve: points that were not fitted are smoothed. */
    static Posture onCurve(FittedMotion motion, int frame) {
        return new Posture(p -> motion.smooth(frame, p), motion.centreOfMass(frame));
    }

    private Point2 at(BodyPoint point) {
        return places.apply(point);
    }

    private Point2 middle(BodyPoint a, BodyPoint b) {
        return at(a).plus(at(b)).times(0.5);
    }

    private Point2 shoulders() {
        return middle(BodyPoint.LEFT_SHOULDER, BodyPoint.RIGHT_SHOULDER);
    }

    /** Middle of both hips. */
    Point2 hips() {
        return middle(BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP);
    }

    /** Middle of both wrists. */
    Point2 wrists() {
        return middle(BodyPoint.LEFT_WRIST, BodyPoint.RIGHT_WRIST);
    }

    /** Middle of the foot: of heel, ankle and toe. */
    Point2 middleOf(Foot foot) {
        return at(foot.heel()).plus(at(foot.ankle())).plus(at(foot.toe())).times(1.0 / 3);
    }

    Point2 heel(Foot foot) {
        return at(foot.heel());
    }

    Point2 centreOfMass() {
        return centreOfMass;
    }

    double kneeDeg(Foot leg) {
        return JointAngles.kneeDeg(at(leg.hip()), at(leg.knee()), at(leg.ankle()));
    }

    double thighDeg(Foot leg) {
        return JointAngles.thighDeg(at(leg.hip()), at(leg.knee()));
    }

    double shankDeg(Foot leg) {
        return JointAngles.shankDeg(at(leg.knee()), at(leg.ankle()));
    }

    double trunkDeg() {
        return JointAngles.trunkDeg(shoulders(), hips());
    }

    double headDeg() {
        return JointAngles.headDeg(middle(BodyPoint.LEFT_EAR, BodyPoint.RIGHT_EAR), at(BodyPoint.NOSE));
    }

    /** Angle between both thighs, 0 or more. */
    double thighSeparationDeg() {
        return Math.abs(thighDeg(Foot.LEFT) - thighDeg(Foot.RIGHT));
    }

    /** Mean of both thigh angles. */
    double meanThighDeg() {
        return (thighDeg(Foot.LEFT) + thighDeg(Foot.RIGHT)) / 2;
    }

    /** Distance from hip to ankle over the length of thigh and shank, in per cent; 100 with a straight knee. */
    double leverPct(Foot leg) {
        Point2 knee = at(leg.knee());
        double length = at(leg.hip()).distanceTo(knee) + knee.distanceTo(at(leg.ankle()));
        return 100 * at(leg.hip()).distanceTo(at(leg.ankle())) / length;
    }

    /** How far the ankle is behind the centre of mass, + when the body has passed it. */
    double pastAnkle(Foot leg) {
        return centreOfMass.x() - at(leg.ankle()).x();
    }

    /** How far a wrist is ahead of its own shoulder. */
    double wristAhead(Foot side) {
        return at(wrist(side)).x() - at(shoulder(side)).x();
    }

    /** Shoulder to wrist, 0 hanging, 90 level ahead, 180 straight up, beyond it behind the head; -120 to 240. */
    double armDeg(Foot side) {
        return inTurn(JointAngles.thighDeg(at(shoulder(side)), at(wrist(side))));
    }

    /** An arm's angle brought into -120 to 240. */
    static double inTurn(double armDeg) {
        double turns = Math.floor((armDeg - FURTHEST_BACK_DEG) / 360);
        return armDeg - 360 * turns;
    }

    /** The shoulder of a side. */
    static BodyPoint shoulder(Foot side) {
        return side == Foot.LEFT ? BodyPoint.LEFT_SHOULDER : BodyPoint.RIGHT_SHOULDER;
    }

    /** The elbow of a side. */
    static BodyPoint elbow(Foot side) {
        return side == Foot.LEFT ? BodyPoint.LEFT_ELBOW : BodyPoint.RIGHT_ELBOW;
    }

    /** The wrist of a side. */
    static BodyPoint wrist(Foot side) {
        return side == Foot.LEFT ? BodyPoint.LEFT_WRIST : BodyPoint.RIGHT_WRIST;
    }

    /** All angles, {@code foot} being the supporting one. */
    Map<BodyAngle, Double> angles(Foot foot) {
        Foot free = foot.other();
        Point2 knee = hips().plus(at(foot.knee()).minus(at(foot.hip())));
        Map<BodyAngle, Double> a = new EnumMap<>(BodyAngle.class);
        a.put(BodyAngle.KNEE, kneeDeg(foot));
        a.put(BodyAngle.HIP, JointAngles.hipDeg(shoulders(), hips(), knee));
        a.put(BodyAngle.ANKLE, JointAngles.ankleDeg(at(foot.knee()), at(foot.ankle()), at(foot.toe())));
        a.put(BodyAngle.TRUNK, trunkDeg());
        a.put(BodyAngle.SHANK, shankDeg(foot));
        a.put(BodyAngle.THIGH, thighDeg(foot));
        a.put(BodyAngle.FREE_KNEE, kneeDeg(free));
        a.put(BodyAngle.FREE_THIGH, thighDeg(free));
        a.put(BodyAngle.LEG_PLANT, JointAngles.legPlantDeg(centreOfMass, at(foot.ankle())));
        a.put(BodyAngle.FOOT_AHEAD, JointAngles.footAhead(at(foot.toe()), centreOfMass));
        a.put(BodyAngle.HEAD, headDeg());
        a.put(BodyAngle.ELBOW_L, elbowDeg(Foot.LEFT));
        a.put(BodyAngle.ELBOW_R, elbowDeg(Foot.RIGHT));
        return a;
    }

    private double elbowDeg(Foot side) {
        return JointAngles.elbowDeg(at(shoulder(side)), at(elbow(side)), at(wrist(side)));
    }
}
