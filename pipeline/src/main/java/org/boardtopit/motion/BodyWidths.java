package org.boardtopit.motion;

import org.boardtopit.models.BodyPoint;

/**
 * How far from the middle plane of the body a point lies when the athlete runs straight, as a share of standing height.
 *
 * <p>Used to put each point into a plane of its own before perspective is taken out; an error of 3 cm moves a point seen at
 * 45 degrees by 3 cm. Values: half the shoulder-joint and hip-joint distances (Drillis and Contini 1966 give 0.259 H and
 * 0.191 H for the widths over the bones; joint centres lie further in; from memory, medium sure), feet a hand apart (common
 * practice, no source).
 */
public final class BodyWidths {
    private BodyWidths() {}

    /** In metres, or the unit of the standing height; positive to the athlete's left. */
    public static double acrossM(BodyPoint point, double statureM) {
        double share =
                switch (point) {
                    case NOSE -> 0;
                    case LEFT_EAR, RIGHT_EAR -> 0.042;
                    case LEFT_SHOULDER, RIGHT_SHOULDER -> 0.115;
                    case LEFT_ELBOW, RIGHT_ELBOW -> 0.14;
                    case LEFT_HIP, RIGHT_HIP, LEFT_KNEE, RIGHT_KNEE -> 0.058;
                    case LEFT_ANKLE, RIGHT_ANKLE, LEFT_HEEL, RIGHT_HEEL, LEFT_TOE, RIGHT_TOE -> 0.048;
                    case LEFT_WRIST,
                            RIGHT_WRIST,
                            LEFT_LITTLE_FINGER,
                            RIGHT_LITTLE_FINGER,
                            LEFT_INDEX_FINGER,
                            RIGHT_INDEX_FINGER,
                            LEFT_THUMB,
                            RIGHT_THUMB -> 0.11;
                    default -> 0.018;
                };
        return point == BodyPoint.NOSE ? 0 : (point.isLeft() ? share : -share) * statureM;
    }
}
