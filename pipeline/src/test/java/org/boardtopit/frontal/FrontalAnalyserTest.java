package org.boardtopit.frontal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.boardtopit.clips.Camera;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.frontal.FrontalAttempt.SeenContact;
import org.boardtopit.measures.ContactQuantity;
import org.boardtopit.measures.PhaseQuantity;
import org.boardtopit.measures.Reading;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.synthetic.DrawnFrontClip;
import org.boardtopit.synthetic.TrueContact;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Drawn attempts (SYN, our own) whose upper body rolls to the side as planted; the bar of 4 degrees is the project's. */
class FrontalAnalyserTest {
    private static final double BAR_DEG = 4;
    private static final List<ContactKind> JUMP =
            List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING);

    private static FrontalAttempt measured(DrawnViews views, DrawnFrontClip other, Camera.View view, boolean marks)
            throws ClocksNotAlignedException {
        return new FrontalAnalyser()
                .analyse(
                        other.landmarks(),
                        view,
                        marks ? Optional.of(other.runwayCamera()) : Optional.empty(),
                        views.side());
    }

    private static SeenContact of(FrontalAttempt attempt, ContactKind kind) {
        return attempt.contacts().stream()
                .filter(c -> c.own().map(Contact::kind).filter(k -> k == kind).isPresent())
                .findFirst()
                .orElseThrow();
    }

    private static double value(SeenContact contact, ContactQuantity quantity) {
        return contact.readings().getOrDefault(quantity, Reading.UNKNOWN).value();
    }

    /** A roll to the left lowers the left shoulder and the left hip by its own angle. */
    private static void checkAgainst(DoubleUnaryOperator roll, DrawnViews views, FrontalAttempt attempt) {
        for (ContactKind kind : JUMP) {
            SeenContact seen = of(attempt, kind);
            TrueContact truth = views.contact(kind);
            double down = roll.applyAsDouble(truth.touchdownS());
            double off = roll.applyAsDouble(truth.toeOffS());
            assertEquals(-down, value(seen, ContactQuantity.SHOULDER_TILT_TOUCHDOWN), BAR_DEG, kind + " shoulders");
            assertEquals(-off, value(seen, ContactQuantity.SHOULDER_TILT_TOE_OFF), BAR_DEG, kind + " shoulders off");
            assertEquals(-down, value(seen, ContactQuantity.HIP_TILT_TOUCHDOWN), BAR_DEG, kind + " hips");
            assertEquals(-off, value(seen, ContactQuantity.HIP_TILT_TOE_OFF), BAR_DEG, kind + " hips off");
            assertEquals(down, value(seen, ContactQuantity.SIDE_LEAN_TOUCHDOWN), 2, kind + " lean");
            assertEquals(off, value(seen, ContactQuantity.SIDE_LEAN_TOE_OFF), 2, kind + " lean off");
        }
    }

    @ParameterizedTest(name = "{0}, seed {1}, roll {2} deg, camera {3} m beside and rolled by {4} rad")
    @CsvSource({
        "FRONT, 1, 12, -0.8, 0",
        "FRONT, 1, -12, -0.8, 0",
        "FRONT, 2, 0, 1.5, 0.06",
        "FRONT, 3, 15, 5, -0.06",
        "REAR, 4, 12, 1, 0",
        "REAR, 5, -10, -4, 0.05"
    })
    void readsTheRollThatStartsInTheHopAndReturnsInTheStep(
            Camera.View view, long seed, double rollDeg, double acrossM, double cameraRollRad)
            throws ClocksNotAlignedException {
        DrawnViews views = DrawnViews.of(seed);
        DoubleUnaryOperator roll = views.rollFromHopToStep(rollDeg);
        DrawnFrontClip other = views.drawn(
                DrawnFrontClip.camera(view, acrossM, cameraRollRad),
                roll,
                0,
                views.clip().jumper().endS());
        FrontalAttempt attempt = measured(views, other, view, true);
        checkAgainst(roll, views, attempt);
        Map<PhaseQuantity, Reading> hop = attempt.phases().get(PhaseName.HOP);
        Map<PhaseQuantity, Reading> step = attempt.phases().get(PhaseName.STEP);
        assertEquals(Math.max(0, rollDeg), hop.get(PhaseQuantity.SWING_LEFT).value(), 2.5);
        assertEquals(Math.max(0, -rollDeg), hop.get(PhaseQuantity.SWING_RIGHT).value(), 2.5);
        assertEquals(Math.max(0, rollDeg), step.get(PhaseQuantity.SWING_LEFT).value(), 2.5);
    }

    @Test
    void levelsThePictureByTheMarks() throws ClocksNotAlignedException {
        DrawnViews views = DrawnViews.of(2);
        DrawnFrontClip other = views.drawn(
                DrawnFrontClip.camera(Camera.View.FRONT, 0.5, 0.1),
                t -> 0,
                0,
                views.clip().jumper().endS());
        double with = value(
                of(measured(views, other, Camera.View.FRONT, true), ContactKind.BOARD),
                ContactQuantity.SHOULDER_TILT_TOUCHDOWN);
        double without = value(
                of(measured(views, other, Camera.View.FRONT, false), ContactKind.BOARD),
                ContactQuantity.SHOULDER_TILT_TOUCHDOWN);
        assertEquals(0, with, BAR_DEG);
        assertEquals(Math.toDegrees(0.1), Math.abs(without - with), 1, "the camera's own roll");
    }

    @Test
    void hasWiderIntervalsAndNoPlacesWithoutMarks() throws ClocksNotAlignedException {
        DrawnViews views = DrawnViews.of(3);
        DrawnFrontClip other = views.front(t -> 0);
        SeenContact with = of(measured(views, other, Camera.View.FRONT, true), ContactKind.HOP_LANDING);
        SeenContact without = of(measured(views, other, Camera.View.FRONT, false), ContactKind.HOP_LANDING);
        assertTrue(with.readings().containsKey(ContactQuantity.FOOT_ACROSS));
        assertFalse(without.readings().containsKey(ContactQuantity.FOOT_ACROSS));
        for (ContactQuantity q : List.of(
                ContactQuantity.SHOULDER_TILT_TOUCHDOWN,
                ContactQuantity.HIP_TILT_TOUCHDOWN,
                ContactQuantity.SIDE_LEAN_TOUCHDOWN)) {
            assertTrue(without.readings().get(q).sd() > with.readings().get(q).sd() + 0.2, q.column());
        }
    }

    @ParameterizedTest(name = "{0}, {1} m beside")
    @CsvSource({"FRONT, -0.8", "FRONT, 4", "REAR, 1"})
    void placesTheFeetAcrossTheRunway(Camera.View view, double acrossM) throws ClocksNotAlignedException {
        DrawnViews views = DrawnViews.of(4);
        DrawnFrontClip other = views.drawn(
                DrawnFrontClip.camera(view, acrossM, 0),
                t -> 0,
                0,
                views.clip().jumper().endS());
        FrontalAttempt attempt = measured(views, other, view, true);
        for (ContactKind kind : JUMP) {
            TrueContact contact = views.contact(kind);
            double[] toe = views.clip()
                    .jumper()
                    .points(contact.middleS())[contact.foot().toe().index()];
            assertEquals(toe[1], value(of(attempt, kind), ContactQuantity.FOOT_ACROSS), 0.03, kind.label());
        }
    }

    @Test
    void bearsPointsThatCarryTheOtherSidesNames() throws ClocksNotAlignedException {
        DrawnViews views = DrawnViews.of(1);
        DoubleUnaryOperator roll = views.rollFromHopToStep(10);
        DrawnFrontClip other = new DrawnFrontClip(
                views.clip().jumper(),
                DrawnFrontClip.camera(Camera.View.FRONT, -0.8, 0),
                roll,
                0,
                views.clip().jumper().endS(),
                60,
                DrawnViews.ERROR,
                0.25);
        checkAgainst(roll, views, measured(views, other, Camera.View.FRONT, true));
    }

    @Test
    void givesTheContactsTheTimesOfItsOwnClock() throws ClocksNotAlignedException {
        DrawnViews views = DrawnViews.of(2);
        double begin = views.contact(ContactKind.BOARD).touchdownS() - 0.1;
        DrawnFrontClip other = views.drawn(
                DrawnFrontClip.camera(Camera.View.FRONT, 0.5, 0),
                t -> 0,
                begin,
                views.clip().jumper().endS());
        FrontalAttempt attempt = measured(views, other, Camera.View.FRONT, true);
        assertEquals(
                views.side().contacts().contacts().size(), attempt.contacts().size());
        assertEquals(ContactKind.BOARD, attempt.ownContacts().get(0).contact().kind(), "those before are not in it");
        assertEquals(0.1, attempt.ownContacts().get(0).contact().touchdownS(), 0.02);
    }
}
