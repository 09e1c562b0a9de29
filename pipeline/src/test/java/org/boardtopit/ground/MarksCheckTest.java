package org.boardtopit.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.boardtopit.clips.Mark;
import org.boardtopit.ground.MarksCheck.Finding;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnCamera;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Marks that a drawn pinhole sees (SYN, our own), of which one after the other is mistyped. */
class MarksCheckTest {
    private static final DrawnCamera CAMERA = new DrawnCamera(1280, 720, 1000, 5.5, -18, 1.8, 0.02, 0.04, 0);
    private static final double[][] PLACES = {
        {0, -0.61}, {0, 0.61}, {11, -1.375}, {11, 1.375}, {-4, -0.72}, {-4, 0.72}, {5, -0.72}, {6, 0.72}
    };

    /** Clicked to 0.7 px. */
    private static List<Mark> marks(int count, Random clicks) {
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Point2 seen = CAMERA.project(PLACES[i][0], PLACES[i][1], 0);
            Point2 clicked = new Point2(seen.x() + 0.7 * clicks.nextGaussian(), seen.y() + 0.7 * clicks.nextGaussian());
            marks.add(new Mark("mark " + i, PLACES[i][0], PLACES[i][1], clicked));
        }
        return marks;
    }

    private static Mark mistyped(Mark m, String slip) {
        Point2 p = m.pixel();
        return switch (slip) {
            case "exchanged" -> new Mark(m.name(), m.alongM(), m.acrossM(), new Point2(p.y(), p.x()));
            case "side" -> new Mark(m.name(), m.alongM(), -m.acrossM(), p);
            case "tenfold" -> new Mark(m.name(), m.alongM(), m.acrossM(), new Point2(10 * p.x(), p.y()));
            case "digit" -> new Mark(m.name(), m.alongM() + 1, m.acrossM(), p);
            default -> throw new IllegalArgumentException(slip);
        };
    }

    @RepeatedTest(value = 40, name = "seed {currentRepetition}")
    void honestClicksAgree(RepetitionInfo info) {
        MarksCheck check = MarksCheck.of(marks(8, new Random(info.getCurrentRepetition())), 1280, 720);
        assertTrue(check.agree(), check.findings().toString());
        assertTrue(check.culprit().isEmpty());
    }

    @ParameterizedTest
    @ValueSource(strings = {"exchanged", "side", "tenfold", "digit"})
    void namesTheMistypedMarkWhicheverItIs(String slip) {
        for (int wrong = 0; wrong < PLACES.length; wrong++) {
            List<Mark> marks = marks(8, new Random(3 + wrong));
            marks.set(wrong, mistyped(marks.get(wrong), slip));
            MarksCheck check = MarksCheck.of(marks, 1280, 720);
            assertFalse(check.agree(), slip + " of " + wrong);
            assertEquals("mark " + wrong, check.culprit().orElseThrow().mark().name(), slip);
            for (int i = 0; i < PLACES.length; i++) {
                assertEquals(i == wrong, check.findings().get(i).off(), slip + " of " + wrong + ", mark " + i);
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"exchanged", "side"})
    void saysWhatWouldBeRight(String slip) {
        List<Mark> marks = marks(8, new Random(11));
        marks.set(6, mistyped(marks.get(6), slip));
        String hint = MarksCheck.of(marks, 1280, 720).culprit().orElseThrow().hint();
        String right = slip.equals("side") ? "with the other sign of across_m" : "with x_px and y_px exchanged";
        assertEquals(right + " it would fit", hint);
    }

    /** A pixel at the middle of the picture is 18 m / 1000 px = 1.8 cm of the runway: 10 px are 18 cm. */
    @Test
    void tellsHowFarAMarkIsFromWhereTheOthersExpectIt() {
        List<Mark> marks = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            marks.add(new Mark("mark " + i, PLACES[i][0], PLACES[i][1], CAMERA.project(PLACES[i][0], PLACES[i][1], 0)));
        }
        Mark near = marks.get(6);
        marks.set(
                6,
                new Mark(
                        "mark 6",
                        5,
                        -0.72,
                        new Point2(near.pixel().x() + 10, near.pixel().y())));
        Finding finding = MarksCheck.of(marks, 1280, 720).findings().get(6);
        assertEquals(10, finding.leftOutPx(), 0.1);
        assertEquals(0.17, finding.leftOutAlongM(), 0.01);
        assertEquals(0, finding.leftOutAcrossM(), 0.05);
        assertTrue(finding.off());
    }

    @Test
    void fourMarksCannotBeCompared() {
        MarksCheck check = MarksCheck.of(marks(4, new Random(1)), 1280, 720);
        assertFalse(check.isComparable());
        assertTrue(Double.isNaN(check.findings().get(0).leftOutPx()));
        assertTrue(check.agree());
    }

    @Test
    void fiveMarksDoNotSayWhichOneIsWrong() {
        List<Mark> marks = marks(5, new Random(1));
        marks.set(0, mistyped(marks.get(0), "exchanged"));
        MarksCheck check = MarksCheck.of(marks, 1280, 720);
        assertFalse(check.agree());
        assertTrue(check.culprit().isEmpty());
    }

    /** Marks through a lens: with its coefficient they agree, without it good marks look mistyped. */
    @Test
    void marksThroughALensAgreeOnceItIsKnown() {
        Lens lens = new Lens(1280, 720, 0.08);
        List<Mark> bent = marks(8, new Random(5)).stream()
                .map(m -> new Mark(m.name(), m.alongM(), m.acrossM(), lens.bent(m.pixel())))
                .toList();
        MarksCheck check = MarksCheck.of(bent, lens);
        assertTrue(check.agree(), check.findings().toString());
        assertFalse(MarksCheck.of(bent, 1280, 720).agree());
    }

    /** The same clicks many times over: the places they give scatter as the covariance says. */
    @Test
    void theStandardDeviationAlongTheRunwayIsThatOfRepeatedClicks() throws CalibrationException {
        double[] places = {-4, 0, 6, 11};
        double[] squares = new double[places.length];
        double[] told = new double[places.length];
        int tries = 150;
        for (int seed = 0; seed < tries; seed++) {
            RunwayCamera camera = RunwayCamera.fromMarks(marks(8, new Random(seed)), 1280, 720);
            for (int i = 0; i < places.length; i++) {
                Point2 exact = CAMERA.project(places[i], 0, 0);
                double error = camera.onUpright(exact, 0).x() - places[i];
                squares[i] += error * error / tries;
                told[i] += camera.alongSdM(places[i], 0) / tries;
            }
        }
        for (int i = 0; i < places.length; i++) {
            assertEquals(1, told[i] / Math.sqrt(squares[i]), 0.35, "at " + places[i] + " m");
        }
    }

    @Test
    void aKnownFocalLengthMakesFarPlacesMoreExact() throws CalibrationException {
        List<Mark> marks = marks(5, new Random(4));
        RunwayCamera alone = RunwayCamera.fromMarks(marks, 1280, 720);
        RunwayCamera told = RunwayCamera.fromMarks(marks, Lens.ideal(1280, 720), 1000, 0.003);
        assertEquals(1000, told.focalPx(), 12);
        assertTrue(told.alongSdM(-10, 0) < alone.alongSdM(-10, 0));
    }
}
