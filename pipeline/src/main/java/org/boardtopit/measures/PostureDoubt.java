package org.boardtopit.measures;

import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.models.BodyPoint;

/**
 * Standard deviations, in degrees, of what is read from the fitted points of one frame.
 *
 * <p>Two parts: the noise that the fit states for its points ({@link AngleUncertainty}), and what the network reads off alike in
 * all frames of one movement, such as a thigh that looks a little low when it is level. The second was measured on six clips with
 * known truth (docs/accuracy.md) and is the same for every clip.
 */
final class PostureDoubt {
    private static final double LINE_STEADY_DEG = 3;
    private static final double KNEE_STEADY_DEG = 1.5;
    private static final double TRUNK_STEADY_DEG = 2;
    private static final double ARM_STEADY_DEG = 4;

    private final FittedMotion motion;

    PostureDoubt(FittedMotion motion) {
        this.motion = motion;
    }

    private double sd(int frame, BodyPoint point) {
        return Math.hypot(motion.sd(frame, point, false), motion.sd(frame, point, true)) / Math.sqrt(2);
    }

    private double line(int frame, BodyPoint from, BodyPoint to, double steadyDeg) {
        double noise = AngleUncertainty.lineSdDeg(
                motion.place(frame, from), motion.place(frame, to), sd(frame, from), sd(frame, to));
        return Math.hypot(noise, steadyDeg);
    }

    /** Of a thigh's angle at an instant. */
    double thighDeg(Foot leg, double atS) {
        return line(frame(atS), leg.hip(), leg.knee(), LINE_STEADY_DEG);
    }

    /** Of a shank's angle. */
    double shankDeg(Foot leg, double atS) {
        return line(frame(atS), leg.knee(), leg.ankle(), LINE_STEADY_DEG / 2);
    }

    /** Of a knee's inner angle. */
    double kneeDeg(Foot leg, double atS) {
        return Math.hypot(inner(frame(atS), leg.hip(), leg.knee(), leg.ankle()), KNEE_STEADY_DEG);
    }

    /** Of an elbow's inner angle, from the noise alone: a far arm that is guessed at is wide. */
    double elbowDeg(Foot side, double atS) {
        return inner(frame(atS), Posture.shoulder(side), Posture.elbow(side), Posture.wrist(side));
    }

    private double inner(int frame, BodyPoint first, BodyPoint vertex, BodyPoint second) {
        return AngleUncertainty.innerSdDeg(
                motion.place(frame, first),
                motion.place(frame, vertex),
                motion.place(frame, second),
                sd(frame, first),
                sd(frame, vertex),
                sd(frame, second));
    }

    /** Of the trunk's lean; its ends are middles of two points. */
    double trunkDeg(double atS) {
        int frame = frame(atS);
        double noise = AngleUncertainty.lineSdDeg(
                motion.place(frame, BodyPoint.LEFT_HIP),
                motion.place(frame, BodyPoint.LEFT_SHOULDER),
                middle(frame, BodyPoint.LEFT_HIP),
                middle(frame, BodyPoint.LEFT_SHOULDER));
        return Math.hypot(noise, TRUNK_STEADY_DEG);
    }

    private double middle(int frame, BodyPoint left) {
        return AngleUncertainty.sdOfMiddle(sd(frame, left), sd(frame, left.otherSide()));
    }

    /** Of the direction of an arm. */
    double armDeg(Foot side, double atS) {
        return line(frame(atS), Posture.shoulder(side), Posture.wrist(side), ARM_STEADY_DEG);
    }

    private int frame(double atS) {
        return motion.repaired().nearestFrame(atS);
    }
}
