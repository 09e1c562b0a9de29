package org.boardtopit.measures;

import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.DrawnMotion;
import org.boardtopit.signal.Point2;

/**
 * A body whose joint angles are formulas of time, so that every measure of it can be worked out by hand (SYN, our own). Thigh and
 * shank are 0.4 m, trunk and straight arms 0.5 m; the centre of mass is 0.1 m above the hips. Everything stands still until told
 * otherwise. Degrees, metres, seconds.
 */
final class DrawnBody implements DrawnMotion.Formula {
    static final double LEG_M = 0.4;
    static final double TRUNK_M = 0.5;
    private static final double STATURE_M = 1.8;
    private static final double FPS = 120;
    private static final double DURATION_S = 2.5;

    DoubleUnaryOperator hipAlong = t -> 0;
    DoubleUnaryOperator hipHeight = t -> 1;
    DoubleUnaryOperator trunk = t -> 0;
    DoubleUnaryOperator head = t -> 0;
    final DoubleUnaryOperator[] thigh = {t -> 0, t -> 0};
    final DoubleUnaryOperator[] knee = {t -> 180, t -> 180};
    final DoubleUnaryOperator[] arm = {t -> 0, t -> 0};
    /** Standard deviation that the points claim; they are exact all the same when it is 0. */
    double sdM;

    private static int side(BodyPoint point) {
        return point.name().startsWith("LEFT") ? 0 : 1;
    }

    static int side(Foot foot) {
        return foot == Foot.LEFT ? 0 : 1;
    }

    private static Point2 hanging(double length, double deg) {
        return new Point2(length * Math.sin(Math.toRadians(deg)), -length * Math.cos(Math.toRadians(deg)));
    }

    @Override
    public Point2 at(BodyPoint point, double t) {
        int side = side(point);
        Point2 hips = new Point2(hipAlong.applyAsDouble(t), hipHeight.applyAsDouble(t));
        Point2 knees = hips.plus(hanging(LEG_M, thigh[side].applyAsDouble(t)));
        double bent = 180 - knee[side].applyAsDouble(t);
        Point2 ankles = knees.plus(hanging(LEG_M, thigh[side].applyAsDouble(t) - bent));
        Point2 shoulders = hips.minus(hanging(TRUNK_M, -trunk.applyAsDouble(t)));
        Point2 ears = shoulders.plus(new Point2(0, 0.25));
        double look = Math.toRadians(head.applyAsDouble(t));
        return switch (point) {
            case LEFT_HIP, RIGHT_HIP -> hips;
            case LEFT_KNEE, RIGHT_KNEE -> knees;
            case LEFT_ANKLE, RIGHT_ANKLE -> ankles;
            case LEFT_HEEL, RIGHT_HEEL -> ankles.plus(new Point2(-0.06, -0.07));
            case LEFT_TOE, RIGHT_TOE -> ankles.plus(new Point2(0.18, -0.07));
            case LEFT_SHOULDER, RIGHT_SHOULDER -> shoulders;
            case LEFT_ELBOW, RIGHT_ELBOW -> shoulders.plus(hanging(0.25, arm[side].applyAsDouble(t)));
            case LEFT_WRIST, RIGHT_WRIST -> shoulders.plus(hanging(0.5, arm[side].applyAsDouble(t)));
            case NOSE -> ears.plus(new Point2(0.1 * Math.cos(look), 0.1 * Math.sin(look)));
            default -> ears;
        };
    }

    /** Its motion, taken as it is. */
    FittedMotion motion() {
        return FittedMotion.asRepaired(DrawnMotion.of(
                FPS,
                DURATION_S,
                STATURE_M,
                sdM,
                new Random(1),
                this,
                t -> new Point2(hipAlong.applyAsDouble(t), hipHeight.applyAsDouble(t) + 0.1)));
    }
}
