package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_LINEAR;
import static org.bytedeco.opencv.global.opencv_imgproc.resize;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.LabelPlacer;
import org.boardtopit.report.overlay.LabelPlacer.Lean;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.OverlayWords;
import org.boardtopit.report.overlay.PlainText;
import org.boardtopit.report.overlay.TouchdownFigure;
import org.boardtopit.signal.Point2;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * An enlarged view of a small athlete in one of the top corners.
 *
 * <p>It stays in the one corner, and has the one size, that keep it out of the athlete's way for longest, and is left out
 * on frames where the athlete comes near it. Its centre follows the athlete smoothly.
 */
final class CloseView implements AutoCloseable {
    /** Below this share of the picture's shorter side an athlete counts as small: 200 px in a 720-line picture. */
    private static final double SMALL_SHARE = 0.28;

    /** Sides to try, as shares of the picture's shorter side: the first that stays out of the athlete's way is taken. */
    private static final double[] SIZE_SHARES = {0.4, 0.36, 0.32, 0.28};

    /** The view is this many times as high as the athlete. */
    private static final double ROOM = 1.45;

    private final int widthPx;
    private final int heightPx;
    private final Box place;
    private final int sidePx;
    private final double zoom;
    private final Centres centres;
    private final OverlayWords words;

    private final Mat view;
    private final Mat painted;
    private final Canvas canvas;
    private final SkeletonPainter skeletons;
    private final AnglePainter angles;
    private final LabelPlacer placer;
    private final double athletePx;
    private FramePose shown;
    private double cropLeft;
    private double cropTop;

    private CloseView(int widthPx, int heightPx, Box place, double athletePx, Centres centres, OverlayWords words) {
        this.words = words;
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.place = place;
        this.centres = centres;
        sidePx = (int) place.width();
        zoom = sidePx / (ROOM * athletePx);
        this.athletePx = athletePx;
        view = new Mat(sidePx, sidePx, CV_8UC3);
        painted = new Mat(sidePx, sidePx, CV_8UC3);
        canvas = new Canvas(sidePx, sidePx);
        skeletons = new SkeletonPainter(canvas);
        angles = new AnglePainter(canvas, words);
        placer = new LabelPlacer(sidePx, sidePx);
    }

    /** A close view for the scene, if it has one. */
    static Optional<CloseView> forScene(
            OverlayScene scene, int widthPx, int heightPx, double headerLeft, double headerRight) {
        double athletePx = AthleteSize.of(scene.frames());
        int shorter = Math.min(widthPx, heightPx);
        boolean wanted = scene.closeView() == OverlayScene.CloseView.ON
                || (scene.closeView() == OverlayScene.CloseView.AUTO && athletePx < SMALL_SHARE * shorter);
        if (!wanted) {
            return Optional.empty();
        }
        List<Box> choices = new ArrayList<>();
        double margin = Math.round(0.016 * shorter);
        for (double share : SIZE_SHARES) {
            double side = Math.round(share * shorter);
            // Under 64 px there is nothing to see; and it must enlarge.
            if (side >= 64 && side > ROOM * athletePx && side < widthPx / 2.0) {
                choices.add(Box.at(widthPx - margin - side, Math.rint(headerRight + margin / 2), side, side));
                choices.add(Box.at(margin, Math.rint(headerLeft + margin / 2), side, side));
            }
        }
        return choices.stream()
                .filter(place -> place.bottom() <= 0.8 * heightPx)
                .min(Comparator.comparingLong(place -> meetings(scene, place)))
                .map(place -> new CloseView(
                        widthPx,
                        heightPx,
                        place,
                        athletePx,
                        new Centres(scene.frames()),
                        new OverlayWords(scene.language())));
    }

    /** Frames on which the athlete would hide the view, touchdowns counting most. */
    private static long meetings(OverlayScene scene, Box place) {
        long frames = scene.frames().stream().filter(f -> meets(f, place)).count();
        long touchdowns =
                scene.touchdowns().stream().filter(t -> meets(t.pose(), place)).count();
        return frames + 1000 * touchdowns;
    }

    private static boolean meets(FramePose frame, Box place) {
        return frame.bounds()
                .filter(box -> box.grown(box.height() / 8).overlaps(place))
                .isPresent();
    }

    Box place() {
        return place;
    }

    /** True when this frame's athlete is seen and away from the view's corner. */
    boolean fits(FramePose frame) {
        return frame.bounds().isPresent() && !meets(frame, place);
    }

    /** Takes the enlarged picture out of a frame that has not been painted on yet. */
    void take(Mat picture, FramePose frame) {
        Point2 centre = centres.at(frame.frameIndex());
        double crop = sidePx / zoom;
        cropLeft = Math.round(centre.x() - crop / 2);
        cropTop = Math.round(centre.y() - crop / 2);
        int from = (int) Math.max(0, cropLeft);
        int top = (int) Math.max(0, cropTop);
        int to = (int) Math.min(widthPx, cropLeft + Math.round(crop));
        int bottom = (int) Math.min(heightPx, cropTop + Math.round(crop));
        canvas.drawOn(view);
        canvas.fill(new Box(0, 0, sidePx, sidePx), Ink.PANEL);
        if (to - from >= 2 && bottom - top >= 2) {
            enlarge(picture, from, top, to, bottom);
        }
        shown = frame;
    }

    private void enlarge(Mat picture, int left, int top, int right, int bottom) {
        int x1 = (int) Math.max(0, Math.round((left - cropLeft) * zoom));
        int y1 = (int) Math.max(0, Math.round((top - cropTop) * zoom));
        int x2 = (int) Math.min(sidePx, Math.round((right - cropLeft) * zoom));
        int y2 = (int) Math.min(sidePx, Math.round((bottom - cropTop) * zoom));
        if (x2 <= x1 || y2 <= y1) {
            return;
        }
        try (Rect source = new Rect(left, top, right - left, bottom - top);
                Rect target = new Rect(x1, y1, x2 - x1, y2 - y1);
                Mat small = new Mat(picture, source);
                Mat large = new Mat(view, target);
                Size size = new Size(x2 - x1, y2 - y1)) {
            resize(small, large, size, 0, 0, INTER_LINEAR);
        }
    }

    /** True while the enlarged picture is the one of this frame. */
    boolean shows(FramePose frame) {
        return shown != null && shown.equals(frame);
    }

    /** The enlarged picture with the skeleton, and with the angles of a touchdown when it is that frame. */
    Mat painted(Optional<TouchdownFigure> touchdown, boolean leftToRight, double unit) {
        view.copyTo(painted);
        canvas.drawOn(painted);
        placer.clear();
        double drawnPx = athletePx * zoom;
        skeletons.draw(shown, this::enlarged, athletePx, drawnPx);
        double caption = caption(touchdown, unit);
        placer.block(new Box(0, sidePx - caption, sidePx, sidePx));
        touchdown.ifPresent(figure -> {
            Lean side = leftToRight ? Lean.LEFT : Lean.RIGHT;
            double edge = edge(shown, leftToRight);
            angles.draw(figure.angles(), this::enlarged, drawnPx, 10 * unit, placer, side, edge);
        });
        frame(touchdown.isPresent(), unit);
        return painted;
    }

    /** Where the values of the angles stand: on the side the athlete comes from. */
    private double edge(FramePose pose, boolean leftToRight) {
        Box body = pose.bounds().orElseThrow();
        return enlarged(new Point2(leftToRight ? body.left() : body.right(), body.top()))
                .x();
    }

    private double caption(Optional<TouchdownFigure> touchdown, double unit) {
        double cap = 9 * unit;
        String text = touchdown
                .map(t -> PlainText.of(t.title()) + "  " + words.seconds(t.timeUs() / 1e6))
                .orElseGet(() -> words.closeView(zoom));
        canvas.text(text, 7 * unit, sidePx - 8 * unit, cap, touchdown.isPresent() ? Ink.TEXT : Ink.QUIET_TEXT);
        return cap + 14 * unit;
    }

    private void frame(boolean held, double unit) {
        int width = Math.max(1, (int) Math.round((held ? 3 : 1.4) * unit));
        Ink ink = held ? Ink.TEXT : Ink.QUIET_TEXT;
        canvas.fill(new Box(0, 0, sidePx, width), ink);
        canvas.fill(new Box(0, sidePx - width, sidePx, sidePx), ink);
        canvas.fill(new Box(0, 0, width, sidePx), ink);
        canvas.fill(new Box(sidePx - width, 0, sidePx, sidePx), ink);
    }

    /** From frame px of the shown frame to the enlarged picture. */
    private Point2 enlarged(Point2 p) {
        return new Point2((p.x() - cropLeft) * zoom, (p.y() - cropTop) * zoom);
    }

    @Override
    public void close() {
        canvas.close();
        view.close();
        painted.close();
    }
}
