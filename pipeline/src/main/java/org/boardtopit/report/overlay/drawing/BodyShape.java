package org.boardtopit.report.overlay.drawing;

import static org.boardtopit.models.BodyPoint.LEFT_ANKLE;
import static org.boardtopit.models.BodyPoint.LEFT_EAR;
import static org.boardtopit.models.BodyPoint.LEFT_ELBOW;
import static org.boardtopit.models.BodyPoint.LEFT_HEEL;
import static org.boardtopit.models.BodyPoint.LEFT_HIP;
import static org.boardtopit.models.BodyPoint.LEFT_KNEE;
import static org.boardtopit.models.BodyPoint.LEFT_SHOULDER;
import static org.boardtopit.models.BodyPoint.LEFT_TOE;
import static org.boardtopit.models.BodyPoint.LEFT_WRIST;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.report.overlay.BodySide;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.signal.Point2;

/** Where the flesh of a body is, from its points: limbs as strokes with a thickness in standing heights. */
final class BodyShape {
    /**
     * A stroke of the body.
     *
     * @param radius half its thickness, in standing heights: half the breadths of segments with clothes (measured on our footage)
     */
    record Stroke(Point2 from, Point2 to, double radius) {}

    private BodyShape() {}

    /** All strokes whose ends are known, in px of the picture. */
    static List<Stroke> strokes(FramePose pose, Placement placement) {
        List<Stroke> strokes = new ArrayList<>();
        for (BodySide side : BodySide.values()) {
            limb(strokes, pose, placement, side, LEFT_SHOULDER, LEFT_ELBOW, 0.032);
            limb(strokes, pose, placement, side, LEFT_ELBOW, LEFT_WRIST, 0.03);
            limb(strokes, pose, placement, side, LEFT_HIP, LEFT_KNEE, 0.055);
            limb(strokes, pose, placement, side, LEFT_KNEE, LEFT_ANKLE, 0.038);
            limb(strokes, pose, placement, side, LEFT_ANKLE, LEFT_HEEL, 0.03);
            limb(strokes, pose, placement, side, LEFT_ANKLE, LEFT_TOE, 0.03);
            limb(strokes, pose, placement, side, LEFT_HEEL, LEFT_TOE, 0.028);
            limb(strokes, pose, placement, side, LEFT_SHOULDER, LEFT_HIP, 0.07);
            hand(strokes, pose, placement, side);
        }
        Point2 ears = placement.of(pose.middle(LEFT_EAR));
        Point2 head = ears.isKnown() ? ears : placement.of(pose.place(BodyPoint.NOSE));
        Point2 neck = placement.of(pose.middle(LEFT_SHOULDER));
        add(strokes, neck, head, 0.045);
        add(strokes, head, head, 0.075);
        return strokes;
    }

    /** The hand goes on from the wrist as the forearm came, by a third of it. */
    private static void hand(List<Stroke> strokes, FramePose pose, Placement placement, BodySide side) {
        Point2 elbow = placement.of(pose.place(side.of(LEFT_ELBOW)));
        Point2 wrist = placement.of(pose.place(side.of(LEFT_WRIST)));
        add(strokes, wrist, wrist.plus(wrist.minus(elbow).times(0.4)), 0.026);
    }

    private static void limb(
            List<Stroke> strokes,
            FramePose pose,
            Placement placement,
            BodySide side,
            BodyPoint from,
            BodyPoint to,
            double radius) {
        add(strokes, placement.of(pose.place(side.of(from))), placement.of(pose.place(side.of(to))), radius);
    }

    private static void add(List<Stroke> strokes, Point2 from, Point2 to, double radius) {
        if (from.isKnown() && to.isKnown()) {
            strokes.add(new Stroke(from, to, radius));
        }
    }

    /** Places along all strokes, not further apart than a step. */
    static List<Point2> spots(FramePose pose, Placement placement, double stepPx) {
        List<Point2> spots = new ArrayList<>();
        for (Stroke stroke : strokes(pose, placement)) {
            int steps = (int) Math.ceil(stroke.from().distanceTo(stroke.to()) / stepPx);
            for (int i = 0; i <= steps; i++) {
                double share = steps == 0 ? 0 : (double) i / steps;
                spots.add(stroke.from().plus(stroke.to().minus(stroke.from()).times(share)));
            }
        }
        return spots;
    }
}
