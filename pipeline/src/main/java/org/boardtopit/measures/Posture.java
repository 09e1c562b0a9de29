package org.boardtopit.measures;

import java.util.EnumMap;
import java.util.Map;
import org.boardtopit.contacts.Foot;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.Point2;

/** The angles of the body in one frame, from points as seen; NaN where a point is unknown. */
final class Posture {

    /** What is measured; {@code docs/measures.md} defines each. */
    enum Angle {
        KNEE,
        HIP,
        ANKLE,
        TRUNK,
        SHANK,
        THIGH,
        FREE_KNEE,
        FREE_THIGH,
        LEG_PLANT,
        HEAD,
        ELBOW_L,
        ELBOW_R
    }

    private final MotionTrack motion;
    private final int frame;

    Posture(MotionTrack motion, int frame) {
        this.motion = motion;
        this.frame = frame;
    }

    private Point2 at(BodyPoint point) {
        return motion.seen(frame, point);
    }

    private Point2 middle(BodyPoint a, BodyPoint b) {
        return at(a).plus(at(b)).times(0.5);
    }

    private Point2 shoulders() {
        return middle(BodyPoint.LEFT_SHOULDER, BodyPoint.RIGHT_SHOULDER);
    }

    private Point2 hips() {
        return middle(BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP);
    }

    /** All angles, {@code foot} being the supporting one. */
    Map<Angle, Double> angles(Foot foot) {
        Foot free = foot.other();
        Map<Angle, Double> a = new EnumMap<>(Angle.class);
        a.put(Angle.KNEE, JointAngles.kneeDeg(at(foot.hip()), at(foot.knee()), at(foot.ankle())));
        a.put(
                Angle.HIP,
                JointAngles.hipDeg(
                        shoulders(), hips(), hips().plus(at(foot.knee()).minus(at(foot.hip())))));
        a.put(Angle.ANKLE, JointAngles.ankleDeg(at(foot.knee()), at(foot.ankle()), at(foot.toe())));
        a.put(Angle.TRUNK, JointAngles.trunkDeg(shoulders(), hips()));
        a.put(Angle.SHANK, JointAngles.shankDeg(at(foot.knee()), at(foot.ankle())));
        a.put(Angle.THIGH, JointAngles.thighDeg(at(foot.hip()), at(foot.knee())));
        a.put(Angle.FREE_KNEE, JointAngles.kneeDeg(at(free.hip()), at(free.knee()), at(free.ankle())));
        a.put(Angle.FREE_THIGH, JointAngles.thighDeg(at(free.hip()), at(free.knee())));
        a.put(Angle.LEG_PLANT, JointAngles.legPlantDeg(motion.centreOfMass(frame), at(foot.ankle())));
        a.put(Angle.HEAD, JointAngles.headDeg(middle(BodyPoint.LEFT_EAR, BodyPoint.RIGHT_EAR), at(BodyPoint.NOSE)));
        a.put(Angle.ELBOW_L, elbow(BodyPoint.LEFT_SHOULDER, BodyPoint.LEFT_ELBOW, BodyPoint.LEFT_WRIST));
        a.put(Angle.ELBOW_R, elbow(BodyPoint.RIGHT_SHOULDER, BodyPoint.RIGHT_ELBOW, BodyPoint.RIGHT_WRIST));
        return a;
    }

    private double elbow(BodyPoint shoulder, BodyPoint elbow, BodyPoint wrist) {
        return JointAngles.elbowDeg(at(shoulder), at(elbow), at(wrist));
    }
}
