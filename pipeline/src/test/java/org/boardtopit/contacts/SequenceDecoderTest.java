package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.boardtopit.contacts.SequenceDecoder.Sequence;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Candidates written out by hand: strides of 0.23 s and 2 m to a board at 1.5 s, hop, step and jump with flights of 0.45,
 * 0.36 and 0.60 s (middle of the club range, biomechanics section 3c, MEM-M). SYN.
 */
class SequenceDecoderTest {
    private static final double STATURE_M = 1.75;

    /** Strides L R L R, board L, hop landing L, step landing R, pit: in time order. */
    private static List<Candidate> attempt(Foot takeoff, double boardAlongM) {
        List<Candidate> all = new ArrayList<>();
        for (int back = 4; back >= 1; back--) {
            Foot foot = back % 2 == 0 ? takeoff : takeoff.other();
            all.add(at(foot, 1.5 - 0.23 * back, 0.11, boardAlongM - 2.0 * back));
        }
        all.add(at(takeoff, 1.5, 0.12, boardAlongM));
        all.add(at(takeoff, 2.07, 0.14, boardAlongM + 4.8));
        all.add(at(takeoff.other(), 2.57, 0.16, boardAlongM + 8.6));
        all.add(at(takeoff, 3.33, 0.5, boardAlongM + 13.2));
        all.add(at(takeoff.other(), 3.34, 0.5, boardAlongM + 13.2));
        return all;
    }

    private static Candidate at(Foot foot, double touchdownS, double lastsS, double alongM) {
        return new Candidate(foot, touchdownS, touchdownS + lastsS, 0.08, alongM, 0.01);
    }

    private static Optional<Sequence> decode(boolean metres, List<Candidate> candidates) {
        return new SequenceDecoder(metres, Optional.empty(), STATURE_M).decode(candidates);
    }

    private static void assertOrder(Sequence s) {
        assertEquals(1.5, s.board().touchdownS(), 1e-9);
        assertEquals(2.07, s.hopLanding().touchdownS(), 1e-9);
        assertEquals(2.57, s.stepLanding().touchdownS(), 1e-9);
    }

    /** TR31 (MEM-H): same foot, other foot, pit; either foot takes off; metres from the line or none. */
    @ParameterizedTest(name = "takes off {0}, metres {1}, board at {2} m")
    @CsvSource({
        "LEFT, true, -0.10",
        "RIGHT, true, -0.10",
        "LEFT, false, -0.10",
        "RIGHT, false, -0.10",
        // stepped 7 cm over the line: no official distance, but still an attempt; and 40 cm before it
        "LEFT, true, 0.07",
        "RIGHT, true, -0.40"
    })
    void findsTheOrderFromEitherFoot(Foot takeoff, boolean metres, double boardAlongM) {
        Sequence s = decode(metres, attempt(takeoff, boardAlongM)).orElseThrow();
        assertOrder(s);
        assertEquals(3.33, s.pit().orElseThrow().touchdownS(), 1e-9);
        assertEquals(takeoff, s.takeoffFoot());
        assertTrue(s.feetAgree());
        assertTrue(s.margin() > 6, "margin " + s.margin());
        assertEquals(
                List.of(takeoff, takeoff.other(), takeoff, takeoff.other()),
                s.approach().stream().map(Candidate::foot).toList());
    }

    /** One stride that was not seen must not cost all those before it. SYN. */
    @ParameterizedTest(name = "stride {0} before the board missing")
    @CsvSource({"1, LEFT RIGHT LEFT", "2, LEFT RIGHT RIGHT", "3, LEFT LEFT RIGHT"})
    void bridgesAStrideThatWasMissed(int missing, String feet) {
        List<Candidate> all = attempt(Foot.LEFT, -0.1);
        all.remove(4 - missing);
        Sequence s = decode(true, all).orElseThrow();
        assertOrder(s);
        assertEquals(feet, s.approach().stream().map(c -> c.foot().name()).collect(Collectors.joining(" ")));
    }

    /** TR31 (MEM-H): the 'sleeping leg' may touch the ground; a brush during the step is no contact of the order. */
    @ParameterizedTest(name = "touch of {0} at {1} s")
    @CsvSource({"RIGHT, 2.08", "RIGHT, 2.12", "LEFT, 2.60", "RIGHT, 1.53"})
    void aTouchOfTheSleepingLegBesideTheSupportChangesNothing(Foot foot, double touchdownS) {
        List<Candidate> all = attempt(Foot.LEFT, -0.1);
        double along = touchdownS < 1.6 ? 0.3 : touchdownS < 2.3 ? 4.4 : 8.2;
        all.add(new Candidate(foot, touchdownS, touchdownS + 0.06, 0.3, along, 0.08));
        Sequence s = decode(true, all).orElseThrow();
        assertOrder(s);
        assertEquals(Foot.LEFT, s.takeoffFoot());
        assertTrue(s.margin() > 3, "margin " + s.margin());
    }

    /** SYN: between the contacts, where a weak slow moment of the free foot lies in the middle of a flight. */
    @ParameterizedTest(name = "at {0} s")
    @ValueSource(doubles = {1.80, 2.35, 2.95})
    void aWeakSlowMomentInAFlightDoesNotBecomeAContact(double touchdownS) {
        List<Candidate> all = attempt(Foot.LEFT, -0.1);
        double along = touchdownS < 2 ? 2 : touchdownS < 2.5 ? 6.5 : 10.5;
        all.add(new Candidate(Foot.RIGHT, touchdownS, touchdownS + 0.04, 0.40, along, 0.2));
        assertOrder(decode(true, all).orElseThrow());
    }

    @Test
    void goesWithoutAPitThatWasNotSeen() {
        List<Candidate> all = new ArrayList<>(attempt(Foot.RIGHT, -0.1).subList(0, 7));
        Sequence s = decode(true, all).orElseThrow();
        assertOrder(s);
        assertTrue(s.pit().isEmpty());
        assertTrue(s.margin() > 3, "margin " + s.margin());
    }

    /** The network may take one leg for the other through a whole contact: two of three feet decide. */
    @ParameterizedTest(name = "{0}. contact of the jump")
    @ValueSource(ints = {4, 5, 6})
    void toleratesTheWrongFootAtOneContact(int index) {
        List<Candidate> all = attempt(Foot.LEFT, -0.1);
        Candidate c = all.get(index);
        all.set(index, at(c.foot().other(), c.touchdownS(), c.toeOffS() - c.touchdownS(), c.alongM()));
        Sequence s = decode(true, all).orElseThrow();
        assertOrder(s);
        assertEquals(Foot.LEFT, s.takeoffFoot());
        assertFalse(s.feetAgree());
    }

    /** A run through the pit has strides only: flights of 0.12 s alternate feet and are no hop. */
    @Test
    void seesNoJumpInARunThrough() {
        List<Candidate> all = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            all.add(at(i % 2 == 0 ? Foot.LEFT : Foot.RIGHT, 0.2 + 0.23 * i, 0.11, -12 + 2.0 * i));
        }
        Optional<Sequence> s = decode(true, all);
        assertTrue(s.isEmpty(), () -> "found " + s);
    }

    @Test
    void seesNothingInTwoContacts() {
        assertTrue(decode(true, attempt(Foot.LEFT, -0.1).subList(4, 6)).isEmpty());
        assertTrue(decode(false, List.of()).isEmpty());
    }

    /** Where every foot may be either, the foot that the sheet tells makes the difference. */
    @Test
    void aFootFromTheSheetDecidesNothingAgainstThreeContacts() {
        Sequence s = new SequenceDecoder(true, Optional.of(Foot.RIGHT), STATURE_M)
                .decode(attempt(Foot.LEFT, -0.1))
                .orElseThrow();
        assertOrder(s);
        assertEquals(Foot.LEFT, s.takeoffFoot());
    }

    @Test
    void doesNotDependOnWhenTheClipBegins() {
        List<Candidate> late = attempt(Foot.LEFT, -0.1).stream()
                .map(c -> at(c.foot(), c.touchdownS() + 40, c.toeOffS() - c.touchdownS(), c.alongM()))
                .toList();
        Sequence a = decode(true, attempt(Foot.LEFT, -0.1)).orElseThrow();
        Sequence b = decode(true, late).orElseThrow();
        assertEquals(a.score(), b.score(), 1e-6);
        assertEquals(a.margin(), b.margin(), 1e-6);
        assertEquals(a.board().touchdownS() + 40, b.board().touchdownS(), 1e-9);
    }
}
