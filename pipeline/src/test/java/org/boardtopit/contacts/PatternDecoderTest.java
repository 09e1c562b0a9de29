package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.boardtopit.clips.Pattern;
import org.boardtopit.clips.TakeoffFoot;
import org.boardtopit.contacts.PatternDecoder.Found;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Candidates written out by hand: supports of 0.2 s, flights of 0.3 s, a metre and a half apart. SYN. */
class PatternDecoderTest {

    /** Contacts in time order, such as {@code R R L L B}; B is both feet, which stay. */
    private static List<Candidate> contacts(String feet) {
        List<Candidate> all = new ArrayList<>();
        double touchdownS = 0.5;
        double alongM = 0;
        for (String foot : feet.split(" ", -1)) {
            double lastsS = foot.equals("B") ? 0.8 : 0.2;
            for (Foot f : foot.equals("B") ? List.of(Foot.LEFT, Foot.RIGHT) : List.of(foot(foot))) {
                all.add(new Candidate(f, touchdownS, touchdownS + lastsS, 0.08, alongM, 0.01));
            }
            touchdownS += lastsS + 0.3;
            alongM += 1.5;
        }
        return all;
    }

    private static Foot foot(String letter) {
        return letter.equals("L") ? Foot.LEFT : Foot.RIGHT;
    }

    private static Optional<Found> decode(String pattern, List<Candidate> candidates) {
        return new PatternDecoder(Pattern.parse(pattern), Optional.empty(), 1.75).decode(candidates);
    }

    private static String feet(Found found) {
        return found.feet().stream().map(f -> f == Foot.BOTH ? "B" : f.label()).collect(Collectors.joining(" "));
    }

    @ParameterizedTest(name = "{0} in {1}")
    @CsvSource({
        "hop-hop-hop, R R R R",
        "hop-hop-hop, L L L L",
        "step-step-jump, L R L B",
        "step-step-jump, R L R B",
        "hop-step-jump, L L R B",
        "R R L both, R R L B",
        "jump-jump, B B B",
        "skip, R R L L R R L",
        "skip, L R R L L R",
        "R R L L, R R L L"
    })
    void findsThePatternWhereTheClipShowsNothingElse(String pattern, String shown) {
        List<Candidate> all = contacts(shown);
        Found found = decode(pattern, all).orElseThrow();
        assertEquals(shown, feet(found));
        assertEquals(0.5, found.contacts().get(0).touchdownS(), 1e-9);
        assertEquals(0, found.wrongFeet());
        assertTrue(found.margin(pattern.equals("skip")) > 6, "margins " + found.margins());
    }

    @ParameterizedTest(name = "{0} in {1}")
    @CsvSource({
        "hop-hop-hop, R L R L R L R",
        "hop-hop-hop, R R L L R R L L",
        "hop-hop-hop, R L R B",
        "hop-hop-jump, R R R R",
        "step-step-jump, R R R R",
        "step-step-jump, L L R B",
        "step-step-jump, L R L R",
        "hop-step-jump, L R L B",
        "hop-hop-hop-hop, R R R R",
        "skip, R L R L R L R L",
        "skip, R R R R R R",
        "skip, L R R L B",
        "R R L L, R L R L",
        "R R R R, L L L L",
        "both both, R R"
    })
    void findsNothingWhereTheClipShowsSomethingElse(String pattern, String shown) {
        assertTrue(
                decode(pattern, contacts(shown)).isEmpty(),
                () -> feet(decode(pattern, contacts(shown)).orElseThrow()));
    }

    @Test
    void findsNothingInNothing() {
        assertTrue(decode("skip", List.of()).isEmpty());
        assertTrue(decode("hop", contacts("R")).isEmpty());
    }

    /** Four hops of which the first three or the last three would do: the margin is that of a confidence below one half. */
    @Test
    void isNotSureWhereThePatternFitsTwice() {
        assertTrue(decode("hop-hop-hop", contacts("R R R R R")).orElseThrow().margin(false) < 3);
    }

    /** Running strides: supports of 0.12 s, flights of 0.12 s from the other foot. */
    @Test
    void takesTheStridesBeforeThePatternForTheApproach() {
        List<Candidate> all = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            double touchdownS = 0.5 - 0.24 * (4 - i);
            all.add(new Candidate(
                    i % 2 == 0 ? Foot.RIGHT : Foot.LEFT, touchdownS, touchdownS + 0.12, 0.08, -1.5 * (4 - i), 0.01));
        }
        all.addAll(contacts("R R R R"));
        Found found = decode("hop-hop-hop", all).orElseThrow();
        assertEquals("R R R R", feet(found));
        assertEquals(0.5, found.contacts().get(0).touchdownS(), 1e-9);
        assertEquals(
                List.of(Foot.RIGHT, Foot.LEFT, Foot.RIGHT, Foot.LEFT),
                found.approach().stream().map(Candidate::foot).toList());
    }

    @Test
    void aStandingStartHasNoApproach() {
        List<Candidate> all = contacts("L L L L");
        Candidate first = all.get(0);
        all.set(0, new Candidate(Foot.LEFT, 0, first.toeOffS(), 0.02, 0, 0.3, true, false));
        Found found = decode("hop-hop-hop", all).orElseThrow();
        assertTrue(found.contacts().get(0).fromFirst());
        assertEquals(List.of(), found.approach());
    }

    @Test
    void aFaintTouchOfTheFreeFootChangesNothing() {
        List<Candidate> all = contacts("R R R R");
        all.add(new Candidate(Foot.LEFT, 1.05, 1.12, 0.35, 1.5, 0.03));
        all.add(new Candidate(Foot.LEFT, 1.26, 1.32, 0.40, 2.2, 0.04));
        Found found = decode("hop-hop-hop", all).orElseThrow();
        assertEquals("R R R R", feet(found));
    }

    /** Left and right taken for each other in one contact of eight. */
    @Test
    void aWrongFootIsToldInALongPatternAndRefusedInAShortOne() {
        Found found = decode("skip", contacts("R R L L L R L L")).orElseThrow();
        assertEquals("R R L L R R L L", feet(found));
        assertEquals(1, found.wrongFeet());
        assertTrue(decode("hop-hop-hop", contacts("R R L R")).isEmpty());
    }

    @Test
    void theFootOfTheSheetDecidesWhereWordsLeaveItOpen() {
        List<Candidate> all = contacts("R L R L R");
        Pattern pattern = Pattern.parse("step-step");
        for (TakeoffFoot first : TakeoffFoot.values()) {
            Found found = new PatternDecoder(pattern, Optional.of(first), 1.75)
                    .decode(all)
                    .orElseThrow();
            assertEquals(first.letter(), found.feet().get(0).label());
        }
    }

    /** Nearly on the spot, and each time a little behind the place before. */
    @Test
    void skipsOnTheSpot() {
        String shown = "R R L L R R L L";
        List<Candidate> all = contacts(shown).stream()
                .map(c -> new Candidate(c.foot(), c.touchdownS(), c.toeOffS(), 0.1, -0.02 * c.alongM(), 0.01))
                .toList();
        assertEquals(shown, feet(decode("skip", all).orElseThrow()));
        List<Candidate> backwards = all.stream()
                .map(c -> new Candidate(c.foot(), c.touchdownS(), c.toeOffS(), 0.1, 50 * c.alongM(), 0.01))
                .toList();
        assertTrue(decode("skip", backwards).isEmpty());
    }

    @Test
    void doesNotDependOnTheOrderOfTheCandidates() {
        List<Candidate> all = contacts("L R L B");
        List<Candidate> turned = new ArrayList<>(all);
        Collections.reverse(turned);
        assertEquals(
                decode("step-step-jump", all).orElseThrow().margins(),
                decode("step-step-jump", turned).orElseThrow().margins());
    }
}
