package org.boardtopit.phases;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.boardtopit.clips.Pattern;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Contacts every half second from second 1 on, the athlete followed from 0.2 to 9 s. */
class PhaseTimelineTest {

    private static Contact contact(ContactKind kind, double touchdownS) {
        double end = (Double.isNaN(touchdownS) ? 1 : touchdownS) + 0.2;
        return new Contact(kind, Foot.LEFT, touchdownS, 0.005, end, 0.005, 0, 0.02, 1, false);
    }

    private static ContactTimeline timeline(String pattern, List<Contact> contacts) {
        return new ContactTimeline(contacts, 1, List.of(), Optional.of(Pattern.parse(pattern)));
    }

    private static List<Contact> drill(int count) {
        List<Contact> contacts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            contacts.add(contact(ContactKind.DRILL, 1 + 0.5 * i));
        }
        return contacts;
    }

    private static String labels(PhaseTimeline phases) {
        return phases.phases().stream().map(Phase::label).collect(Collectors.joining(" "));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "hop-hop-hop, 4, approach hop_1 hop_2 hop_3 landing",
        "step-step-jump, 4, approach step_1 step_2 jump landing",
        "hop-hop-step-hop, 5, approach hop_1 hop_2 step hop_3 landing",
        "R R L L, 4, approach hop_1 step hop_2 landing",
        "R R L both, 4, approach hop step jump landing",
        "skip, 6, approach skip_1 skip_2 skip_3 skip_4 skip_5 landing",
        "hop, 2, approach hop landing",
        "skip, 0, ''"
    })
    void phasesOfADrillAreNamedAfterItsPattern(String pattern, int contacts, String expected) {
        PhaseTimeline phases = PhaseTimeline.of(timeline(pattern, drill(contacts)), 0.2, 9);
        assertEquals(expected, labels(phases));
        for (int i = 1; i < phases.phases().size(); i++) {
            assertEquals(
                    phases.phases().get(i - 1).endS(), phases.phases().get(i).startS());
        }
    }

    @Test
    void aStandingStartBeginsAtTheFirstSight() {
        List<Contact> contacts = drill(3);
        contacts.set(0, contact(ContactKind.DRILL, Double.NaN));
        PhaseTimeline phases = PhaseTimeline.of(timeline("hop-hop", contacts), 0.2, 9);
        assertEquals("hop_1 hop_2 landing", labels(phases));
        assertEquals(0.2, phases.phases().get(0).startS());
        assertEquals(1.5, phases.phases().get(0).endS());
    }

    @Test
    void hopStepJumpInWordsHasThePhasesOfATripleJump() {
        ContactKind[] kinds = {ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT};
        List<Contact> contacts = new ArrayList<>();
        for (int i = 0; i < kinds.length; i++) {
            contacts.add(contact(kinds[i], 1 + 0.5 * i));
        }
        ContactTimeline timeline = new ContactTimeline(contacts, 1, List.of());
        assertEquals(PhaseTimeline.of(timeline, 0.2, 9), PhaseTimeline.of(timeline("hop-step-jump", contacts), 0.2, 9));
        assertEquals("approach hop step jump landing", labels(PhaseTimeline.of(timeline, 0.2, 9)));
        assertTrue(PhaseTimeline.of(timeline, 0.2, 9)
                        .of(PhaseName.STEP)
                        .orElseThrow()
                        .number()
                == 0);
    }
}
