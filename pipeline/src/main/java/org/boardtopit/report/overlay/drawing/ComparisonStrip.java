package org.boardtopit.report.overlay.drawing;

import java.util.List;
import java.util.Locale;
import org.boardtopit.report.comparison.ComparisonScene;
import org.boardtopit.report.comparison.ComparisonScene.Shot;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.PhaseSpan;
import org.boardtopit.report.overlay.PlainText;
import org.boardtopit.report.overlay.TimeAxis;

/** The strip along the bottom edge of a comparison: how the two are laid over each other, the phases, the playhead. */
final class ComparisonStrip {
    private static final double CAP = 11;
    private static final double MARGIN = 14;

    private final Canvas canvas;
    private final ComparisonScene scene;
    private final Box panel;
    private final TimeAxis axis;
    private final List<PhaseSpan> phases;
    private final double barTop;
    private final double barBottom;

    ComparisonStrip(Canvas canvas, ComparisonScene scene) {
        this.canvas = canvas;
        this.scene = scene;
        panel = scene.layout().strip();
        axis = new TimeAxis(MARGIN, panel.right() - MARGIN, scene.lengthUs());
        phases = scene.phases();
        barBottom = panel.bottom() - 8;
        barTop = barBottom - 18;
    }

    void draw(Shot shot) {
        canvas.fill(panel, Ink.PANEL);
        canvas.fill(new Box(axis.leftPx(), barTop, axis.rightPx(), barBottom), Ink.TRACK);
        phases.forEach(phase -> phase(phase, phase.contains(shot.playUs())));
        for (long us : scene.coincidencesUs()) {
            double x = axis.xAt(us);
            canvas.line(x, barTop - 4, x, barTop, 1, Ink.TEXT);
        }
        caption(shot);
        double x = axis.xAt(shot.playUs());
        canvas.line(x, barTop - 6, x, barBottom, 4, Ink.OUTLINE);
        canvas.line(x, barTop - 6, x, barBottom, 2, Ink.PLAYHEAD);
    }

    private void phase(PhaseSpan phase, boolean current) {
        double left = axis.xAt(phase.startUs());
        double right = axis.xAt(phase.endUs());
        canvas.fill(new Box(left, barTop, right, barBottom), StripPainter.inkOf(phase.name()));
        canvas.line(left, barTop, left, barBottom, 1, Ink.OUTLINE);
        String text = PlainText.of(phase.text());
        double width = canvas.lettering().widthPx(text, CAP);
        if (width < right - left) {
            double baseline = (barTop + barBottom + CAP) / 2;
            canvas.text(text, (left + right - width) / 2, baseline, CAP, current ? Ink.TEXT : Ink.QUIET_TEXT);
        }
    }

    private void caption(Shot shot) {
        double baseline = panel.top() + 8 + CAP;
        String mode = PlainText.of(scene.mode());
        String slow = PlainText.of(scene.slowness());
        double right = axis.rightPx() - canvas.lettering().widthPx(slow, CAP);
        canvas.text(slow, right, baseline, CAP, Ink.QUIET_TEXT);
        canvas.text(mode, (canvas.widthPx() - canvas.lettering().widthPx(mode, CAP)) / 2, baseline, CAP, Ink.TEXT);
        phases.stream()
                .filter(phase -> phase.contains(shot.playUs()))
                .findFirst()
                .ifPresent(phase -> canvas.text(
                        PlainText.of(phase.text()).toUpperCase(Locale.ROOT), axis.leftPx(), baseline, CAP, Ink.TEXT));
    }
}
