package org.boardtopit.report.overlay.drawing;

import java.util.Optional;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.LabelPlacer;
import org.boardtopit.report.overlay.LabelPlacer.Lean;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.OverlayWords;
import org.boardtopit.report.overlay.TouchdownFigure;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoFrame;

/**
 * Paints a scene onto the frames of its clip, into the frames' own pixels.
 *
 * <p>Give it the frames in their order: the close view holds the picture of a touchdown for a moment, and it has that
 * picture only when that frame has been painted before. Otherwise a frame's painting depends on nothing but the frame and
 * the scene. Use from one thread.
 */
public final class OverlayPainter implements AutoCloseable {
    private final OverlayScene scene;
    private final int widthPx;
    private final int heightPx;
    private final double unit;
    private final double athletePx;
    private final Canvas canvas;
    private final SkeletonPainter skeletons;
    private final AnglePainter angles;
    private final MarkPainter marks;
    private final StripPainter strip;
    private final HeaderPainter header;
    private final Optional<CloseView> closeView;
    private final LabelPlacer placer;

    /** For frames of one size. */
    public OverlayPainter(OverlayScene scene, int widthPx, int heightPx) {
        this.scene = scene;
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        unit = unitFor(widthPx, heightPx);
        double seenPx = AthleteSize.of(scene.frames());
        athletePx = Double.isNaN(seenPx) ? 0.25 * heightPx : seenPx;
        canvas = new Canvas(widthPx, heightPx);
        skeletons = new SkeletonPainter(canvas);
        angles = new AnglePainter(canvas, new OverlayWords(scene.language()));
        marks = new MarkPainter(canvas, scene.contacts());
        strip = new StripPainter(canvas, scene, unit);
        header = new HeaderPainter(canvas, scene, unit);
        closeView = CloseView.forScene(scene, widthPx, heightPx, header.heightPx(true), header.heightPx(false));
        placer = new LabelPlacer(widthPx, heightPx);
    }

    /** All sizes are in units: 1 px in a picture whose shorter side has 720, a little more in small pictures. */
    private static double unitFor(int widthPx, int heightPx) {
        double unit = Math.min(widthPx, heightPx) / 720.0;
        return unit < 1 ? Math.max(0.95 * Math.sqrt(unit), unit) : unit;
    }

    /**
     * Paints one frame.
     *
     * @throws IllegalArgumentException when its size is not the painter's
     */
    public void paint(VideoFrame frame) {
        if (frame.widthPx() != widthPx || frame.heightPx() != heightPx) {
            throw new IllegalArgumentException("the painter is for " + widthPx + " x " + heightPx + ", the frame is "
                    + frame.widthPx() + " x " + frame.heightPx());
        }
        canvas.drawOn(frame.bgr());
        placer.clear();
        placer.block(strip.panel());
        Optional<FramePose> pose = scene.frame(frame.index());
        Optional<TouchdownFigure> touchdown = scene.touchdownAt(frame.timestampUs());
        boolean close = pose.isPresent() && takeCloseView(pose.get(), touchdown);
        pose.ifPresent(p -> paintScene(p, frame.timestampUs(), touchdown));
        if (close) {
            CloseView view = closeView.get();
            Optional<TouchdownFigure> held = touchdown.filter(t -> view.shows(t.pose()));
            canvas.stamp(view.painted(held, scene.leftToRight(), unit), view.place());
        }
        strip.draw(
                frame.timestampUs(), frame.index(), pose.map(this::reachesStrip).orElse(false));
        header.draw();
    }

    /** True when a close view is to be shown; it then holds this frame's picture or still that of the touchdown. */
    private boolean takeCloseView(FramePose pose, Optional<TouchdownFigure> touchdown) {
        if (closeView.isEmpty() || !closeView.get().fits(pose)) {
            return false;
        }
        CloseView view = closeView.get();
        placer.block(view.place());
        boolean held = touchdown.filter(t -> view.shows(t.pose())).isPresent();
        if (!held) {
            view.take(canvas.picture(), pose);
        }
        return true;
    }

    private void paintScene(FramePose pose, long timeUs, Optional<TouchdownFigure> touchdown) {
        header.block(placer);
        boolean atTouchdown = touchdown.filter(t -> isFrameOf(t, pose)).isPresent();
        if (pose.fixedToFrame().isPresent()) {
            Homography fixedToFrame = pose.fixedToFrame().get();
            double markPx = Math.max(7 * unit, 0.06 * athletePx);
            // The frame nearest to a touchdown may lie just before it and shows its mark all the same.
            long dueUs = Math.max(timeUs, touchdown.map(TouchdownFigure::timeUs).orElse(timeUs));
            marks.draw(dueUs, fixedToFrame, markPx, 10 * unit, placer);
            if (touchdown.isPresent() && !atTouchdown) {
                trace(touchdown.get(), fixedToFrame, timeUs);
            }
        }
        skeletons.draw(pose, Placement.UNMOVED, athletePx, athletePx);
        if (atTouchdown) {
            values(touchdown.get(), Placement.UNMOVED);
        }
    }

    private static boolean isFrameOf(TouchdownFigure touchdown, FramePose pose) {
        return touchdown.pose().frameIndex() == pose.frameIndex();
    }

    /** The figure of the touchdown, standing on the runway where it was. */
    private void trace(TouchdownFigure figure, Homography fixedToFrame, long timeUs) {
        Optional<Homography> thenToFixed = figure.pose().fixedToFrame().map(Homography::inverse);
        if (thenToFixed.isEmpty()) {
            return;
        }
        Homography thenToNow = fixedToFrame.after(thenToFixed.get());
        Placement placement = p -> p.isKnown() ? thenToNow.apply(p) : p;
        figure.pose().bounds().map(box -> reach(box, placement)).ifPresent(reach -> {
            canvas.faintly(reach, figure.strengthAt(timeUs), () -> {
                skeletons.drawTrace(figure.pose(), placement, athletePx);
                values(figure, placement);
            });
        });
    }

    /** The part of the picture that a figure and its values may take. */
    private Box reach(Box pose, Placement placement) {
        Point2 centre = placement.of(new Point2(pose.centreX(), pose.centreY()));
        return centre.isKnown()
                ? Box.centredOn(centre.x(), centre.y(), 2 * athletePx + 400 * unit, 2 * athletePx + 60 * unit)
                : new Box(0, 0, 0, 0);
    }

    /** The angles, their values on the side the athlete comes from, clear of the body. */
    private void values(TouchdownFigure figure, Placement placement) {
        Optional<Box> body = figure.pose().bounds();
        if (body.isEmpty()) {
            return;
        }
        double backX = scene.leftToRight() ? body.get().left() : body.get().right();
        double edge = placement.of(new Point2(backX, body.get().centreY())).x();
        Lean side = scene.leftToRight() ? Lean.LEFT : Lean.RIGHT;
        double capPx = Math.min(13 * unit, Math.max(9.5 * unit, 0.05 * athletePx));
        angles.draw(figure.angles(), placement, athletePx, capPx, placer, side, edge);
    }

    private boolean reachesStrip(FramePose pose) {
        return pose.bounds().filter(strip.panel()::overlaps).isPresent();
    }

    @Override
    public void close() {
        closeView.ifPresent(CloseView::close);
        canvas.close();
    }
}
