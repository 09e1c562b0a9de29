package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;
import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.PlainText;
import org.boardtopit.report.stills.PhasesScene;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Scalar;

/**
 * The runway with the athlete at every contact and in every flight, and below it the phases from foot to foot.
 *
 * <p>Every frame of a figure is laid into the fixed picture. Of these the background is made ({@link Background}), which joins the views
 * of a panned camera; then the athlete of each is laid on it ({@link AthleteCutout}).
 */
final class PhasePicture implements AutoCloseable {
    private static final int WHO_PX = 46;
    private static final int AXIS_PX = 190;
    private static final int BAR_PX = 128;

    private final PhasesScene scene;
    private final List<String> who;
    private final List<Layer> layers = new ArrayList<>();
    private Mat ones = new Mat();

    /**
     * One frame in the fixed picture.
     *
     * @param seen 255 where the frame shows something
     */
    record Layer(PhasesScene.Figure figure, Mat pixels, Mat seen) implements AutoCloseable {
        @Override
        public void close() {
            pixels.close();
            seen.close();
        }
    }

    PhasePicture(PhasesScene scene, List<String> who) {
        this.scene = scene;
        this.who = who;
    }

    boolean wants(int frameIndex) {
        return scene.figures().stream().anyMatch(f -> f.frameIndex() == frameIndex);
    }

    /** Takes what a frame shows of the runway. */
    void add(Mat frame, int frameIndex) {
        for (PhasesScene.Figure figure : scene.figures()) {
            if (figure.frameIndex() == frameIndex) {
                layers.add(layer(frame, figure));
            }
        }
    }

    private Layer layer(Mat frame, PhasesScene.Figure figure) {
        if (ones.rows() != frame.rows() || ones.cols() != frame.cols()) {
            ones.close();
            try (Scalar white = new Scalar(255)) {
                ones = new Mat(frame.rows(), frame.cols(), CV_8UC1, white);
            }
        }
        Homography pictureToFrame = figure.frameToPicture().inverse();
        Mat pixels = new Mat(scene.heightPx(), scene.widthPx(), CV_8UC3);
        Mat seen = new Mat(scene.heightPx(), scene.widthPx(), CV_8UC1);
        Warp.fill(frame, pictureToFrame, pixels, Ink.PANEL);
        Warp.fillWithZero(ones, pictureToFrame, seen);
        return new Layer(figure, pixels, seen);
    }

    /** The whole picture; the caller closes it. */
    Mat painted() {
        int height = WHO_PX + scene.heightPx() + AXIS_PX;
        Mat picture = new Mat(height, scene.widthPx(), CV_8UC3);
        try (Canvas canvas = new Canvas(scene.widthPx(), height)) {
            canvas.drawOn(picture);
            canvas.fill(new Box(0, 0, scene.widthPx(), height), Ink.PANEL);
            runway(picture);
            canvas.text(PlainText.of(String.join("   ", who)), 16, WHO_PX - 14, 22, Ink.TEXT);
            new Axis(canvas).draw();
        }
        return picture;
    }

    private void runway(Mat picture) {
        if (layers.isEmpty()) {
            return;
        }
        try (Rect rect = new Rect(0, WHO_PX, scene.widthPx(), scene.heightPx());
                Mat part = new Mat(picture, rect)) {
            Background.of(layers, part);
            try (Mat empty = part.clone()) {
                for (Layer layer : layers) {
                    AthleteCutout.lay(layer, empty, part);
                }
            }
        }
    }

    /** Below the runway. */
    private final class Axis {
        private final Canvas canvas;
        private final double top = WHO_PX + scene.heightPx();

        Axis(Canvas canvas) {
            this.canvas = canvas;
        }

        void draw() {
            metres();
            scene.spans().forEach(this::span);
            for (Point2 foot : scene.feet()) {
                double y = WHO_PX + foot.y();
                stem(foot.x(), y + 14, top);
                stem(foot.x(), top + AXIS_PX - 8 - BAR_PX, top + AXIS_PX - 8);
                MarkPainter.touchdown(canvas, foot.x(), y + 3, 12, false);
            }
        }

        private void stem(double x, double from, double to) {
            canvas.line(x, from, x, to, 4, Ink.OUTLINE);
            canvas.line(x, from, x, to, 2, Ink.MARK);
        }

        private void metres() {
            double cap = 20;
            double lastEnd = Double.NEGATIVE_INFINITY;
            List<PhasesScene.Metre> fromTheLeft = new ArrayList<>(scene.metres());
            fromTheLeft.sort((a, b) -> Double.compare(a.x(), b.x()));
            for (PhasesScene.Metre metre : fromTheLeft) {
                canvas.line(metre.x(), top, metre.x(), top + (metre.metres() == 0 ? 16 : 9), 2, Ink.QUIET_TEXT);
                String text = metre.metres() == 0 ? "0 m" : Integer.toString(metre.metres());
                double width = canvas.lettering().widthPx(text, cap);
                double left = metre.x() - width / 2;
                if (left > lastEnd + 12 && left > 2 && left + width < canvas.widthPx() - 2) {
                    canvas.text(text, left, top + 16 + 1.3 * cap, cap, Ink.QUIET_TEXT);
                    lastEnd = left + width;
                }
            }
        }

        private void span(PhasesScene.Span span) {
            double left = Math.min(span.fromX(), span.toX());
            double right = Math.max(span.fromX(), span.toX());
            Box bar = new Box(left + 2, top + AXIS_PX - 8 - BAR_PX, right - 2, top + AXIS_PX - 8);
            canvas.fill(bar, StripPainter.inkOf(span.name()));
            boolean metres = !span.distance().isEmpty();
            String first = PlainText.of(span.word());
            String second = PlainText.of(metres ? span.distance() : span.share());
            String third = PlainText.of(metres ? span.share() : "");
            line(first, bar, 34, 26, Ink.TEXT);
            line(second, bar, 78, 32, Ink.TEXT);
            line(third, bar, 116, 26, Ink.TEXT);
        }

        /** In the middle of the bar, as large as it fits. */
        private void line(String text, Box bar, double below, double cap, Ink ink) {
            double width = canvas.lettering().widthPx(text, cap);
            double fitting = Math.min(1, (bar.width() - 12) / Math.max(1, width));
            if (!text.isEmpty() && fitting > 0.4) {
                canvas.text(text, bar.centreX() - fitting * width / 2, bar.top() + below, fitting * cap, ink);
            }
        }
    }

    @Override
    public void close() {
        layers.forEach(Layer::close);
        ones.close();
    }
}
