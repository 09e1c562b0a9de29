package org.boardtopit.measures;

import java.util.EnumMap;
import java.util.Map;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/** The angles of the body in one frame, from the fitted points; NaN where a point is unknown. */
final class Posture {

    private final FittedMotion motion;
    private final int frame;

    Posture(FittedMotion motion, int frame) {
        this.motion = motion;
        this.frame = frame;
    }

    private Point2 at(BodyPoint point) {
        return motion.place(frame, point);
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
    Map<BodyAngle, Double> angles(Foot foot) {
        Foot free = foot.other();
        Map<BodyAngle, Double> a = new EnumMap<>(BodyAngle.class);
        a.put(BodyAngle.KNEE, JointAngles.kneeDeg(at(foot.hip()), at(foot.knee()), at(foot.ankle())));
        a.put(
                BodyAngle.HIP,
                JointAngles.hipDeg(
                        shoulders(), hips(), hips().plus(at(foot.knee()).minus(at(foot.hip())))));
        a.put(BodyAngle.ANKLE, JointAngles.ankleDeg(at(foot.knee()), at(foot.ankle()), at(foot.toe())));
        a.put(BodyAngle.TRUNK, JointAngles.trunkDeg(shoulders(), hips()));
        a.put(BodyAngle.SHANK, JointAngles.shankDeg(at(foot.knee()), at(foot.ankle())));
        a.put(BodyAngle.THIGH, JointAngles.thighDeg(at(foot.hip()), at(foot.knee())));
        a.put(BodyAngle.FREE_KNEE, JointAngles.kneeDeg(at(free.hip()), at(free.knee()), at(free.ankle())));
        a.put(BodyAngle.FREE_THIGH, JointAngles.thighDeg(at(free.hip()), at(free.knee())));
        a.put(BodyAngle.LEG_PLANT, JointAngles.legPlantDeg(motion.centreOfMass(frame), at(foot.ankle())));
        a.put(BodyAngle.FOOT_AHEAD, JointAngles.footAhead(at(foot.toe()), motion.centreOfMass(frame)));
        a.put(BodyAngle.HEAD, JointAngles.headDeg(middle(BodyPoint.LEFT_EAR, BodyPoint.RIGHT_EAR), at(BodyPoint.NOSE)));
        a.put(BodyAngle.ELBOW_L, elbow(BodyPoint.LEFT_SHOULDER, BodyPoint.LEFT_ELBOW, BodyPoint.LEFT_WRIST));
        a.put(BodyAngle.ELBOW_R, elbow(BodyPoint.RIGHT_SHOULDER, BodyPoint.RIGHT_ELBOW, BodyPoint.RIGHT_WRIST));
        return a;
    }

    private double elbow(BodyPoint shoulder, BodyPoint elbow, BodyPoint wrist) {
        return JointAngles.elbowDeg(at(shoulder), at(elbow), at(wrist));
    }
}
