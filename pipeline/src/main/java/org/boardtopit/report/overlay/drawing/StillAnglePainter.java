package org.boardtopit.report.overlay.drawing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.LabelPlacer;
import org.boardtopit.report.stills.StillAngle;
import org.boardtopit.signal.Point2;

/** The angles of a still: arms and arc at the joint, and beside the body a word and the value under it, tied to the joint by a line. */
final class StillAnglePainter {
    private final Canvas canvas;
    private final double unit;

    StillAnglePainter(Canvas canvas, double unit) {
        this.canvas = canvas;
        this.unit = unit;
    }

    /**
     * Draws them, px of the picture.
     *
     * @param body all of it, to write the values beside it; empty to write none
     * @param placer knows where the body is, and keeps the values' places
     */
    void draw(List<StillAngle> angles, Optional<Box> body, LabelPlacer placer) {
        List<Label> labels = new ArrayList<>();
        List<StillAngle> fromTheTop = new ArrayList<>(angles);
        fromTheTop.sort(Comparator.comparingDouble(a -> pointer(a).y()));
        body.ifPresent(box -> fromTheTop.forEach(a -> label(a, placer, box).ifPresent(labels::add)));
        labels.forEach(this::leader);
        angles.forEach(this::arms);
        labels.forEach(this::text);
    }

    private record Label(StillAngle angle, Point2 pointer, Box box) {}

    /** The middle of the arc. */
    private Point2 pointer(StillAngle angle) {
        Point2 first = unitVector(angle.vertex(), angle.firstArm());
        Point2 second = unitVector(angle.vertex(), angle.secondArm());
        Point2 middle = first.plus(second);
        double length = middle.length();
        return length < 0.05 ? angle.vertex() : angle.vertex().plus(middle.times(angle.arcM() / length));
    }

    private static Point2 unitVector(Point2 from, Point2 to) {
        Point2 way = to.minus(from);
        return way.times(1 / Math.max(1e-6, way.length()));
    }

    private Optional<Label> label(StillAngle angle, LabelPlacer placer, Box body) {
        Point2 pointer = pointer(angle);
        Lettering letters = canvas.lettering();
        double width = Math.max(letters.widthPx(angle.word(), wordCap()), letters.widthPx(angle.value(), valueCap()));
        double height = letters.heightPx(wordCap()) + letters.heightPx(valueCap());
        boolean left = pointer.x() - body.left() < body.right() - pointer.x();
        LabelPlacer.Lean near = left ? LabelPlacer.Lean.LEFT : LabelPlacer.Lean.RIGHT;
        double edge = left
                ? Math.max(body.left(), width + 30 * unit)
                : Math.min(body.right(), canvas.widthPx() - width - 30 * unit);
        return placer.place(edge, pointer.y(), width, height, 14 * unit, near)
                .map(box -> new Label(angle, pointer, box));
    }

    private double wordCap() {
        return 14 * unit;
    }

    private double valueCap() {
        return 18 * unit;
    }

    private void leader(Label label) {
        Box box = label.box();
        double x = Math.abs(box.left() - label.pointer().x())
                        < Math.abs(box.right() - label.pointer().x())
                ? box.left() - 3
                : box.right() + 3;
        int width = Math.max(1, (int) Math.round(1.3 * unit));
        canvas.line(label.pointer().x(), label.pointer().y(), x, box.centreY(), width + 2, Ink.OUTLINE);
        canvas.line(label.pointer().x(), label.pointer().y(), x, box.centreY(), width, Ink.ANGLE);
    }

    private void arms(StillAngle angle) {
        Point2 v = angle.vertex();
        int width = Math.max(1, (int) Math.round(2.4 * unit));
        int casing = width + 2 * Math.max(1, (int) Math.round(1.3 * unit));
        arm(v, angle.firstArm(), width, casing, false);
        arm(v, angle.secondArm(), width, casing, angle.toVertical());
        double start = directionDeg(v, angle.firstArm());
        double sweep = Math.IEEEremainder(directionDeg(v, angle.secondArm()) - start, 360);
        canvas.arc(v.x(), v.y(), angle.arcM(), start, start + sweep, casing, Ink.OUTLINE);
        canvas.arc(v.x(), v.y(), angle.arcM(), start, start + sweep, width, Ink.ANGLE);
    }

    private void arm(Point2 vertex, Point2 end, int width, int casing, boolean dashed) {
        canvas.line(vertex.x(), vertex.y(), end.x(), end.y(), casing, Ink.OUTLINE);
        if (dashed) {
            canvas.dashedLine(vertex.x(), vertex.y(), end.x(), end.y(), 8 * unit, 6 * unit, width, Ink.ANGLE);
        } else {
            canvas.line(vertex.x(), vertex.y(), end.x(), end.y(), width, Ink.ANGLE);
        }
    }

    private static double directionDeg(Point2 from, Point2 to) {
        return Math.toDegrees(Math.atan2(to.y() - from.y(), to.x() - from.x()));
    }

    private void text(Label label) {
        Lettering letters = canvas.lettering();
        Box box = label.box();
        canvas.text(
                label.angle().word(), box.left(), box.top() + letters.baselinePx(wordCap()), wordCap(), Ink.QUIET_TEXT);
        double valueTop = box.top() + letters.heightPx(wordCap());
        canvas.text(label.angle().value(), box.left(), valueTop + letters.baselinePx(valueCap()), valueCap(), Ink.TEXT);
    }
}
