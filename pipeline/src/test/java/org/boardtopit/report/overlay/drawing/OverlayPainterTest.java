package org.boardtopit.report.overlay.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.overlay.AngleCallout;
import org.boardtopit.report.overlay.BodySide;
import org.boardtopit.report.overlay.ContactMark;
import org.boardtopit.report.overlay.ContactMark.Instant;
import org.boardtopit.report.overlay.DrawnAthlete;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.OverlayScene.CloseView;
import org.boardtopit.report.overlay.OverlayWords;
import org.boardtopit.report.overlay.PhaseSpan;
import org.boardtopit.report.overlay.TouchdownFigure;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OverlayPainterTest {
    private static final OverlayWords ENGLISH = new OverlayWords(Language.ENGLISH);

    private static final int W = 640;
    private static final int H = 480;
    private static final int GREY = 0x80;
    /** Below this line is the strip. */
    private static final int ABOVE_STRIP = 400;

    private static Homography shift(double dx) {
        return new Homography(1, 0, dx, 0, 1, 0, 0, 0, 1);
    }

    private static ContactMark mark(Instant instant, double x, double y, long timeUs) {
        return new ContactMark("hop landing", instant, "", new Point2(x, y), timeUs);
    }

    private static OverlayScene scene(
            List<PhaseSpan> phases, List<ContactMark> marks, List<TouchdownFigure> touchdowns, List<FramePose> frames) {
        return scene(phases, marks, touchdowns, frames, CloseView.OFF);
    }

    private static OverlayScene scene(
            List<PhaseSpan> phases,
            List<ContactMark> marks,
            List<TouchdownFigure> touchdowns,
            List<FramePose> frames,
            CloseView closeView) {
        return new OverlayScene(
                List.of(), List.of(), 4_000_000, true, phases, marks, touchdowns, frames, closeView, Language.ENGLISH);
    }

    private static Pixels paint(OverlayScene scene, int frameIndex, long timeUs) {
        try (OverlayPainter painter = new OverlayPainter(scene, W, H)) {
            return new Pixels(frameIndex, timeUs, W, H, GREY).painted(painter);
        }
    }

    private static TouchdownFigure touchdown(FramePose pose) {
        return new TouchdownFigure(
                "hop landing R",
                pose.timestampUs(),
                pose,
                List.of(
                        AngleCallout.trunk(pose, 5).orElseThrow(),
                        AngleCallout.hip(pose, BodySide.RIGHT, 140).orElseThrow(),
                        AngleCallout.knee(pose, BodySide.RIGHT, 160).orElseThrow()));
    }

    /** Everything at once, with names that are too long for small pictures. */
    private static OverlayScene full(int widthPx, int heightPx) {
        double height = 0.4 * heightPx;
        List<FramePose> frames = List.of(
                DrawnAthlete.standing(0, 0, 0.2 * widthPx, 0.7 * heightPx, height),
                DrawnAthlete.standing(1, 1_000_000, 0.5 * widthPx, 0.7 * heightPx, height, shift(5), 0.1 * height),
                DrawnAthlete.standing(2, 1_100_000, 0.98 * widthPx, 1.1 * heightPx, height),
                FramePose.withoutAthlete(3, 1_200_000, Optional.of(shift(1e7))));
        return new OverlayScene(
                List.of("J\u00f6rg of Brackenfold Field & Track with a very long name indeed", "attempt 3"),
                List.of("quality usable", "scale from stature"),
                1_300_000,
                false,
                List.of(new PhaseSpan(PhaseName.HOP, 100_000, 900_000, "6.01 m  36.2 %")),
                List.of(
                        ContactMark.labelled(
                                "board", "L", Instant.TOUCHDOWN, new Point2(2, 0.7 * heightPx), 50_000, ENGLISH),
                        ContactMark.labelled(
                                "board",
                                "L",
                                Instant.TOE_OFF,
                                new Point2(widthPx - 2, heightPx - 2),
                                100_000,
                                ENGLISH)),
                List.of(touchdown(frames.get(1))),
                frames,
                CloseView.ON,
                Language.ENGLISH);
    }

    @Test
    void nearAndFarSideDifferInColourAndLineStyle() {
        FramePose pose = DrawnAthlete.standing(0, 0, 320, 380, 300);
        Pixels pixels = paint(scene(List.of(), List.of(), List.of(), List.of(pose)), 0, 0);
        int near = pixelsAlong(pixels, pose, BodyPoint.RIGHT_HIP, BodyPoint.RIGHT_KNEE, Ink.NEAR);
        int far = pixelsAlong(pixels, pose, BodyPoint.LEFT_HIP, BodyPoint.LEFT_KNEE, Ink.FAR);
        int gaps = pixelsAlong(pixels, pose, BodyPoint.LEFT_HIP, BodyPoint.LEFT_KNEE, Ink.OUTLINE);
        assertEquals(60, near, "the near thigh is one solid line");
        assertTrue(far > 20 && far < 50, "strokes on the far thigh: " + far);
        assertTrue(gaps > 10, "gaps on the far thigh: " + gaps);
    }

    /** How many of 60 places between a fifth and four fifths of a limb have the colour. */
    private static int pixelsAlong(Pixels pixels, FramePose pose, BodyPoint from, BodyPoint to, Ink ink) {
        int count = 0;
        for (int i = 0; i < 60; i++) {
            double share = 0.2 + 0.01 * i;
            Point2 p = pose.place(from).times(1 - share).plus(pose.place(to).times(share));
            count += pixels.rgb((int) p.x(), (int) p.y()) == ink.rgb() ? 1 : 0;
        }
        return count;
    }

    @Test
    void anUncertainJointIsHollow() {
        FramePose sure = DrawnAthlete.standing(0, 0, 320, 380, 300, Homography.IDENTITY, 1);
        FramePose unsure = DrawnAthlete.standing(0, 0, 320, 380, 300, Homography.IDENTITY, 30);
        Point2 knee = sure.place(BodyPoint.RIGHT_KNEE);
        int filled = paint(scene(List.of(), List.of(), List.of(), List.of(sure)), 0, 0)
                .rgb((int) knee.x(), (int) knee.y());
        int hollow = paint(scene(List.of(), List.of(), List.of(), List.of(unsure)), 0, 0)
                .rgb((int) knee.x(), (int) knee.y());
        assertEquals(Ink.NEAR.rgb(), filled);
        assertEquals(Ink.OUTLINE.rgb(), hollow);
    }

    @Test
    void aMarkStaysAtItsPlaceOnTheRunwayWhenTheCameraPans() {
        OverlayScene scene = scene(
                List.of(),
                List.of(mark(Instant.TOUCHDOWN, 300.25, 200.5, 0)),
                List.of(),
                List.of(
                        FramePose.withoutAthlete(0, 0, Optional.of(Homography.IDENTITY)),
                        FramePose.withoutAthlete(1, 16_667, Optional.of(shift(-120)))));
        Point2 before = Pixels.centre(paint(scene, 0, 0).of(Ink.MARK, 0, 0, W, ABOVE_STRIP));
        Point2 after = Pixels.centre(paint(scene, 1, 16_667).of(Ink.MARK, 0, 0, W, ABOVE_STRIP));
        assertEquals(before.x() - 120, after.x(), 1e-6);
        assertEquals(before.y(), after.y(), 1e-6);
        assertEquals(300.25, before.x(), 0.5);
    }

    @Test
    void aMarkAppearsAtItsTimeAndOnlyOnRegisteredFrames() {
        OverlayScene scene = scene(
                List.of(),
                List.of(mark(Instant.TOE_OFF, 300, 200, 1_000_000)),
                List.of(),
                List.of(
                        FramePose.withoutAthlete(0, 999_999, Optional.of(Homography.IDENTITY)),
                        FramePose.withoutAthlete(1, 1_000_000, Optional.of(Homography.IDENTITY)),
                        FramePose.withoutAthlete(2, 1_100_000, Optional.empty())));
        assertEquals(0, paint(scene, 0, 999_999).lightAbove(ABOVE_STRIP));
        assertTrue(paint(scene, 1, 1_000_000).lightAbove(ABOVE_STRIP) > 10);
        assertEquals(0, paint(scene, 2, 1_100_000).lightAbove(ABOVE_STRIP));
    }

    @Test
    void touchdownIsASolidShapeBelowThePlaceAndToeOffAnOpenOneAroundIt() {
        List<FramePose> frames = List.of(FramePose.withoutAthlete(0, 0, Optional.of(Homography.IDENTITY)));
        Pixels down =
                paint(scene(List.of(), List.of(mark(Instant.TOUCHDOWN, 300.5, 200.5, 0)), List.of(), frames), 0, 0);
        Pixels off = paint(scene(List.of(), List.of(mark(Instant.TOE_OFF, 300.5, 200.5, 0)), List.of(), frames), 0, 0);
        assertEquals(Ink.MARK.rgb(), down.rgb(300, 204), "solid inside");
        assertEquals(0, down.lightAbove(200), "nothing above the place");
        assertEquals(GREY, off.rgb(300, 200) & 0xff, 0x18, "the runway is seen through it");
        assertTrue(off.lightAbove(200) > 3, "it goes round the place");
    }

    @Test
    void phasesOnTheStripAreAsWideAsTheyAreLong() {
        OverlayScene scene = scene(
                List.of(
                        new PhaseSpan(PhaseName.HOP, 1_000_000, 1_800_000, ""),
                        new PhaseSpan(PhaseName.STEP, 1_800_000, 2_200_000, "")),
                List.of(),
                List.of(),
                List.of());
        Pixels pixels = paint(scene, 0, 3_900_000);
        int hop = widestRow(pixels, Ink.HOP);
        int step = widestRow(pixels, Ink.STEP);
        assertEquals(2.0, (double) hop / step, 0.05);
        // 0.8 s of a 4 s axis that spans the picture but for its margins.
        assertTrue(hop > 0.18 * W && hop <= 0.2 * W, "hop is " + hop + " px wide");
    }

    private static int widestRow(Pixels pixels, Ink ink) {
        int widest = 0;
        for (int y = ABOVE_STRIP; y < H; y++) {
            widest = Math.max(widest, pixels.of(ink, 0, y, W, y + 1).size());
        }
        return widest;
    }

    @Test
    void thePlayheadMovesWithTime() {
        OverlayScene scene = scene(List.of(), List.of(), List.of(), List.of());
        double[] x = new double[5];
        for (int i = 0; i < 5; i++) {
            x[i] = Pixels.centre(paint(scene, i, i * 1_000_000L).of(Ink.PLAYHEAD))
                    .x();
        }
        double whole = x[4] - x[0];
        assertTrue(whole > 0.9 * W);
        for (int i = 1; i < 4; i++) {
            assertEquals(x[0] + whole * i / 4, x[i], 1);
        }
    }

    @Test
    void anglesAreDrawnAtTheJointAtTheTouchdownAndStayOnTheRunwayAfterIt() {
        FramePose then = DrawnAthlete.standing(0, 0, 250, 350, 200);
        FramePose later = DrawnAthlete.standing(1, 200_000, 420, 350, 200, shift(-30), 0);
        FramePose end = DrawnAthlete.standing(2, 500_000, 420, 350, 200, shift(-30), 0);
        OverlayScene scene = scene(List.of(), List.of(), List.of(touchdown(then)), List.of(then, later, end));
        // The knee is at 270, 296; 40 px to both sides of it hold the arc.
        Point2 first = Pixels.centre(paint(scene, 0, 0).of(Ink.ANGLE, 255, 280, 310, 320));
        Point2 second = Pixels.centre(paint(scene, 1, 200_000).of(Ink.ANGLE, 225, 280, 280, 320));
        assertEquals(first.x() - 30, second.x(), 0.5);
        assertEquals(first.y(), second.y(), 0.5);
        assertTrue(paint(scene, 2, 500_000).of(Ink.ANGLE).isEmpty(), "the hold is over");
    }

    @Test
    void theCloseViewEnlargesASmallAthleteAndHoldsTheTouchdown() {
        FramePose then = DrawnAthlete.standing(0, 0, 250, 380, 80);
        FramePose later = DrawnAthlete.standing(1, 100_000, 280, 380, 80);
        FramePose end = DrawnAthlete.standing(2, 600_000, 330, 380, 80);
        OverlayScene scene =
                scene(List.of(), List.of(), List.of(touchdown(then)), List.of(then, later, end), CloseView.AUTO);
        try (OverlayPainter painter = new OverlayPainter(scene, W, H)) {
            Pixels first = new Pixels(0, 0, W, H, 0x40).painted(painter);
            Pixels second = new Pixels(1, 100_000, W, H, 0x90).painted(painter);
            Pixels third = new Pixels(2, 600_000, W, H, 0xc0).painted(painter);
            // A free place at the upper right of the view, inside its frame.
            assertEquals(0x404040, first.rgb(W - 30, 40));
            assertEquals(0x404040, second.rgb(W - 30, 40));
            assertEquals(0xc0c0c0, third.rgb(W - 30, 40));
            List<Point2> enlarged = first.of(Ink.NEAR, W / 2, 0, W, H / 2);
            assertTrue(enlarged.size()
                    > 2 * first.of(Ink.NEAR, 0, H / 2, W, ABOVE_STRIP).size());
        }
    }

    @ParameterizedTest
    @CsvSource({"1280, 720", "1920, 1080", "1000, 565", "540, 960", "853, 480"})
    void theCloseViewIsThereInPicturesOfAnySize(int widthPx, int heightPx) {
        FramePose pose = DrawnAthlete.standing(0, 0, 0.2 * widthPx, 0.8 * heightPx, 0.15 * heightPx);
        OverlayScene scene = scene(List.of(), List.of(), List.of(), List.of(pose), CloseView.AUTO);
        try (OverlayPainter painter = new OverlayPainter(scene, widthPx, heightPx)) {
            Pixels pixels = new Pixels(0, 0, widthPx, heightPx, GREY).painted(painter);
            assertTrue(
                    pixels.of(Ink.NEAR, widthPx / 2, 0, widthPx, heightPx / 2).size() > 50);
        }
    }

    @Test
    void aTallAthleteNeedsNoCloseView() {
        FramePose pose = DrawnAthlete.standing(0, 0, 320, 380, 300);
        OverlayScene off = scene(List.of(), List.of(), List.of(), List.of(pose), CloseView.OFF);
        OverlayScene auto = scene(List.of(), List.of(), List.of(), List.of(pose), CloseView.AUTO);
        assertTrue(paint(auto, 0, 0).equalsPixelsOf(paint(off, 0, 0)));
    }

    @ParameterizedTest
    @CsvSource({"64, 48", "65, 49", "33, 17", "1, 1", "3, 200", "201, 5", "479, 853", "854, 480", "1921, 1081"})
    void nothingIsPaintedOutsideThePictureOfAnySize(int widthPx, int heightPx) {
        OverlayScene scene = full(widthPx, heightPx);
        try (OverlayPainter painter = new OverlayPainter(scene, widthPx, heightPx)) {
            for (FramePose frame : scene.frames()) {
                Pixels pixels = new Pixels(frame.frameIndex(), frame.timestampUs(), widthPx, heightPx, GREY);
                assertTrue(pixels.painted(painter).guardsAreUntouched(), "frame " + frame.frameIndex());
                assertFalse(pixels.isAll(GREY));
            }
        }
    }

    @Test
    void paintingTwiceGivesTheSamePixels() {
        OverlayScene scene = full(W, H);
        for (FramePose frame : scene.frames()) {
            Pixels once = paint(scene, frame.frameIndex(), frame.timestampUs());
            Pixels again = paint(scene, frame.frameIndex(), frame.timestampUs());
            assertTrue(once.equalsPixelsOf(again), "frame " + frame.frameIndex());
        }
    }

    @Test
    void theSamePainterPaintsAFrameTheSameASecondTime() {
        OverlayScene scene = full(W, H);
        try (OverlayPainter painter = new OverlayPainter(scene, W, H)) {
            Pixels once = new Pixels(1, 1_000_000, W, H, GREY).painted(painter);
            Pixels again = new Pixels(1, 1_000_000, W, H, GREY).painted(painter);
            assertTrue(once.equalsPixelsOf(again));
        }
    }

    @Test
    void aFrameThatIsNotInTheSceneStillGetsTheStrip() {
        Pixels pixels = paint(full(W, H), 77, 1_250_000);
        assertNotEquals(GREY * 0x010101, pixels.rgb(W / 2, H - 2));
        assertTrue(pixels.of(Ink.NEAR, 0, H / 4, W, ABOVE_STRIP).isEmpty());
    }

    @Test
    void refusesAFrameOfAnotherSize() {
        try (OverlayPainter painter = new OverlayPainter(full(W, H), W, H)) {
            Pixels other = new Pixels(0, 0, W + 1, H, GREY);
            assertThrows(IllegalArgumentException.class, () -> painter.paint(other.frame()));
        }
    }

    /** The letters of OpenCV have no dots; those of a capital stand higher than any letter. */
    @ParameterizedTest
    @CsvSource({"u, \u00fc", "O, \u00d6", "A, \u00c4"})
    void anUmlautHasTwoDotsAboveItsLetter(String without, String with) {
        int[] plain = inkByRow(without);
        int[] dotted = inkByRow(with);
        int top = firstRow(plain);
        int dots = 0;
        for (int y = 0; y < top - 2; y++) {
            dots += dotted[y];
        }
        assertTrue(firstRow(dotted) < top, "the dots of " + with + " stand above the letter");
        assertTrue(dots > 4, with + " has dots of " + dots + " px");
        for (int y = top + 4; y < plain.length; y++) {
            assertEquals(plain[y], dotted[y], "the letter itself in row " + y);
        }
    }

    /** Title lines on a frame without anything else, as pixels of the letters' colour in each row. */
    private static int[] inkByRow(String title) {
        OverlayScene scene = new OverlayScene(
                List.of(title),
                List.of(),
                4_000_000,
                true,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                CloseView.OFF,
                Language.GERMAN);
        int[] rows = new int[ABOVE_STRIP];
        paintLarge(scene).of(Ink.TEXT, 0, 0, 4 * W, ABOVE_STRIP).forEach(p -> rows[(int) p.y()]++);
        return rows;
    }

    /** On a large picture letters are large. */
    private static Pixels paintLarge(OverlayScene scene) {
        try (OverlayPainter painter = new OverlayPainter(scene, 4 * W, 4 * H)) {
            return new Pixels(0, 0, 4 * W, 4 * H, GREY).painted(painter);
        }
    }

    private static int firstRow(int[] rows) {
        int y = 0;
        while (y < rows.length && rows[y] == 0) {
            y++;
        }
        return y;
    }
}
