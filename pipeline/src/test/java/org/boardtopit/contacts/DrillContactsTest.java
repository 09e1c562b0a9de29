package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.boardtopit.clips.Pattern;
import org.boardtopit.contacts.PatternDecoder.Found;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.DrawnDrill;
import org.boardtopit.synthetic.TrueContact;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Drawn drills with known contacts (SYN, our own; see {@link org.boardtopit.synthetic.DrawnJumper}): with an approach and from
 * standing, 1 to 6.5 m/s, 60 and 120 frames a second, through motion and contacts.
 */
class DrillContactsTest {
    private static final int SEEDS = 12;
    private static final int APPROACH = 3;
    private static final double SAME_S = 0.06;

    /** By what they are called; the first word is the pattern. */
    private static final Map<String, DrawnDrill> DRILLS = Map.of(
            "hop-hop-hop after an approach", drill("R R R R", true, false),
            "hop-hop-hop from standing", drill("L L L L", false, false),
            "hop-hop-hop slowly", drill("L L L L", false, true),
            "step-step-jump after an approach", drill("R L R B", true, false),
            "step-step-jump from standing", drill("L R L B", false, false),
            "skip after an approach", drill("R R L L R R L L", true, true),
            "skip from standing", drill("R R L L R R L L", false, true));

    private record Timed(Contact found, TrueContact drawn) {}

    private static List<Timed> timed;

    private static DrawnDrill drill(String feet, boolean approach, boolean slow) {
        List<Foot> contacts = Stream.of(feet.split(" ", -1))
                .map(f -> f.equals("B") ? Foot.BOTH : f.equals("L") ? Foot.LEFT : Foot.RIGHT)
                .toList();
        return new DrawnDrill(contacts, approach, slow);
    }

    private static Pattern pattern(String drill) {
        return Pattern.parse(drill.substring(0, drill.indexOf(' ')));
    }

    private static DrawnClip clip(String drill, long seed) {
        return new DrawnClip(DrawnClip.Setup.ordinary(seed).atFps(seed % 2 == 0 ? 60 : 120), DRILLS.get(drill));
    }

    private static List<TrueContact> drawn(String drill, DrawnClip clip) {
        int before = DRILLS.get(drill).approach() ? APPROACH : 0;
        return clip.contacts()
                .subList(before, before + DRILLS.get(drill).contacts().size());
    }

    static Stream<Arguments> drillsAndSeeds() {
        return DRILLS.keySet().stream()
                .sorted()
                .flatMap(d -> LongStream.rangeClosed(1, SEEDS).mapToObj(seed -> Arguments.of(d, seed)));
    }

    @ParameterizedTest(name = "{0}, seed {1}")
    @MethodSource("drillsAndSeeds")
    void findsTheContactsOfADrawnDrill(String drill, long seed) {
        DrawnClip clip = clip(drill, seed);
        MotionTrack motion = DrawnAttempt.motion(clip);
        Pattern pattern = pattern(drill);
        Found found = new PatternDecoder(pattern, Optional.empty(), motion.statureM())
                .decode(CandidateFinder.ofDrill(motion, GroundLine.level()).find())
                .orElseThrow(() -> new AssertionError("nothing found"));
        List<TrueContact> drawn = drawn(drill, clip);
        // A skip may take in the strides beside it, of which the feet fit as well.
        int from = 0;
        while (pattern.isSkip()
                && from < found.contacts().size()
                && !isSame(found.contacts().get(from), drawn.get(0))) {
            from++;
        }
        assertTrue(found.contacts().size() >= from + drawn.size(), "too few: " + found);
        assertTrue(pattern.isSkip() || found.contacts().size() == drawn.size(), "too many: " + found);
        for (int i = 0; i < drawn.size(); i++) {
            Candidate c = found.contacts().get(from + i);
            assertTrue(isSame(c, drawn.get(i)), c + " is not " + drawn.get(i));
            assertEquals(drawn.get(i).foot(), found.feet().get(from + i));
        }
        assertTrue(found.margin(pattern.isSkip()) > 3, "margins " + found.margins());
    }

    /** A foot that stands from before the clip is known by when it leaves. */
    private static boolean isSame(Candidate c, TrueContact drawn) {
        return drawn.touchdownS() < 0
                ? c.fromFirst() && Math.abs(c.toeOffS() - drawn.toeOffS()) < 2 * SAME_S
                : !c.fromFirst() && Math.abs(c.touchdownS() - drawn.touchdownS()) < SAME_S;
    }

    @BeforeAll
    static void timeSome() {
        timed = DRILLS.keySet().stream()
                .sorted()
                .flatMap(drill -> Stream.of(1L, 2L).map(seed -> Map.entry(drill, seed)))
                .parallel()
                .flatMap(e -> timed(e.getKey(), e.getValue()).stream())
                .toList();
    }

    private static List<Timed> timed(String drill, long seed) {
        DrawnClip clip = clip(drill, seed);
        DrawnAttempt attempt = DrawnAttempt.of(clip, clip.calibratedView(), pattern(drill));
        return drawn(drill, clip).stream()
                .flatMap(d -> attempt.found().contacts().stream()
                        .filter(c -> c.kind() != ContactKind.APPROACH)
                        .filter(c -> d.touchdownS() < 0
                                ? Double.isNaN(c.touchdownS())
                                : Math.abs(c.touchdownS() - d.touchdownS()) < SAME_S)
                        .map(c -> new Timed(c, d)))
                .toList();
    }

    private static double mean(ToDoubleFunction<Timed> value) {
        return timed.stream()
                .mapToDouble(value)
                .filter(Double::isFinite)
                .average()
                .orElseThrow();
    }

    private static void assertWithin(double low, double high, double value, String what) {
        assertTrue(
                value >= low && value <= high,
                () -> String.format(Locale.ROOT, "%s should be %.2f to %.2f, was %.3f", what, low, high, value));
    }

    /** Bounds a little over what was measured when written. */
    @Test
    void timesTouchdownsAndToeOffsToSomeMilliseconds() {
        assertTrue(timed.size() > 60, "contacts " + timed.size());
        ToDoubleFunction<Timed> touchdown =
                t -> 1000 * (t.found().touchdownS() - t.drawn().touchdownS());
        ToDoubleFunction<Timed> toeOff =
                t -> 1000 * (t.found().toeOffS() - t.drawn().toeOffS());
        assertWithin(0, 8, mean(t -> Math.abs(touchdown.applyAsDouble(t))), "mean absolute error of touchdown in ms");
        assertWithin(0, 12, mean(t -> Math.abs(toeOff.applyAsDouble(t))), "mean absolute error of toe-off in ms");
        assertWithin(-5, 5, mean(touchdown), "bias of touchdown in ms");
        assertWithin(-10, 10, mean(toeOff), "bias of toe-off in ms");
    }

    @Test
    void namesTheContactsAndLeavesUnknownWhatWasNotSeen() {
        assertTrue(timed.stream()
                .allMatch(t ->
                        t.found().kind() == (t.drawn().foot() == Foot.BOTH ? ContactKind.PIT : ContactKind.DRILL)));
        List<Timed> standing =
                timed.stream().filter(t -> t.drawn().touchdownS() < 0).toList();
        assertTrue(standing.size() >= 6, "standing starts " + standing.size());
        assertTrue(standing.stream().allMatch(t -> Double.isNaN(t.found().supportTimeS())));
        assertTrue(timed.stream()
                .allMatch(t -> t.found().confidence() > 0.3 && t.found().confidence() <= 1));
    }

    /** In one sentence, and without a contact. */
    @ParameterizedTest(name = "{1} in {0}")
    @CsvSource({
        "hop-hop-hop after an approach, step-step-jump",
        "hop-hop-hop from standing, hop-hop-jump",
        "step-step-jump after an approach, hop-hop-hop",
        "step-step-jump from standing, skip",
        "skip after an approach, hop-hop-hop",
        "skip from standing, R L R L R"
    })
    void saysWhenThePatternDoesNotFit(String drill, String wrong) {
        DrawnClip clip = clip(drill, 2);
        ContactTimeline found = DrawnAttempt.of(clip, clip.calibratedView(), Pattern.parse(wrong))
                .found();
        assertEquals(List.of(), found.contacts());
        assertEquals(1, found.remarks().size());
        assertTrue(found.remarks().get(0).contains("the pattern " + wrong + " does not fit"), found.toString());
    }
}
