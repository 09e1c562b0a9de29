package org.boardtopit.phases;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;

/**
 * The phases in time order, each beginning where the one before ends: approach to the board touchdown, hop to the
 * hop-landing touchdown, step to the step-landing touchdown, jump to the pit touchdown, landing to the last sight.
 *
 * <p>Phases whose contacts were not found are absent; without a pit contact the jump is absent too.
 */
public record PhaseTimeline(List<Phase> phases) {

    public PhaseTimeline {
        phases = List.copyOf(phases);
    }

    /**
     * The phases between the contacts.
     *
     * @param firstSightS when the athlete is first followed
     * @param lastSightS when last
     */
    public static PhaseTimeline of(ContactTimeline contacts, double firstSightS, double lastSightS) {
        List<Phase> phases = new ArrayList<>();
        ContactKind[] starts = {ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT};
        PhaseName[] names = {PhaseName.HOP, PhaseName.STEP, PhaseName.JUMP, PhaseName.LANDING};
        Optional<Contact> board = contacts.of(ContactKind.BOARD);
        if (board.isPresent() && board.get().touchdownS() > firstSightS) {
            phases.add(new Phase(PhaseName.APPROACH, firstSightS, board.get().touchdownS()));
        }
        for (int i = 0; i < starts.length; i++) {
            Optional<Contact> start = contacts.of(starts[i]);
            Optional<Double> end = i + 1 < starts.length
                    ? contacts.of(starts[i + 1]).map(Contact::touchdownS)
                    : Optional.of(lastSightS);
            if (start.isPresent() && end.isPresent() && end.get() >= start.get().touchdownS()) {
                phases.add(new Phase(names[i], start.get().touchdownS(), end.get()));
            }
        }
        return new PhaseTimeline(phases);
    }

    public Optional<Phase> of(PhaseName name) {
        return phases.stream().filter(p -> p.name() == name).findFirst();
    }
}
