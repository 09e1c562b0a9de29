package org.boardtopit.report.overlay.drawing;

import java.util.List;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.ContactMark;
import org.boardtopit.report.overlay.LabelPlacer;
import org.boardtopit.report.overlay.LabelPlacer.Lean;
import org.boardtopit.report.overlay.PlainText;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/**
 * Marks on the runway: a solid triangle below the place for a touchdown, an open ring around it for a toe-off, so that
 * both can be told when a foot lands and leaves at one place and neither hides the shoe.
 */
final class MarkPainter {
    private final Canvas canvas;
    private final List<ContactMark> contacts;
    private final List<String> labels;

    MarkPainter(Canvas canvas, List<ContactMark> contacts) {
        this.canvas = canvas;
        this.contacts = contacts;
        labels = contacts.stream().map(mark -> PlainText.of(mark.label())).toList();
    }

    /** Draws the marks whose time has come. */
    void draw(long timeUs, Homography fixedToFrame, double sizePx, double capPx, LabelPlacer placer) {
        Box picture = new Box(0, 0, canvas.widthPx(), canvas.heightPx());
        for (int i = 0; i < contacts.size(); i++) {
            ContactMark mark = contacts.get(i);
            if (mark.timeUs() > timeUs || !mark.place().isKnown()) {
                continue;
            }
            Point2 place = fixedToFrame.apply(mark.place());
            if (place.isKnown() && picture.contains(place)) {
                shape(canvas, mark, place.x(), place.y(), sizePx);
                label(labels.get(i), place, sizePx, capPx, placer);
            }
        }
    }

    /** The shape of a mark with its tip or centre at a place. */
    static void shape(Canvas canvas, ContactMark mark, double x, double y, double sizePx) {
        if (mark.isTouchdown()) {
            touchdown(canvas, x, y, sizePx, mark.isSmall());
        } else {
            toeOff(canvas, x, y, sizePx, mark.isSmall());
        }
    }

    static void touchdown(Canvas canvas, double x, double y, double sizePx, boolean small) {
        double s = small ? 0.65 * sizePx : sizePx;
        double rim = Math.max(1.5, sizePx * 0.2);
        canvas.triangle(
                x,
                y - 1.6 * rim,
                x - 0.6 * s - 1.3 * rim,
                y + s + rim,
                x + 0.6 * s + 1.3 * rim,
                y + s + rim,
                Ink.OUTLINE);
        canvas.triangle(x, y, x - 0.6 * s, y + s, x + 0.6 * s, y + s, Ink.MARK);
    }

    static void toeOff(Canvas canvas, double x, double y, double sizePx, boolean small) {
        double radius = small ? 0.38 * sizePx : 0.55 * sizePx;
        int width = Math.max(1, (int) Math.round(sizePx * 0.2));
        canvas.ring(x, y, radius, width + 2, Ink.OUTLINE);
        canvas.ring(x, y, radius, width, Ink.MARK);
    }

    private void label(String text, Point2 place, double sizePx, double capPx, LabelPlacer placer) {
        if (text.isEmpty()) {
            return;
        }
        Lettering letters = canvas.lettering();
        double width = letters.widthPx(text, capPx);
        double height = letters.heightPx(capPx);
        placer.place(place.x(), place.y() + sizePx, width, height, capPx * 0.5, Lean.BELOW)
                .ifPresent(box ->
                        canvas.text(text, box.left() + 1, box.top() + letters.baselinePx(capPx), capPx, Ink.TEXT));
    }
}
