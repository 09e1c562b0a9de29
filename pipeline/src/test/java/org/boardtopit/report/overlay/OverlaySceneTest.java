package org.boardtopit.report.overlay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.overlay.ContactMark.Instant;
import org.boardtopit.report.overlay.OverlayScene.CloseView;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoWriter.Chapter;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OverlaySceneTest {
    private static final OverlayWords ENGLISH = new OverlayWords(Language.ENGLISH);

    private static ContactMark mark(String contact, Instant instant, long timeUs) {
        return ContactMark.labelled(contact, "L", instant, Point2.UNKNOWN, timeUs, ENGLISH);
    }

    private static TouchdownFigure figureAt(long timeUs, long frameUs) {
        return new TouchdownFigure("hop landing L", timeUs, DrawnAthlete.standing(0, frameUs, 50, 90, 80), List.of());
    }

    private static OverlayScene scene(
            List<PhaseSpan> phases,
            List<ContactMark> contacts,
            List<TouchdownFigure> touchdowns,
            List<FramePose> frames) {
        return new OverlayScene(
                List.of(),
                List.of(),
                4_000_000,
                true,
                phases,
                contacts,
                touchdowns,
                frames,
                CloseView.OFF,
                Language.ENGLISH);
    }

    @Test
    void refusesPhasesThatOverlap() {
        PhaseSpan hop = new PhaseSpan(PhaseName.HOP, 1_000_000, 2_000_000, "");
        PhaseSpan step = new PhaseSpan(PhaseName.STEP, 1_900_000, 2_500_000, "");
        assertEquals(
                "phases must not overlap, found 1900000 after 2000000",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> scene(List.of(hop, step), List.of(), List.of(), List.of()))
                        .getMessage());
    }

    @Test
    void refusesContactsOutOfTimeOrder() {
        List<ContactMark> swapped =
                List.of(mark("hop landing", Instant.TOUCHDOWN, 2_000), mark("board", Instant.TOUCHDOWN, 1_000));
        assertThrows(IllegalArgumentException.class, () -> scene(List.of(), swapped, List.of(), List.of()));
    }

    @Test
    void refusesTheSameFrameTwice() {
        FramePose frame = FramePose.withoutAthlete(7, 100, Optional.empty());
        assertThrows(
                IllegalArgumentException.class, () -> scene(List.of(), List.of(), List.of(), List.of(frame, frame)));
    }

    @Test
    void refusesAPhaseThatEndsBeforeItStarts() {
        assertThrows(IllegalArgumentException.class, () -> new PhaseSpan(PhaseName.JUMP, 41_000, 40_000, ""));
    }

    @Test
    void refusesAPoseThatIsNotOfThirtyThreePoints() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new FramePose(0, 0, List.of(PosePoint.UNKNOWN), BodySide.LEFT, Optional.empty()));
    }

    @Test
    void findsFramesByTheirIndexAlsoWhenSomeAreMissing() {
        OverlayScene scene = scene(
                List.of(),
                List.of(),
                List.of(),
                List.of(
                        FramePose.withoutAthlete(2, 20, Optional.empty()),
                        FramePose.withoutAthlete(3, 30, Optional.empty()),
                        FramePose.withoutAthlete(9, 90, Optional.empty())));
        assertEquals(90, scene.frame(9).orElseThrow().timestampUs());
        assertEquals(20, scene.frame(2).orElseThrow().timestampUs());
        assertTrue(scene.frame(4).isEmpty());
        assertTrue(scene.frame(10).isEmpty());
    }

    @Test
    void aPhaseEndsWhereTheNextBegins() {
        OverlayScene scene = scene(
                List.of(new PhaseSpan(PhaseName.HOP, 100, 200, ""), new PhaseSpan(PhaseName.STEP, 200, 300, "")),
                List.of(),
                List.of(),
                List.of());
        assertEquals(PhaseName.HOP, scene.phaseAt(199).orElseThrow().name());
        assertEquals(PhaseName.STEP, scene.phaseAt(200).orElseThrow().name());
        assertTrue(scene.phaseAt(300).isEmpty());
    }

    /** A touchdown at 1.000 s whose nearest frame is at 0.995 s: 0.5 s from that frame on, the last 0.2 s fading. */
    @ParameterizedTest
    @CsvSource({
        "994999, 0",
        "995000, 1",
        "1000000, 1",
        "1295000, 1",
        "1395000, 0.5",
        "1445000, 0.25",
        "1495000, 0",
        "2000000, 0"
    })
    void aTouchdownFigureIsShownForItsHold(long atUs, double strength) {
        assertEquals(strength, figureAt(1_000_000, 995_000).strengthAt(atUs), 1e-9);
    }

    @Test
    void theNextTouchdownCutsTheHoldOfTheLast() {
        TouchdownFigure first = figureAt(1_000_000, 1_000_000);
        TouchdownFigure second = figureAt(1_200_000, 1_205_000);
        OverlayScene scene = scene(List.of(), List.of(), List.of(first, second), List.of());
        assertTrue(scene.touchdownAt(999_999).isEmpty());
        assertEquals(first, scene.touchdownAt(1_199_999).orElseThrow());
        assertEquals(second, scene.touchdownAt(1_200_000).orElseThrow());
        assertTrue(scene.touchdownAt(1_700_000).isEmpty());
    }

    @Test
    void chaptersAreTheFirstTouchdownsOfBoardLandingsAndPit() {
        OverlayScene scene = scene(
                List.of(),
                List.of(
                        ContactMark.small(Instant.TOUCHDOWN, Point2.UNKNOWN, 500_000),
                        mark("board", Instant.TOUCHDOWN, 1_540_000),
                        mark("board", Instant.TOE_OFF, 1_640_000),
                        mark("hop landing", Instant.TOUCHDOWN, 2_180_000),
                        mark("step landing", Instant.TOUCHDOWN, 2_730_000),
                        mark("pit", Instant.TOUCHDOWN, 3_510_000)),
                List.of(),
                List.of());
        assertEquals(
                List.of(
                        new Chapter("Board", 1_540_000),
                        new Chapter("Hop landing", 2_180_000),
                        new Chapter("Step landing", 2_730_000),
                        new Chapter("Pit", 3_510_000)),
                scene.chapters());
    }

    @ParameterizedTest
    @CsvSource({
        "hop landing, L, TOUCHDOWN, 2176210, hop landing L 2.18 s",
        "board, R, TOUCHDOWN, 1539380, board R 1.54 s",
        "board, R, TOE_OFF, 1642780, off 1.64 s",
        "pit, both, TOUCHDOWN, 3515380, pit both 3.52 s",
        "contact 4, R, TOUCHDOWN, 100000, contact 4 R 0.10 s"
    })
    void labelsSayWhatAContactIsAndWhen(String contact, String foot, Instant instant, long timeUs, String label) {
        assertEquals(
                label,
                ContactMark.labelled(contact, foot, instant, Point2.UNKNOWN, timeUs, ENGLISH)
                        .label());
    }
}
