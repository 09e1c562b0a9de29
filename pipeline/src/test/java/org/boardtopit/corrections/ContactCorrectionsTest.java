package org.boardtopit.corrections;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.boardtopit.clips.Correction;
import org.boardtopit.clips.Correction.Field;
import org.boardtopit.clips.Label;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.synthetic.DrawnClip;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Outside checks: the order of the feet (World Athletics, Technical Rules, TR31, MEM-H) and the standard deviation of a rectangular
 * distribution (JCGM 100:2008, 4.3.7).
 */
class ContactCorrectionsTest {
    private static final ClipLandmarks CLIP =
            new DrawnClip(DrawnClip.Setup.ordinary(1).atFps(60)).landmarks();

    /** Approach R, board L, hop landing L, step landing R, pit: touchdowns at frames 20, 40, 60, 80, 100, supports of 8. */
    private static final ContactTimeline FOUND = new ContactTimeline(
            List.of(
                    contact(ContactKind.APPROACH, Foot.RIGHT, 20),
                    contact(ContactKind.BOARD, Foot.LEFT, 40),
                    contact(ContactKind.HOP_LANDING, Foot.LEFT, 60),
                    contact(ContactKind.STEP_LANDING, Foot.RIGHT, 80),
                    contact(ContactKind.PIT, Foot.BOTH, 100)),
            0.4,
            List.of("a remark"));

    private static Contact contact(ContactKind kind, Foot foot, int frame) {
        double off = kind == ContactKind.PIT ? Double.NaN : CLIP.timeS(frame + 8);
        return new Contact(kind, foot, CLIP.timeS(frame), 0.01, off, 0.01, frame / 10.0, 0.05, 0.5, false);
    }

    private static Correction instant(String contact, Field field, double frame) {
        return new Correction(7, contact, field, "", "", frame, Double.NaN, true, "" + frame, "Mara", "");
    }

    private static Correction word(String contact, Field field, String kind, String foot) {
        return new Correction(7, contact, field, kind, foot, Double.NaN, Double.NaN, false, kind + foot, "Mara", "");
    }

    private static Correction added(String kind, String foot, double from, double to) {
        return new Correction(7, "", Field.ADD, kind, foot, from, to, true, kind + from, "Mara", "");
    }

    private static Contact seen(ContactKind kind, Foot foot, double down, double off, double sd) {
        return new Contact(kind, foot, down, sd, off, sd, Double.NaN, Double.NaN, 1, false, true);
    }

    private static ContactTimeline called(Correction... corrections) {
        return new ContactCorrections(List.of(corrections), CLIP).called(FOUND, ContactCorrectionsTest::seen);
    }

    private static ContactCorrections.Timed timed(Correction... corrections) {
        ContactCorrections all = new ContactCorrections(List.of(corrections), CLIP);
        return all.timed(FOUND, all.called(FOUND, ContactCorrectionsTest::seen));
    }

    private static String kinds(ContactTimeline contacts) {
        return String.join(
                " ", contacts.contacts().stream().map(c -> c.kind().label()).toList());
    }

    @Test
    void withoutCorrectionsAllIsAsFound() {
        assertEquals(FOUND, called());
        assertTrue(timed().isAsFound());
        assertEquals(FOUND, timed().contacts());
    }

    @Test
    void aTouchdownIsWhereThePersonSawItToHalfAFrame() {
        ContactCorrections.Timed timed = timed(instant("2", Field.TOUCHDOWN_FRAME, 58));
        Contact contact = timed.contacts().contacts().get(2);
        assertEquals(CLIP.timeS(58), contact.touchdownS());
        // A rectangular distribution over half a frame to either side.
        assertEquals(CLIP.frameStepS() / Math.sqrt(12), contact.touchdownSdS(), 1e-12);
        assertTrue(contact.corrected());
        assertEquals(FOUND.contacts().get(2).toeOffS(), contact.toeOffS());
        assertEquals(Set.of(2), timed.touchdowns());
        assertEquals(Set.of(), timed.toeOffs());
        for (int i : new int[] {0, 1, 3, 4}) {
            assertEquals(FOUND.contacts().get(i), timed.contacts().contacts().get(i));
        }
    }

    @Test
    void betweenTwoFramesTheTimeIsBetweenTheirs() {
        double at = timed(instant("2", Field.TOUCHDOWN_FRAME, 58.25))
                .contacts()
                .contacts()
                .get(2)
                .touchdownS();
        assertEquals(0.75 * CLIP.timeS(58) + 0.25 * CLIP.timeS(59), at, 1e-12);
    }

    @Test
    void aContactOfTheJumpMayBeCalledByItsKind() {
        assertEquals(
                timed(instant("3", Field.TOE_OFF_FRAME, 90)).contacts(),
                timed(instant("step_landing", Field.TOE_OFF_FRAME, 90)).contacts());
    }

    @Test
    void aWholeContactMayBeMovedLaterThanItEnded() {
        Contact moved = timed(instant("2", Field.TOUCHDOWN_FRAME, 70), instant("2", Field.TOE_OFF_FRAME, 76))
                .contacts()
                .contacts()
                .get(2);
        assertEquals(CLIP.timeS(70), moved.touchdownS());
        assertEquals(CLIP.timeS(76), moved.toeOffS());
    }

    @ParameterizedTest(name = "{0} {1} {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "2|TOUCHDOWN_FRAME|68|would not be before the toe-off at frame 68",
                "2|TOE_OFF_FRAME|60|would not be before the toe-off at frame 60",
                "2|TOUCHDOWN_FRAME|47|contacts would overlap: hop_landing would touch down at frame 47",
                "2|TOE_OFF_FRAME|81|contacts would overlap: step_landing would touch down at frame 80",
                "4|TOE_OFF_FRAME|120|the landing in the pit has no toe-off",
                "9|TOUCHDOWN_FRAME|60|there is no contact 9: 0 to 4 were found in this clip",
                "2|TOUCHDOWN_FRAME|99999|is outside the clip, whose frames are 0 to",
                "2|TOUCHDOWN_S|9999|is outside the clip",
            })
    void refusesAnInstantThatCannotBe(String contact, Field field, double value, String expected) {
        boolean frames = field != Field.TOUCHDOWN_S;
        Correction correction =
                new Correction(7, contact, field, "", "", value, Double.NaN, frames, "" + value, "", "");
        RefusedCorrectionException refused = assertThrows(RefusedCorrectionException.class, () -> timed(correction));
        assertEquals(7, refused.line());
        assertTrue(refused.getMessage().contains(expected), refused.getMessage());
    }

    @Test
    void refusesTwoValuesForOneThingHoweverTheyCallIt() {
        RefusedCorrectionException refused = assertThrows(
                RefusedCorrectionException.class,
                () -> timed(
                        instant("2", Field.TOUCHDOWN_FRAME, 58), instant("hop_landing", Field.TOUCHDOWN_FRAME, 59)));
        assertTrue(refused.getMessage().contains("line 7 says otherwise of the same contact"), refused.getMessage());
        assertFalse(timed(instant("2", Field.TOUCHDOWN_FRAME, 58), instant("hop_landing", Field.TOUCHDOWN_FRAME, 58))
                .isAsFound());
    }

    @Test
    void aContactThatIsNoneIsRemovedAndTheOthersKeepTheirNumbers() {
        ContactCorrections.Timed timed =
                timed(word("0", Field.REMOVE, "", ""), instant("2", Field.TOUCHDOWN_FRAME, 58));
        assertEquals("board hop_landing step_landing pit", kinds(timed.contacts()));
        assertEquals(CLIP.timeS(58), timed.contacts().contacts().get(1).touchdownS());
        assertEquals(Set.of(1), timed.touchdowns());
    }

    @Test
    void aMissedContactIsAddedInItsPlace() {
        ContactTimeline contacts = called(added("approach", "L", 30, 36));
        assertEquals("approach approach board hop_landing step_landing pit", kinds(contacts));
        assertTrue(contacts.contacts().get(1).corrected());
    }

    @Test
    void aCompleteJumpThatAPersonNamedIsSure() {
        ContactTimeline contacts = called(added("approach", "L", 30, 36));
        assertEquals(1, contacts.sequenceConfidence());
        assertEquals(List.of(), contacts.remarks());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "1 foot R|board and hop_landing are on one foot",
                "3 foot L|board and hop_landing are on one foot",
                "1 kind hop_landing|then a hop_landing would come after a hop_landing",
                "0 kind pit|then a board would come after a pit",
                "0 kind step_landing|then a board would come after a step_landing",
                "4 kind step_landing|is on one foot",
                "2 kind pit,2 foot L|in the pit both feet land",
                "add step_landing R 62 66|at that time there is a contact already: hop_landing L",
                "add board L 70 75|then a board would come after a hop_landing",
                "2 remove,2 touchdown 58|contact 2 is removed on line 7",
            })
    void refusesWhatIsNoTripleJump(String said, String expected) {
        Correction[] corrections = Arrays.stream(said.split(",", -1))
                .map(ContactCorrectionsTest::parsed)
                .toArray(Correction[]::new);
        RefusedCorrectionException refused = assertThrows(RefusedCorrectionException.class, () -> timed(corrections));
        assertTrue(refused.getMessage().contains(expected), refused.getMessage());
    }

    private static Correction parsed(String said) {
        String[] words = said.split(" ", -1);
        if (words[0].equals("add")) {
            return added(words[1], words[2], Double.parseDouble(words[3]), Double.parseDouble(words[4]));
        }
        return switch (words[1]) {
            case "foot" -> word(words[0], Field.FOOT, "", words[2]);
            case "kind" -> word(words[0], Field.KIND, words[2], "");
            case "touchdown" -> instant(words[0], Field.TOUCHDOWN_FRAME, Double.parseDouble(words[2]));
            default -> word(words[0], Field.REMOVE, "", "");
        };
    }

    @Test
    void whenAllThreeStandOnTheOtherFootTheSidesAreExchanged() {
        List<Correction> feet = List.of(
                word("board", Field.FOOT, "", "R"),
                word("hop_landing", Field.FOOT, "", "R"),
                word("step_landing", Field.FOOT, "", "L"));
        ContactCorrections corrections = new ContactCorrections(feet, CLIP);
        ClipLandmarks exchanged = corrections.withOtherSides(FOUND).orElseThrow();
        for (int f = 0; f < CLIP.frameCount(); f++) {
            var pose = CLIP.poses().at(f);
            var other = exchanged.poses().at(f);
            assertEquals(pose.isPresent(), other.isPresent());
            if (pose.isPresent()) {
                assertEquals(pose.get().place(Foot.LEFT.toe(), 0), other.get().place(Foot.RIGHT.toe(), 0));
            }
        }
        assertTrue(new ContactCorrections(feet.subList(0, 1), CLIP)
                .withOtherSides(FOUND)
                .isEmpty());
    }

    @Test
    void framesOfSomebodyElseCountAsNotSeen() {
        Correction span = new Correction(7, "", Field.NOT_THE_ATHLETE, "", "", 10, 20, true, "10-20", "", "");
        ClipLandmarks masked = CorrectedLandmarks.ofTheAthlete(CLIP, List.of(span));
        for (int f = 0; f < CLIP.frameCount(); f++) {
            boolean inside = f >= 10 && f <= 20;
            assertEquals(
                    !inside && CLIP.poses().at(f).isPresent(),
                    masked.poses().at(f).isPresent(),
                    "frame " + f);
        }
        Correction all =
                new Correction(7, "", Field.NOT_THE_ATHLETE, "", "", 0, CLIP.frameCount() - 1, true, "all", "", "");
        RefusedCorrectionException refused = assertThrows(
                RefusedCorrectionException.class, () -> CorrectedLandmarks.ofTheAthlete(CLIP, List.of(all)));
        assertTrue(refused.getMessage().contains("reject the clip instead"));
    }

    @Test
    void theWordsOfTheFileAreThoseOfTheTables() {
        List<String> kinds = new ArrayList<>(labels(ContactKind.values()));
        kinds.remove(ContactKind.DRILL.label());
        assertEquals(kinds, Correction.KINDS);
        assertEquals(labels(Foot.values()), Correction.FEET);
    }

    private static List<String> labels(Label[] values) {
        return Arrays.stream(values).map(Label::label).toList();
    }
}
