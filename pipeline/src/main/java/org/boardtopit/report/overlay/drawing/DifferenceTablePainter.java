package org.boardtopit.report.overlay.drawing;

import org.boardtopit.report.comparison.DifferencePage;
import org.boardtopit.report.comparison.DifferencePage.Line;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.PlainText;

/** The table of differences, over a darkened picture of 1280 px. */
final class DifferenceTablePainter {
    private static final double LEFT = 70;
    private static final double WHAT = 240;
    private static final double RIGHT_OF_A = 790;
    private static final double RIGHT_OF_B = 920;
    private static final double RIGHT = 1210;
    private static final double TITLE_CAP = 19;
    private static final double CAP = 14;

    private final Canvas canvas;
    private final DifferencePage page;

    DifferenceTablePainter(Canvas canvas, DifferencePage page) {
        this.canvas = canvas;
        this.page = page;
    }

    void draw() {
        canvas.shade(new Box(0, 0, canvas.widthPx(), canvas.heightPx()), 0.86);
        int rows = page.lines().size() + page.remarks().size() + 3;
        double step = Math.min(40, (canvas.heightPx() - 60.0) / rows);
        double baseline = 30 + TITLE_CAP;
        canvas.text(PlainText.of(page.title()), LEFT, baseline, TITLE_CAP, Ink.TEXT);
        baseline += 1.4 * step;
        if (!page.lines().isEmpty()) {
            right("A", RIGHT_OF_A, baseline, Ink.ATTEMPT_A);
            right("B", RIGHT_OF_B, baseline, Ink.ATTEMPT_B);
            right(page.differenceHeading(), RIGHT, baseline, Ink.QUIET_TEXT);
        }
        for (Line line : page.lines()) {
            baseline += step;
            canvas.text(PlainText.of(line.where()), LEFT, baseline, CAP, Ink.QUIET_TEXT);
            canvas.text(PlainText.of(line.what()), WHAT, baseline, CAP, Ink.TEXT);
            right(line.a(), RIGHT_OF_A, baseline, Ink.ATTEMPT_A);
            right(line.b(), RIGHT_OF_B, baseline, Ink.ATTEMPT_B);
            right(line.difference(), RIGHT, baseline, Ink.TEXT);
        }
        baseline += 0.4 * step;
        for (String remark : page.remarks()) {
            baseline += 0.85 * step;
            canvas.text(PlainText.of(remark), LEFT, baseline, 0.85 * CAP, Ink.QUIET_TEXT);
        }
    }

    private void right(String text, double right, double baseline, Ink ink) {
        String plain = PlainText.of(text);
        canvas.text(plain, right - canvas.lettering().widthPx(plain, CAP), baseline, CAP, ink);
    }
}
