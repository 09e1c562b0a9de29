package org.boardtopit.report.overlay.drawing;

import java.util.List;
import java.util.Optional;
import org.boardtopit.report.overlay.AngleCallout;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.LabelPlacer;
import org.boardtopit.report.overlay.OverlayWords;
import org.boardtopit.signal.Point2;

/** Angles where they are measured: an arc at the joint, its two arms, and the value beside it on a thin leader. */
final class AnglePainter {
    /** The trunk's arc lies this far up: a lean of a few degrees needs a long arm to be seen. */
    private static final double TRUNK_ARC_SHARE = 0.75;

    private final Canvas canvas;
    private final OverlayWords words;

    AnglePainter(Canvas canvas, OverlayWords words) {
        this.canvas = canvas;
        this.words = words;
    }

    /**
     * Draws angles with their values towards one side.
     *
     * @param angles in the plane of one frame
     * @param placement from the plane of the callouts to the picture
     * @param athletePx height of the athlete as drawn
     * @param capPx height of the values' digits
     * @param placer finds room for the values, which it then keeps
     * @param side on which side of edgeX the values stand
     * @param edgeX where the values end (side LEFT) or begin (side RIGHT)
     */
    void draw(
            List<AngleCallout> angles,
            Placement placement,
            double athletePx,
            double capPx,
            LabelPlacer placer,
            LabelPlacer.Lean side,
            double edgeX) {
        for (AngleCallout angle : angles) {
            Point2 vertex = placement.of(angle.vertex());
            Point2 first = placement.of(angle.firstArm());
            Point2 second = placement.of(angle.secondArm());
            if (vertex.isKnown() && first.isKnown() && second.isKnown()) {
                value(angle, pointer(angle, vertex, first), capPx, placer, side, edgeX);
                arms(angle, vertex, first, second, athletePx);
            }
        }
    }

    /** Where the value points: at the joint, or for the trunk at its upper part, clear of the hip's value. */
    private static Point2 pointer(AngleCallout angle, Point2 vertex, Point2 firstArm) {
        return angle.angle() == AngleCallout.Angle.TRUNK
                ? vertex.plus(firstArm.minus(vertex).times(TRUNK_ARC_SHARE))
                : vertex;
    }

    private void arms(AngleCallout angle, Point2 vertex, Point2 first, Point2 second, double athletePx) {
        double radius = Math.max(6, athletePx * 0.085);
        int width = Math.max(1, (int) Math.round(athletePx * 0.009));
        int casing = width + 2 * Math.max(1, (int) Math.round(athletePx * 0.004));
        if (angle.angle() == AngleCallout.Angle.TRUNK) {
            canvas.line(vertex.x(), vertex.y(), second.x(), second.y(), casing, Ink.OUTLINE);
            canvas.dashedLine(vertex.x(), vertex.y(), second.x(), second.y(), 4 * width, 3 * width, width, Ink.ANGLE);
            radius = Math.max(radius, TRUNK_ARC_SHARE * vertex.distanceTo(second));
        }
        double start = directionDeg(vertex, first);
        double sweep = Math.IEEEremainder(directionDeg(vertex, second) - start, 360);
        canvas.arc(vertex.x(), vertex.y(), radius, start, start + sweep, casing, Ink.OUTLINE);
        canvas.arc(vertex.x(), vertex.y(), radius, start, start + sweep, width, Ink.ANGLE);
    }

    private static double directionDeg(Point2 from, Point2 to) {
        return Math.toDegrees(Math.atan2(to.y() - from.y(), to.x() - from.x()));
    }

    private void value(
            AngleCallout angle, Point2 pointer, double capPx, LabelPlacer placer, LabelPlacer.Lean side, double edgeX) {
        Lettering letters = canvas.lettering();
        String text = angle.text(words);
        double width = letters.widthPx(text, capPx);
        double height = letters.heightPx(capPx);
        double gap = capPx * 0.4;
        // Keep the first choice inside the picture, rather over a limb than on the far side of the body.
        double edge = side == LabelPlacer.Lean.LEFT
                ? Math.max(edgeX, width + 3 * gap)
                : Math.min(edgeX, canvas.widthPx() - width - 3 * gap);
        Optional<Box> free = placer.place(edge, pointer.y(), width, height, gap, side);
        free.ifPresent(box -> {
            leader(pointer, box, Math.max(1, (int) Math.round(capPx / 11)));
            canvas.text(text, box.left() + 1, box.top() + letters.baselinePx(capPx), capPx, Ink.TEXT);
        });
    }

    private void leader(Point2 pointer, Box box, int width) {
        double x = Math.abs(box.left() - pointer.x()) < Math.abs(box.right() - pointer.x())
                ? box.left() - 2
                : box.right() + 2;
        canvas.line(pointer.x(), pointer.y(), x, box.centreY(), width + 2, Ink.OUTLINE);
        canvas.line(pointer.x(), pointer.y(), x, box.centreY(), width, Ink.ANGLE);
    }
}
