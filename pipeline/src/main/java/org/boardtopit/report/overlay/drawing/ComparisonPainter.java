package org.boardtopit.report.overlay.drawing;

import java.nio.ByteBuffer;
import org.boardtopit.report.comparison.CloseWindow;
import org.boardtopit.report.comparison.ComparisonLayout;
import org.boardtopit.report.comparison.ComparisonScene;
import org.boardtopit.report.comparison.ComparisonScene.Footprint;
import org.boardtopit.report.comparison.ComparisonScene.Shot;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.PlainText;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoFrame;

/**
 * Paints the pictures of a comparison. Faces must be hidden in the frames that it is given. To be given the shots in their order: the
 * runway keeps, darker, what a panned camera no longer shows. Use from one thread.
 */
final class ComparisonPainter implements AutoCloseable {
    private static final double TITLE_CAP = 13;
    private static final double TEXT_CAP = 11;
    private static final double LETTER_CAP = 24;
    private static final double MARGIN = 14;

    /** What the camera does not show now. */
    private static final double SEEN_BEFORE_SHADE = 0.55;

    /** As for an athlete of this height; thinner than in an overlay, for the athlete behind the lines is what is compared. */
    private static final double CLOSE_LINE_PX = 140;

    private static final double RUNWAY_LINE_PX = 112;

    private static final double HALF_RUNWAY_M = 0.61; // width 1.22 m: World Athletics technical rule 27
    private static final int FARTHEST_M = 30;

    private final ComparisonScene scene;
    private final ComparisonLayout layout;
    private final ByteBuffer pixels;
    private final Canvas canvas;
    private final PicturePanel closeA;
    private final PicturePanel both;
    private final PicturePanel closeB;
    private final PicturePanel seen;
    private final PicturePanel runway;
    private final ComparisonStrip strip;
    private int runwayFrame = -1;

    ComparisonPainter(ComparisonScene scene) {
        this.scene = scene;
        layout = scene.layout();
        pixels = ByteBuffer.allocateDirect(3 * layout.widthPx() * layout.heightPx());
        canvas = new Canvas(layout.widthPx(), layout.heightPx());
        canvas.drawOn(pixels);
        closeA = new PicturePanel(layout.closeA());
        both = new PicturePanel(layout.both());
        closeB = new PicturePanel(layout.closeB());
        seen = new PicturePanel(layout.runway());
        runway = new PicturePanel(layout.runway());
        strip = new ComparisonStrip(canvas, scene);
    }

    /** Paints one shot, by its number; the pixels of the picture are valid until the next call. */
    VideoFrame paint(int index, Shot shot, VideoFrame a, VideoFrame b) {
        close(closeA, a, scene.closeA(shot.frameA()), scene.poseA(shot.frameA()), Ink.ATTEMPT_A);
        close(closeB, b, scene.closeB(shot.frameB()), scene.poseB(shot.frameB()), Ink.ATTEMPT_B);
        caption(closeA, true, shot);
        caption(closeB, false, shot);
        both(index, shot, a);
        runway(shot, a);
        closeA.stampOn(canvas);
        both.stampOn(canvas);
        closeB.stampOn(canvas);
        runway.stampOn(canvas);
        borders();
        strip.draw(shot);
        return picture(index, shot.playUs());
    }

    /** The table, over the last shot. */
    VideoFrame paintTable(int index, long timeUs, boolean first) {
        if (first) {
            new DifferenceTablePainter(canvas, scene.page()).draw();
        }
        return picture(index, timeUs);
    }

    private VideoFrame picture(int index, long timeUs) {
        return new VideoFrame(index, timeUs, layout.widthPx(), layout.heightPx(), pixels);
    }

    private void close(PicturePanel panel, VideoFrame frame, CloseWindow window, FramePose pose, Ink ink) {
        panel.lay(frame, window.toPicture(), true);
        skeleton(panel, pose, p -> panel.inside(window.place(p)), CLOSE_LINE_PX, ink);
    }

    /** B's lines are dashed: colour is never the only thing that tells who is who. */
    private static void skeleton(PicturePanel panel, FramePose pose, Placement placement, double linePx, Ink ink) {
        new SkeletonPainter(panel.canvas()).drawAs(pose, placement, linePx, ink, ink == Ink.ATTEMPT_B);
    }

    /** A's picture with both, close by. */
    private void both(int index, Shot shot, VideoFrame a) {
        CloseWindow window = scene.closeBoth(index);
        both.lay(a, window.toPicture(), true);
        Placement placement = p -> both.inside(window.place(p));
        skeleton(both, scene.poseA(shot.frameA()), placement, CLOSE_LINE_PX, Ink.ATTEMPT_A);
        skeleton(both, scene.onFrameOfA(shot.frameB(), shot.frameA()), placement, CLOSE_LINE_PX, Ink.ATTEMPT_B);
        Canvas c = both.canvas();
        double baseline = MARGIN + LETTER_CAP;
        double x = MARGIN + c.lettering().widthPx("A", LETTER_CAP) + 6;
        c.text("A", MARGIN, baseline, LETTER_CAP, Ink.ATTEMPT_A);
        c.text("B", x, baseline, LETTER_CAP, Ink.ATTEMPT_B);
        c.text(
                PlainText.of(scene.overRemark()),
                x + 34,
                baseline - LETTER_CAP + TITLE_CAP,
                TEXT_CAP,
                scene.hasMetres() ? Ink.QUIET_TEXT : Ink.WARNING);
    }

    private void caption(PicturePanel panel, boolean ofA, Shot shot) {
        Canvas c = panel.canvas();
        Ink ink = ofA ? Ink.ATTEMPT_A : Ink.ATTEMPT_B;
        double baseline = MARGIN + LETTER_CAP;
        c.text(ofA ? "A" : "B", MARGIN, baseline, LETTER_CAP, ink);
        double x = MARGIN + 34;
        c.text(PlainText.of(scene.title(ofA)), x, baseline - LETTER_CAP + TITLE_CAP, TITLE_CAP, Ink.TEXT);
        if (!ofA && !scene.remarkOfB().isEmpty()) {
            c.text(PlainText.of(scene.remarkOfB()), x, baseline + TEXT_CAP, TEXT_CAP, Ink.WARNING);
        }
        double bottom = layout.closeA().height() - MARGIN;
        String clock = PlainText.of(scene.clock(ofA, shot.moment()));
        c.changingText(clock, MARGIN, bottom, TITLE_CAP, ink);
        double after = MARGIN + c.lettering().widthPx(clock, TITLE_CAP) + 8;
        c.text(PlainText.of(scene.clockStart()), after, bottom, TEXT_CAP, Ink.QUIET_TEXT);
    }

    private void runway(Shot shot, VideoFrame a) {
        if (runwayFrame != shot.frameA()) {
            runwayFrame = shot.frameA();
            seen.lay(a, scene.frameToRunway(shot.frameA()), false);
        }
        runway.takeFaintly(seen, SEEN_BEFORE_SHADE);
        runway.lay(a, scene.frameToRunway(shot.frameA()), false);
        metres();
        FramePose ofA = scene.onRunwayA(shot.frameA());
        FramePose ofB = scene.onRunwayB(shot.frameB());
        skeleton(runway, ofA, runway::inside, RUNWAY_LINE_PX, Ink.ATTEMPT_A);
        skeleton(runway, ofB, runway::inside, RUNWAY_LINE_PX, Ink.ATTEMPT_B);
        footprints(shot);
        runway.canvas().text(PlainText.of(scene.runwayRemark()), MARGIN, MARGIN + TEXT_CAP, TEXT_CAP, Ink.QUIET_TEXT);
    }

    /** Lines across the runway, one a metre, that of the take-off line the strongest. */
    private void metres() {
        for (int m = -FARTHEST_M; m <= FARTHEST_M; m++) {
            Point2 near = runway.inside(scene.ground(m, -HALF_RUNWAY_M));
            Point2 far = runway.inside(scene.ground(m, HALF_RUNWAY_M));
            if (near.isKnown() && far.isKnown()) {
                boolean line = m == 0;
                runway.canvas()
                        .line(near.x(), near.y(), far.x(), far.y(), line ? 3 : 1, line ? Ink.TEXT : Ink.QUIET_TEXT);
            }
        }
    }

    /** A row for each attempt: where its contacts were, once they have come. */
    private void footprints(Shot shot) {
        double height = layout.runway().height();
        Canvas c = runway.canvas();
        c.shade(Box.at(0, height - ComparisonLayout.ROWS_PX, c.widthPx(), ComparisonLayout.ROWS_PX), 0.7);
        c.text("A", MARGIN, height - 31, TEXT_CAP, Ink.ATTEMPT_A);
        c.text("B", MARGIN, height - 8, TEXT_CAP, Ink.ATTEMPT_B);
        for (Footprint print : scene.footprints()) {
            Point2 place = runway.inside(scene.ground(print.alongM(), 0));
            if (place.isKnown() && print.atS() <= shot.moment().aS() + 1e-6) {
                footprint(print, place, height - (print.ofA() ? 31 : 8));
            }
        }
    }

    private void footprint(Footprint print, Point2 place, double baseline) {
        Canvas c = runway.canvas();
        Ink ink = print.ofA() ? Ink.ATTEMPT_A : Ink.ATTEMPT_B;
        double top = baseline - TEXT_CAP - 2;
        c.line(place.x(), Math.min(place.y() + 3, top), place.x(), baseline, 1, ink);
        c.triangle(place.x(), top - 1, place.x() - 5, top + 8, place.x() + 5, top + 8, ink);
        String text = PlainText.of(scene.metres(print.alongM()));
        double width = c.lettering().widthPx(text, TEXT_CAP);
        double right = place.x() + 9;
        c.text(text, right + width < c.widthPx() ? right : place.x() - 9 - width, baseline, TEXT_CAP, ink);
    }

    private void borders() {
        for (double x : new double[] {layout.both().left(), layout.both().right()}) {
            canvas.fill(new Box(x - 1, 0, x + 1, layout.both().bottom()), Ink.OUTLINE);
        }
        canvas.fill(
                new Box(
                        0,
                        layout.runway().top() - 1,
                        layout.widthPx(),
                        layout.runway().top() + 1),
                Ink.OUTLINE);
    }

    @Override
    public void close() {
        canvas.close();
        closeA.close();
        both.close();
        closeB.close();
        seen.close();
        runway.close();
    }
}
