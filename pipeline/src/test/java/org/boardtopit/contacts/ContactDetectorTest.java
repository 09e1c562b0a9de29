package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.LongStream;
import org.boardtopit.contacts.SequenceDecoder.Sequence;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.TrueContact;
import org.boardtopit.synthetic.Variants;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Two hundred drawn attempts with known contacts (SYN, our own; see {@link org.boardtopit.synthetic.DrawnJumper}): any
 * athlete, camera, side and frame rate from 50 to 240, through motion and contacts. Every seed stands on its own, so they may
 * be worked out on several threads.
 */
class ContactDetectorTest {
    private static final int SEEDS = 200;
    private static List<Row> rows;

    /** What is kept of a seed: the order of contacts, and the errors of one of them with twice their sd, ms. */
    private record Row(
            Optional<Sequence> sequence,
            List<TrueContact> jump,
            Optional<Instant> touchdown,
            Optional<Instant> toeOff) {}

    private record Instant(double errorMs, double twoSdMs) {}

    @BeforeAll
    static void drawAll() {
        rows = LongStream.rangeClosed(1, SEEDS)
                .parallel()
                .mapToObj(ContactDetectorTest::row)
                .toList();
    }

    /** Finds the order, and times one of its three contacts in turn, to save time. */
    private static Row row(long seed) {
        DrawnClip clip = new DrawnClip(DrawnClip.Setup.ordinary(seed));
        MotionTrack motion = DrawnAttempt.motion(clip);
        List<TrueContact> jump = clip.contacts().stream()
                .filter(c -> c.kind() != ContactKind.APPROACH)
                .toList();
        Optional<Sequence> sequence = new SequenceDecoder(true, Optional.empty(), motion.statureM())
                .decode(new CandidateFinder(motion, GroundLine.level()).find());
        int turn = (int) (seed % 3);
        TrueContact drawn = jump.get(turn);
        Optional<SupportFit.Timed> timed = sequence.map(
                        s -> List.of(s.board(), s.hopLanding(), s.stepLanding()).get(turn))
                .flatMap(c -> new SupportFit(0.135, 0.03).fit(motion, c.foot(), c.touchdownS(), c.toeOffS(), 0));
        return new Row(
                sequence,
                jump,
                timed.map(t -> new Instant(1000 * (t.touchdownS() - drawn.touchdownS()), 2000 * t.touchdownSdS())),
                timed.map(t -> new Instant(1000 * (t.toeOffS() - drawn.toeOffS()), 2000 * t.toeOffSdS())));
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, SEEDS);
    }

    /** Order of feet: World Athletics Technical Rules, TR31 (MEM-H). */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void findsTheOrderOfADrawnAttempt(long seed) {
        Row row = rows.get((int) seed - 1);
        Sequence found = row.sequence().orElseThrow(() -> new AssertionError("nothing found"));
        List<Candidate> four = List.of(
                found.board(),
                found.hopLanding(),
                found.stepLanding(),
                found.pit().orElseThrow(() -> new AssertionError("no pit")));
        for (int i = 0; i < four.size(); i++) {
            TrueContact drawn = row.jump().get(i);
            assertEquals(drawn.touchdownS(), four.get(i).touchdownS(), 0.060, drawn.kind() + " touchdown");
            assertTrue(drawn.foot() == Foot.BOTH || drawn.foot() == four.get(i).foot(), drawn.kind() + " foot");
        }
        assertEquals(row.jump().get(0).foot(), found.takeoffFoot());
        assertTrue(found.margin() > 3, "margin " + found.margin());
        assertTrue(row.touchdown().isPresent());
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {21, 22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32, 33, 34, 35, 36})
    void tellsTheContactsWithTheirFeetAndPlaces(long seed) {
        DrawnAttempt attempt = DrawnAttempt.of(DrawnClip.Setup.ordinary(seed));
        assertTrue(attempt.found().isComplete(), () -> "incomplete: " + attempt.found());
        for (TrueContact drawn : attempt.jump()) {
            Contact c = attempt.found(drawn.kind());
            assertEquals(drawn.foot(), c.foot(), drawn.kind() + " foot");
            assertEquals(0, attempt.touchdownErrorS(drawn.kind()), 0.020, drawn.kind() + " touchdown");
            assertTrue(c.confidence() > 0.4 && c.confidence() <= 1, "confidence " + c.confidence());
            if (drawn.kind() != ContactKind.PIT) {
                assertEquals(drawn.toeAlongM(), c.toeAlongM(), 0.06, drawn.kind() + " place of the toe");
            }
        }
    }

    private static double mean(Function<Row, Optional<Instant>> which, ToDoubleFunction<Instant> value) {
        return rows.stream()
                .flatMap(r -> which.apply(r).stream())
                .mapToDouble(value)
                .average()
                .orElseThrow();
    }

    private static void assertWithin(double low, double high, double value, String what) {
        assertTrue(
                value >= low && value <= high,
                () -> String.format(Locale.ROOT, "%s should be %.2f to %.2f, was %.3f", what, low, high, value));
    }

    /** Bounds a little over what was measured when written (2.1 ms, -1.3 ms, 98 %). */
    @Test
    void touchdownsAreRightToAFewMilliseconds() {
        assertWithin(0, 4, mean(Row::touchdown, i -> Math.abs(i.errorMs())), "mean absolute error of touchdown in ms");
        assertWithin(-2.5, 2.5, mean(Row::touchdown, Instant::errorMs), "bias of touchdown in ms");
        assertWithin(0.90, 1, mean(Row::touchdown, i -> Math.abs(i.errorMs()) <= i.twoSdMs() ? 1 : 0), "coverage");
    }

    /** The drawn toe leaves the ground without a jerk: harder than touchdown, and read some 5 ms early. */
    @Test
    void toeOffsAreRightToTenMilliseconds() {
        assertWithin(0, 10, mean(Row::toeOff, i -> Math.abs(i.errorMs())), "mean absolute error of toe-off in ms");
        assertWithin(-8, 4, mean(Row::toeOff, Instant::errorMs), "bias of toe-off in ms");
        assertWithin(0.85, 1, mean(Row::toeOff, i -> Math.abs(i.errorMs()) <= i.twoSdMs() ? 1 : 0), "coverage");
    }

    /** By whole steps of the search grid: the same up to rounding. By anything else: less than the stated uncertainty. */
    @ParameterizedTest(name = "seed {0}, {1} us")
    @CsvSource({"1, 1234000", "2, 2000", "3, 700000", "4, 1234567", "5, 10001", "6, 333333", "7, 1000", "8, 5999"})
    void aLaterStartShiftsEveryInstantByAsMuch(long seed, long laterUs) {
        DrawnClip clip = new DrawnClip(DrawnClip.Setup.ordinary(seed));
        DrawnAttempt plain = DrawnAttempt.of(clip, clip.landmarks(), clip.calibratedView());
        DrawnAttempt late = DrawnAttempt.of(clip, Variants.delayed(clip.landmarks(), laterUs), clip.calibratedView());
        assertSame(plain, late, laterUs / 1e6, false, laterUs % 2000 == 0 ? 0.0005 : Double.NaN);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void aMirrorSwapsTheFeetAndNothingElse(long seed) {
        DrawnClip clip = new DrawnClip(DrawnClip.Setup.ordinary(seed).withStillCamera());
        DrawnAttempt plain = DrawnAttempt.of(clip, clip.landmarks(), clip.flatView());
        ClipLandmarks mirrored = Variants.mirrored(clip.landmarks());
        RunwayView view = RunwayView.flat(mirrored.background(), -clip.direction(), clip.flatMetresPerPixel());
        assertSame(plain, DrawnAttempt.of(clip, mirrored, view), 0, true, 1e-4);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12, 13, 14, 15, 16})
    void morePixelsOfTheSameSceneChangeNothing(long seed) {
        DrawnClip clip = new DrawnClip(DrawnClip.Setup.ordinary(seed).withStillCamera());
        DrawnAttempt plain = DrawnAttempt.of(clip, clip.landmarks(), clip.flatView());
        ClipLandmarks large = Variants.enlarged(clip.landmarks(), 3);
        RunwayView view = RunwayView.flat(large.background(), clip.direction(), clip.flatMetresPerPixel() / 3);
        assertSame(plain, DrawnAttempt.of(clip, large, view), 0, false, 1e-4);
    }

    /** Tolerance NaN stands for the first one's own standard deviation. */
    private static void assertSame(
            DrawnAttempt a, DrawnAttempt b, double laterS, boolean feetSwapped, double toleranceS) {
        List<Contact> first = a.found().contacts();
        List<Contact> second = b.found().contacts();
        assertEquals(
                first.stream().map(Contact::kind).toList(),
                second.stream().map(Contact::kind).toList());
        for (int i = 0; i < first.size(); i++) {
            Contact one = first.get(i);
            Contact two = second.get(i);
            boolean own = Double.isNaN(toleranceS);
            assertEquals(feetSwapped ? one.foot().other() : one.foot(), two.foot());
            assertEquals(one.touchdownS() + laterS, two.touchdownS(), own ? one.touchdownSdS() : toleranceS);
            double toeOffTolerance = own && one.kind() != ContactKind.PIT ? one.toeOffSdS() : 0.0005;
            assertEquals(one.toeOffS() + laterS, two.toeOffS(), toeOffTolerance, () -> one + " and " + two);
        }
    }
}
