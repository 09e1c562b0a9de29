package org.boardtopit.report.overlay.drawing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.CameraScene;
import org.boardtopit.report.overlay.CameraScene.SceneLine;
import org.boardtopit.report.overlay.CameraScene.SceneMark;
import org.boardtopit.report.overlay.PlainText;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgcodecs;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * Draws a camera's marks and the runway they imply on its reference picture, enlarged so that marks a few pixels apart can be
 * told from each other. Names stand in rows above and below the runway, each tied to its mark by a line.
 */
public final class CameraPicture {
    private static final double LEAST_WIDTH_PX = 2400;
    private static final double CAP_SHARE = 1 / 150.0; // of the picture's width
    private static final int JPEG_QUALITY = 92;

    private final Canvas canvas;
    private final double scale;
    private final double capPx;

    private CameraPicture(Canvas canvas, double scale) {
        this.canvas = canvas;
        this.scale = scale;
        this.capPx = CAP_SHARE * canvas.widthPx();
    }

    /** Reads the picture, draws, and writes a JPEG under a temporary name that is moved. */
    public static void write(Path picture, CameraScene scene, Path target) throws IOException {
        byte[] bytes = Files.readAllBytes(picture);
        try (BytePointer pointer = new BytePointer(bytes);
                Mat buffer = new Mat(1, bytes.length, opencv_core.CV_8UC1, pointer);
                Mat colour = opencv_imgcodecs.imdecode(buffer, opencv_imgcodecs.IMREAD_COLOR);
                Mat large = new Mat()) {
            if (colour.empty()) {
                throw new IOException(picture + ": not a picture; a JPEG or PNG is needed");
            }
            double scale = Math.max(1, Math.ceil(LEAST_WIDTH_PX / colour.cols()));
            try (Size size = new Size((int) (scale * colour.cols()), (int) (scale * colour.rows()))) {
                opencv_imgproc.resize(colour, large, size, 0, 0, opencv_imgproc.INTER_CUBIC);
            }
            try (Canvas canvas = new Canvas(large.cols(), large.rows())) {
                canvas.drawOn(large);
                new CameraPicture(canvas, scale).draw(scene);
            }
            JpegFile.write(large, JPEG_QUALITY, target);
        }
    }

    private void draw(CameraScene scene) {
        for (SceneLine line : scene.lines()) {
            line(line, scene.marks());
        }
        for (SceneMark mark : scene.marks()) {
            mark(mark);
        }
        names(scene.marks());
        headings(scene.headings());
    }

    private void line(SceneLine line, List<SceneMark> marks) {
        if (!line.from().isKnown() || !line.to().isKnown()) {
            return;
        }
        Ink ink = line.strong() ? Ink.ANGLE : Ink.QUIET_TEXT;
        double x1 = scale * line.from().x();
        double y1 = scale * line.from().y();
        double x2 = scale * line.to().x();
        double y2 = scale * line.to().y();
        canvas.line(x1, y1, x2, y2, line.strong() ? 2 : 1, ink);
        boolean free = marks.stream()
                .noneMatch(m -> Math.abs(scale * m.clicked().x() - x2) < 1.5 * capPx); // the name's line stands there
        if (!line.label().isEmpty() && free) {
            double width = canvas.lettering().widthPx(line.label(), 0.8 * capPx);
            canvas.text(line.label(), x2 - width / 2, y2 - 0.6 * capPx, 0.8 * capPx, ink);
        }
    }

    /** A cross where the table has the mark, a ring where the others expect it. */
    private void mark(SceneMark mark) {
        Ink ink = mark.off() ? Ink.WARNING : Ink.MARK;
        double x = scale * mark.clicked().x();
        double y = scale * mark.clicked().y();
        double arm = 0.5 * capPx;
        canvas.line(x - arm, y, x + arm, y, 2, ink);
        canvas.line(x, y - arm, x, y + arm, 2, ink);
        if (mark.predicted().isKnown()) {
            double px = scale * mark.predicted().x();
            double py = scale * mark.predicted().y();
            canvas.ring(px, py, 0.45 * capPx, 2, ink);
            if (mark.off()) {
                canvas.dashedLine(x, y, px, py, capPx, 0.5 * capPx, 2, ink);
            }
        }
    }

    /** From left to right, marks of the far side above and of the near side below, each in the first row with room. */
    private void names(List<SceneMark> marks) {
        double top = Double.POSITIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (SceneMark m : marks) {
            if (!m.off()) {
                top = Math.min(top, scale * m.clicked().y());
                bottom = Math.max(bottom, scale * m.clicked().y());
            }
        }
        List<SceneMark> ordered = new ArrayList<>(marks);
        ordered.sort(Comparator.comparingDouble(m -> m.clicked().x()));
        List<Box> taken = new ArrayList<>();
        for (SceneMark m : ordered) {
            double edge = m.off() ? scale * m.clicked().y() : m.farSide() ? top : bottom;
            name(m, m.farSide(), edge, taken);
        }
    }

    private void name(SceneMark mark, boolean above, double edge, List<Box> taken) {
        String text = PlainText.of(mark.name());
        double x = scale * mark.clicked().x();
        double width = canvas.lettering().widthPx(text, capPx);
        double height = canvas.lettering().heightPx(capPx);
        double left = Math.max(2, Math.min(canvas.widthPx() - width - 2, x - width / 2));
        for (int row = 0; row < 60; row++) {
            double away = 2.5 * capPx + row * 1.1 * height;
            Box box = Box.at(left, above ? edge - away - height : edge + away, width, height);
            Box roomy = box.grown(0.3 * capPx);
            if (taken.stream().noneMatch(roomy::overlaps)) {
                taken.add(box);
                Ink ink = mark.off() ? Ink.WARNING : Ink.TEXT;
                canvas.line(x, scale * mark.clicked().y(), x, above ? box.bottom() : box.top(), 1, ink);
                canvas.text(text, left, box.top() + canvas.lettering().baselinePx(capPx), capPx, ink);
                return;
            }
        }
    }

    private void headings(List<String> lines) {
        double large = 1.3 * capPx;
        double height = canvas.lettering().heightPx(large) * 1.15;
        double widest = 0;
        for (String line : lines) {
            widest = Math.max(widest, canvas.lettering().widthPx(PlainText.of(line), large));
        }
        canvas.shade(Box.at(0, 0, widest + 4 * capPx, lines.size() * height + 2 * capPx), 0.6);
        for (int i = 0; i < lines.size(); i++) {
            double baseline = capPx + i * height + canvas.lettering().baselinePx(large);
            canvas.text(PlainText.of(lines.get(i)), 2 * capPx, baseline, large, Ink.TEXT);
        }
    }
}
