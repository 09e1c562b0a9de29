package org.boardtopit.report.overlay.drawing;

import java.util.List;
import java.util.Optional;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.ContactMark;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.OverlayWords;
import org.boardtopit.report.overlay.PhaseSpan;
import org.boardtopit.report.overlay.PlainText;
import org.boardtopit.report.overlay.TimeAxis;

/**
 * The strip along the bottom edge: above, the current phase, the legend, time and frame number; below, the phases along
 * the time axis with a tick for each contact and the playhead.
 */
final class StripPainter {
    private final Canvas canvas;
    private final OverlayScene scene;
    private final double unit;
    private final double capPx;
    private final Box panel;
    private final TimeAxis axis;
    private final double barTop;
    private final double barBottom;
    private final OverlayWords words;
    private final int frameDigits;

    StripPainter(Canvas canvas, OverlayScene scene, double unit) {
        this.canvas = canvas;
        this.scene = scene;
        this.unit = unit;
        capPx = 10 * unit;
        double height = Math.min(canvas.heightPx(), Math.round(54 * unit));
        panel = Box.at(0, canvas.heightPx() - height, canvas.widthPx(), height);
        double margin = Math.min(16 * unit, canvas.widthPx() / 4.0);
        axis = new TimeAxis(margin, canvas.widthPx() - margin, scene.durationUs());
        barBottom = canvas.heightPx() - Math.round(7 * unit);
        barTop = barBottom - Math.round(17 * unit);
        int lastFrame = scene.frames().isEmpty()
                ? 0
                : scene.frames().get(scene.frames().size() - 1).frameIndex();
        frameDigits = Integer.toString(lastFrame).length();
        words = new OverlayWords(scene.language());
    }

    Box panel() {
        return panel;
    }

    /** Draws the strip; a light panel lets an athlete be seen who comes down into it. */
    void draw(long timeUs, int frameIndex, boolean lightPanel) {
        canvas.shade(panel, lightPanel ? 0.35 : 0.75);
        canvas.fill(new Box(axis.leftPx(), barTop, axis.rightPx(), barBottom), Ink.TRACK);
        scene.phases().forEach(phase -> phase(phase, phase.contains(timeUs)));
        borders();
        scene.contacts().forEach(this::tick);
        playhead(axis.xAt(timeUs));
        caption(timeUs, frameIndex);
    }

    private void phase(PhaseSpan phase, boolean current) {
        double left = axis.xAt(phase.startUs());
        double right = axis.xAt(phase.endUs());
        Box box = new Box(left, barTop, right, barBottom);
        canvas.fill(box, inkOf(phase.name()));
        if (current) {
            canvas.fill(new Box(left, barBottom, right, barBottom + Math.max(1, Math.round(3 * unit))), Ink.TEXT);
        }
        double cap = 9 * unit;
        double width = canvas.lettering().widthPx(phase.text(), cap);
        if (width <= right - left) {
            double baseline = (barTop + barBottom + cap) / 2;
            canvas.text(phase.text(), (left + right - width) / 2, baseline, cap, current ? Ink.TEXT : Ink.QUIET_TEXT);
        }
    }

    /** Phases of one colour that follow each other, as in a drill, are told by a line. */
    private void borders() {
        for (int i = 1; i < scene.phases().size(); i++) {
            PhaseSpan phase = scene.phases().get(i);
            if (phase.name() == scene.phases().get(i - 1).name()) {
                double x = axis.xAt(phase.startUs());
                canvas.line(x, barTop, x, barBottom, Math.max(1, (int) Math.round(unit)), Ink.OUTLINE);
            }
        }
    }

    static Ink inkOf(PhaseName name) {
        return switch (name) {
            case APPROACH -> Ink.APPROACH;
            case HOP -> Ink.HOP;
            case STEP -> Ink.STEP;
            case JUMP -> Ink.JUMP;
            case SKIP -> Ink.HOP;
            case LANDING -> Ink.LANDING;
        };
    }

    private void tick(ContactMark mark) {
        double x = axis.xAt(mark.timeUs());
        double rise = (mark.isTouchdown() ? 5 : 3) * unit;
        canvas.line(x, barTop - rise, x, barTop, Math.max(1, (int) Math.round(unit)), Ink.TEXT);
    }

    private void playhead(double x) {
        double head = 4.5 * unit;
        int width = Math.max(1, (int) Math.round(1.6 * unit));
        canvas.line(x, barTop - head, x, barBottom, width + 2, Ink.OUTLINE);
        canvas.line(x, barTop - head, x, barBottom, width, Ink.PLAYHEAD);
        canvas.triangle(x, barTop, x - head, barTop - 1.5 * head, x + head, barTop - 1.5 * head, Ink.PLAYHEAD);
    }

    private void caption(long timeUs, int frameIndex) {
        double baseline = panel.top() + Math.round(18 * unit);
        double left = axis.leftPx();
        double right = axis.rightPx();
        String clock = words.clock(timeUs / 1e6, frameIndex, frameDigits);
        double clockWidth = canvas.lettering().widthPx(clock, capPx);
        if (clockWidth > right - left) {
            return;
        }
        right -= clockWidth;
        canvas.changingText(clock, right, baseline, capPx, Ink.TEXT);
        Optional<PhaseSpan> phase = scene.phaseAt(timeUs);
        if (phase.isPresent()) {
            left = currentPhase(phase.get(), left, right, baseline);
        }
        legend(left, right, baseline);
    }

    /** Draws the name in capitals and the note as far as there is room; returns where it ends. */
    private double currentPhase(PhaseSpan phase, double left, double right, double baseline) {
        Lettering letters = canvas.lettering();
        String name = phase.text().toUpperCase(scene.language().locale());
        double end = left + letters.widthPx(name, capPx) + 10 * unit;
        if (end > right) {
            return left;
        }
        canvas.text(name, left, baseline, capPx, Ink.TEXT);
        String note = PlainText.of(phase.note());
        double noteEnd = end + letters.widthPx(note, capPx) + 10 * unit;
        if (note.isEmpty() || noteEnd > right) {
            return end;
        }
        canvas.text(note, end, baseline, capPx, Ink.TEXT);
        return noteEnd;
    }

    private void legend(double left, double right, double baseline) {
        Lettering letters = canvas.lettering();
        double cap = 8.5 * unit;
        double sample = 24 * unit;
        double gap = 6 * unit;
        List<String> legend = words.legend();
        double[] samples = {sample, sample, 10 * unit, 10 * unit};
        double width = 0;
        for (int i = 0; i < legend.size(); i++) {
            width += samples[i] + gap + letters.widthPx(legend.get(i), cap) + 3 * gap;
        }
        double middle = canvas.widthPx() / 2.0;
        double x = Math.max(left + 2 * gap, middle - width / 2);
        if (x + width > right) {
            return;
        }
        double y = baseline - cap / 2;
        for (int i = 0; i < legend.size(); i++) {
            sample(i, x, y, samples[i]);
            x += samples[i] + gap;
            canvas.text(legend.get(i), x, baseline, cap, Ink.QUIET_TEXT);
            x += letters.widthPx(legend.get(i), cap) + 3 * gap;
        }
    }

    private void sample(int which, double x, double y, double length) {
        int thick = Math.max(2, (int) Math.round(2.4 * unit));
        switch (which) {
            case 0 -> canvas.line(x, y, x + length, y, thick, Ink.NEAR);
            case 1 -> canvas.dashedLine(x, y, x + length, y, 5.5 * unit, 4 * unit, Math.max(1, thick - 1), Ink.FAR);
            case 2 -> MarkPainter.touchdown(canvas, x + length / 2, y - 4 * unit, 8 * unit, false);
            default -> MarkPainter.toeOff(canvas, x + length / 2, y, 8 * unit, false);
        }
    }
}
