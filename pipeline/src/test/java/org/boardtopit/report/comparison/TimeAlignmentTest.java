package org.boardtopit.report.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.report.comparison.TimeAlignment.Anchor;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Truth: the contacts with which the sample clips were rendered (their truth.json), at the frame rates of these clips and at others. */
class TimeAlignmentTest {
    private static final String A1 = "A1_static_720p60";
    private static final String C1 = "C1_static_720p120";

    private static AttemptInstants truth(String clip) throws IOException {
        JsonNode truth;
        try (InputStream in =
                TimeAlignmentTest.class.getResourceAsStream("/org/boardtopit/sample/" + clip + ".truth.json")) {
            truth = new ObjectMapper().readTree(in);
        }
        List<Contact> contacts = new ArrayList<>();
        for (JsonNode c : truth.path("contacts")) {
            ContactKind kind = ContactKind.valueOf(c.path("kind").asText().toUpperCase(Locale.ROOT));
            contacts.add(contact(
                    kind, c.path("touchdown_s").asDouble(), c.path("toeoff_s").asDouble()));
        }
        contacts.add(contact(ContactKind.PIT, truth.at("/pit/landing_s").asDouble(), Double.NaN));
        double end = (truth.path("frames").asInt() - 1) / truth.path("fps").asDouble();
        return AttemptInstants.of(contacts, 0, end);
    }

    private static Contact contact(ContactKind kind, double touchdownS, double toeOffS) {
        return new Contact(kind, Foot.LEFT, touchdownS, 0, toeOffS, 0, Double.NaN, Double.NaN, 1, false);
    }

    private static AttemptInstants of(Contact... contacts) {
        return AttemptInstants.of(List.of(contacts), 0, 10);
    }

    private static TimeAlignment stretched(AttemptInstants a, AttemptInstants b) {
        return TimeAlignment.stretched(a, b).orElseThrow();
    }

    /** The frame of a clip that is shown: the nearest one. */
    private static int frame(double atS, double fps) {
        return (int) Math.round(atS * fps);
    }

    @Test
    void everyTouchdownAndToeOffOfTheTruthCoincides() throws IOException {
        AttemptInstants a = truth(A1);
        AttemptInstants b = truth(C1);
        TimeAlignment alignment = stretched(a, b);
        for (ContactKind kind :
                new ContactKind[] {ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING}) {
            for (boolean touchdown : new boolean[] {true, false}) {
                KeyInstant instant = new KeyInstant(kind, 0, touchdown);
                assertEquals(
                        b.at(instant).orElseThrow(), alignment.bAt(a.at(instant).orElseThrow()), 1e-12, kind + "");
                assertEquals(
                        a.at(instant).orElseThrow(), alignment.aAt(b.at(instant).orElseThrow()), 1e-12, kind + "");
            }
        }
        KeyInstant pit = new KeyInstant(ContactKind.PIT, 0, true);
        assertEquals(b.at(pit).orElseThrow(), alignment.bAt(a.at(pit).orElseThrow()), 1e-12);
    }

    /**
     * The bar: on the pictures of the video, the frames nearest to a touchdown of A and of B come up within one picture of each
     * other, whatever the frame rates of the clips.
     */
    @ParameterizedTest
    @CsvSource({"60, 120", "120, 60", "60, 60", "25, 120", "240, 30", "29.97, 59.94", "120, 119.88"})
    void alignedTouchdownsOfTheTruthComeUpWithinOnePicture(double fpsA, double fpsB) throws IOException {
        AttemptInstants a = truth(A1);
        AttemptInstants b = truth(C1);
        TimeAlignment alignment = stretched(a, b);
        List<Moment> moments = alignment.moments(1 / TimeAlignment.picturesPerS(fpsA, fpsB));
        int touchdowns = 0;
        for (Anchor anchor : shown(alignment)) {
            double trueA = a.at(anchor.instant()).orElseThrow();
            double trueB = b.at(anchor.instant()).orElseThrow();
            int[] shownA = pictures(moments, frame(trueA, fpsA), fpsA, true);
            int[] shownB = pictures(moments, frame(trueB, fpsB), fpsB, false);
            assertTrue(
                    shownA[0] <= shownB[1] + 1 && shownB[0] <= shownA[1] + 1,
                    anchor.instant().toString());
            touchdowns += anchor.instant().beginsPhase() ? 1 : 0;
        }
        assertEquals(4, touchdowns, "board, two landings, pit");
    }

    @ParameterizedTest
    @CsvSource({
        "60, 120, 60",
        "120, 60, 60",
        "30, 60, 60",
        "30, 25, 30",
        "120, 120, 120",
        "240, 240, 120",
        "30, 240, 60"
    })
    void picturesAreAsManyAsBothClipsCanTellApart(double fpsA, double fpsB, double pictures) {
        assertEquals(pictures, TimeAlignment.picturesPerS(fpsA, fpsB));
    }

    private static List<Anchor> shown(TimeAlignment alignment) {
        return alignment.anchors().stream()
                .filter(anchor -> anchor.aS() >= alignment.startS() && anchor.aS() <= alignment.endS())
                .toList();
    }

    /** First and last picture on which a frame is shown. */
    private static int[] pictures(List<Moment> moments, int frame, double fps, boolean ofA) {
        int first = -1;
        int last = -1;
        for (int i = 0; i < moments.size(); i++) {
            double at = ofA ? moments.get(i).aS() : moments.get(i).bS();
            if (frame(at, fps) == frame) {
                first = first < 0 ? i : first;
                last = i;
            }
        }
        assertTrue(first >= 0, "frame " + frame + " is shown");
        return new int[] {first, last};
    }

    /** At one frame rate for both: on no picture is one athlete before a touchdown and the other more than a frame after it. */
    @ParameterizedTest
    @ValueSource(doubles = {60, 120})
    void noPictureShowsOneInTheAirAndTheOtherLongOnTheGround(double fps) throws IOException {
        AttemptInstants a = truth(A1);
        AttemptInstants b = truth(C1);
        TimeAlignment alignment = stretched(a, b);
        for (Moment moment : alignment.moments(1 / fps)) {
            double shownA = frame(moment.aS(), fps) / fps;
            double shownB = frame(moment.bS(), fps) / fps;
            for (Anchor anchor : alignment.anchors()) {
                boolean parted = (shownA - anchor.aS()) * (shownB - anchor.bS()) < 0;
                assertTrue(
                        !parted
                                || (Math.abs(shownA - anchor.aS()) <= 1 / fps
                                        && Math.abs(shownB - anchor.bS()) <= 1 / fps),
                        anchor.instant() + " at " + moment);
            }
        }
    }

    @Test
    void inTrueTimeBothGoAtTheirOwnPaceFromTheBoardOn() throws IOException {
        AttemptInstants a = truth(A1);
        AttemptInstants b = truth(C1);
        TimeAlignment alignment = TimeAlignment.trueTime(a, b).orElseThrow();
        KeyInstant board = new KeyInstant(ContactKind.BOARD, 0, true);
        double boardA = a.at(board).orElseThrow();
        double boardB = b.at(board).orElseThrow();
        assertEquals(boardB, alignment.bAt(boardA), 1e-12);
        assertEquals(boardB + 1.3, alignment.bAt(boardA + 1.3), 1e-12);
        assertEquals(boardB - 0.4, alignment.bAt(boardA - 0.4), 1e-12);
        assertEquals(1, alignment.paceOfB(boardA + 0.5));
    }

    @Test
    void aPhaseThatTookBLongerIsShownFaster() {
        AttemptInstants a = of(contact(ContactKind.BOARD, 1, 1.1), contact(ContactKind.HOP_LANDING, 1.5, 1.6));
        AttemptInstants b = of(contact(ContactKind.BOARD, 2, 2.1), contact(ContactKind.HOP_LANDING, 2.6, 2.7));
        TimeAlignment alignment = stretched(a, b);
        assertEquals(1.25, alignment.paceOfB(1.3), 1e-9, "0.5 s of B in 0.4 s of A");
        assertEquals(2.35, alignment.bAt(1.3), 1e-9, "in the middle of the flight");
        assertEquals(3.7, alignment.bAt(2.6), 1e-9, "at its own pace after the last contact");
        assertEquals(1.5, alignment.bAt(0.5), 1e-9, "and before the first");
    }

    @Test
    void anEndThatOneClipLacksIsPassedOver() {
        AttemptInstants a = of(
                contact(ContactKind.BOARD, 1, 1.1),
                contact(ContactKind.HOP_LANDING, 1.7, 1.8),
                contact(ContactKind.STEP_LANDING, 2.3, 2.5));
        AttemptInstants b = of(contact(ContactKind.BOARD, 1, Double.NaN), contact(ContactKind.STEP_LANDING, 2.4, 2.55));
        TimeAlignment alignment = stretched(a, b);
        assertEquals(
                List.of(
                        new KeyInstant(ContactKind.BOARD, 0, true),
                        new KeyInstant(ContactKind.STEP_LANDING, 0, true),
                        new KeyInstant(ContactKind.STEP_LANDING, 0, false)),
                alignment.anchors().stream().map(Anchor::instant).toList());
        assertEquals(1 + 1.4 * 0.7 / 1.3, alignment.bAt(1.7), 1e-9);
    }

    @Test
    void contactsOfADrillBelongTogetherByTheirNumber() {
        AttemptInstants a = of(
                contact(ContactKind.DRILL, Double.NaN, 0.3),
                contact(ContactKind.DRILL, 0.8, 1),
                contact(ContactKind.DRILL, 1.5, 1.7));
        AttemptInstants b = of(contact(ContactKind.DRILL, Double.NaN, 0.5), contact(ContactKind.DRILL, 1.2, 1.4));
        TimeAlignment alignment = stretched(a, b);
        assertEquals(1.2, alignment.bAt(0.8), 1e-9);
        assertEquals(0.5, alignment.bAt(0.3), 1e-9);
        assertEquals(3, alignment.anchors().size());
    }

    @Test
    void stridesOfTheApproachBelongTogetherBackwardsFromTheBoard() {
        AttemptInstants a = of(
                contact(ContactKind.APPROACH, 0.5, 0.6),
                contact(ContactKind.APPROACH, 0.75, 0.85),
                contact(ContactKind.BOARD, 1, 1.1));
        AttemptInstants b = of(contact(ContactKind.APPROACH, 0.28, 0.4), contact(ContactKind.BOARD, 0.55, 0.66));
        TimeAlignment alignment = stretched(a, b);
        assertEquals(0.28, alignment.bAt(0.75), 1e-9);
        assertEquals(4, alignment.anchors().size(), "last stride and board, two ends each");
    }

    @Test
    void anApproachInWhichAContactIsMissingIsNotTornApart() {
        AttemptInstants a = of(contact(ContactKind.APPROACH, 0.75, 0.85), contact(ContactKind.BOARD, 1, 1.1));
        AttemptInstants b = of(contact(ContactKind.APPROACH, 0.5, 0.6), contact(ContactKind.BOARD, 1, 1.1));
        TimeAlignment alignment = stretched(a, b);
        assertEquals(2, alignment.anchors().size());
        assertEquals(0.75, alignment.bAt(0.75), 1e-9);
    }

    @Test
    void twoWithoutACommonTouchdownAreNotAligned() {
        AttemptInstants a = of(contact(ContactKind.BOARD, 1, 1.1));
        AttemptInstants b = of(contact(ContactKind.DRILL, 1, 1.1));
        assertTrue(TimeAlignment.stretched(a, b).isEmpty());
        assertTrue(TimeAlignment.trueTime(a, b).isEmpty());
        assertTrue(
                TimeAlignment.stretched(a, AttemptInstants.of(List.of(), 0, 1)).isEmpty());
    }

    @Test
    void picturesShowOnlyWhatBothClipsShow() {
        AttemptInstants a = AttemptInstants.of(List.of(contact(ContactKind.BOARD, 1, 1.1)), 0.2, 3);
        AttemptInstants b = AttemptInstants.of(List.of(contact(ContactKind.BOARD, 0.5, 0.6)), 0.1, 2);
        List<Moment> moments = stretched(a, b).moments(0.05);
        assertEquals(0.6, moments.get(0).aS(), 0.051);
        assertTrue(moments.get(0).bS() >= 0.1 - 1e-9);
        assertEquals(2.5, moments.get(moments.size() - 1).aS(), 0.051);
        assertTrue(moments.get(moments.size() - 1).bS() <= 2 + 1e-9);
    }

    /** Seeds 1 to 200. */
    @Test
    void picturesGoForwardEvenlyInBothClipsWhateverTheTimes() {
        for (int seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            AttemptInstants a = random(random);
            AttemptInstants b = random(random);
            double step = 1 / (24 + 96 * random.nextDouble());
            List<Moment> moments = stretched(a, b).moments(step);
            for (int i = 1; i < moments.size(); i++) {
                double onA = moments.get(i).aS() - moments.get(i - 1).aS();
                double onB = moments.get(i).bS() - moments.get(i - 1).bS();
                assertTrue(onA > 0 && onB > 0, "seed " + seed + ": " + onA + ", " + onB);
                assertTrue(onA < 1.5 * step + 1e-9, "seed " + seed + ": " + onA);
            }
        }
    }

    private static AttemptInstants random(Random random) {
        List<Contact> contacts = new ArrayList<>();
        double t = 0.3 + random.nextDouble();
        for (ContactKind kind : new ContactKind[] {
            ContactKind.APPROACH, ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT
        }) {
            double off = t + 0.08 + 0.1 * random.nextDouble();
            contacts.add(contact(kind, t, random.nextInt(5) == 0 ? Double.NaN : off));
            t = off + 0.1 + 0.5 * random.nextDouble();
        }
        return AttemptInstants.of(contacts, 0, t + 0.4);
    }
}
