package org.boardtopit.report.overlay.drawing;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.LabelPlacer;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.PlainText;

/** The title lines at the top left and the quality lines at the top right, outlined letters without a panel. */
final class HeaderPainter {
    private static final double TITLE_CAP = 13;
    private static final double SMALL_CAP = 9.5;

    private final Canvas canvas;
    private final List<String> title;
    private final List<String> quality;
    private final double unit;
    private final List<Line> lines = new ArrayList<>();

    HeaderPainter(Canvas canvas, OverlayScene scene, double unit) {
        this.canvas = canvas;
        this.unit = unit;
        title = scene.titleLines().stream().map(PlainText::of).toList();
        quality = scene.qualityLines().stream().map(PlainText::of).toList();
        double room = canvas.widthPx() - 2 * margin();
        layOut(title, true, quality.isEmpty() ? room : 0.6 * room);
        layOut(quality, false, title.isEmpty() ? room : 0.38 * room);
    }

    /** Height of the text on one side, margin included. */
    double heightPx(boolean left) {
        double height = margin();
        int lines = left ? title.size() : quality.size();
        for (int i = 0; i < lines; i++) {
            height += canvas.lettering().heightPx(left ? titleCap(i) : SMALL_CAP * unit);
        }
        return height;
    }

    /** Keeps other labels off the lines. */
    void block(LabelPlacer placer) {
        lines.forEach(line -> placer.block(line.box()));
    }

    void draw() {
        for (Line line : lines) {
            double baseline = line.box().top() + canvas.lettering().baselinePx(line.capPx());
            canvas.text(line.text(), line.box().left(), baseline, line.capPx(), line.ink());
        }
    }

    private void layOut(List<String> texts, boolean left, double room) {
        double top = margin();
        for (int i = 0; i < texts.size(); i++) {
            double cap = left ? titleCap(i) : SMALL_CAP * unit;
            Ink ink = left ? Ink.TEXT : Ink.WARNING;
            String text = fitting(texts.get(i), room, cap);
            double width = canvas.lettering().widthPx(text, cap);
            double x = left ? margin() : canvas.widthPx() - margin() - width;
            Box box = Box.at(x, top, width, canvas.lettering().heightPx(cap));
            if (!text.isEmpty() && box.bottom() <= canvas.heightPx()) {
                lines.add(new Line(text, box, cap, ink));
            }
            top = box.bottom();
        }
    }

    private record Line(String text, Box box, double capPx, Ink ink) {}

    /** The text, cut so that it fits. */
    private String fitting(String text, double room, double cap) {
        int length = text.length();
        while (length > 0
                && canvas.lettering().advance(text, 0, length)
                                * canvas.lettering().scaleFor(cap)
                        > room) {
            length--;
        }
        return text.substring(0, length);
    }

    private double titleCap(int line) {
        return (line == 0 ? TITLE_CAP : SMALL_CAP + 1) * unit;
    }

    private double margin() {
        return 12 * unit;
    }
}
