package org.boardtopit.phases;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Pattern;
import org.boardtopit.clips.Pattern.Flight;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;

/**
 * The phases in time order, each beginning where the one before ends: approach to the board touchdown, hop to the
 * hop-landing touchdown, step to the step-landing touchdown, jump to the pit touchdown, landing to the last sight.
 *
 * <p>Of a drill: approach to the first contact of the pattern, a phase for each of its flights with the support before it, named
 * after the pattern, landing from the last contact on. A contact whose touchdown is not known, as the athlete stood there from
 * the first sight, begins at the first sight.
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
            if (start.isPresent() && end.isPresent()) {
                double startS = startS(start.get(), firstSightS);
                if (end.get() >= startS) {
                    phases.add(new Phase(names[i], startS, end.get()));
                }
            }
        }
        return new PhaseTimeline(phases);
    }

    /**
     * The phases of a drill.
     *
     * @param contacts the approach, then as many contacts as the pattern has; none when it was not found
     * @param firstSightS when the athlete is first followed
     * @param lastSightS when last
     */
    public static PhaseTimeline of(Pattern pattern, ContactTimeline contacts, double firstSightS, double lastSightS) {
        if (pattern.isTripleJump()) {
            return of(contacts, firstSightS, lastSightS);
        }
        List<Contact> drill = contacts.contacts().stream()
                .filter(c -> c.kind() != ContactKind.APPROACH)
                .toList();
        List<Phase> phases = new ArrayList<>();
        if (!drill.isEmpty() && drill.get(0).touchdownS() > firstSightS) {
            phases.add(new Phase(PhaseName.APPROACH, firstSightS, drill.get(0).touchdownS()));
        }
        List<Flight> flights =
                pattern.isSkip() ? Collections.nCopies(Math.max(0, drill.size() - 1), Flight.SKIP) : pattern.flights();
        for (int i = 0; i + 1 < drill.size(); i++) {
            Flight flight = flights.get(i);
            boolean several = pattern.isSkip() || Collections.frequency(flights, flight) > 1;
            int number = several ? Collections.frequency(flights.subList(0, i + 1), flight) : 0;
            double startS = startS(drill.get(i), firstSightS);
            phases.add(new Phase(name(flight), number, startS, drill.get(i + 1).touchdownS()));
        }
        if (!drill.isEmpty() && drill.get(drill.size() - 1).touchdownS() <= lastSightS) {
            phases.add(new Phase(PhaseName.LANDING, drill.get(drill.size() - 1).touchdownS(), lastSightS));
        }
        return new PhaseTimeline(phases);
    }

    private static double startS(Contact contact, double firstSightS) {
        return Double.isFinite(contact.touchdownS()) ? contact.touchdownS() : firstSightS;
    }

    private static PhaseName name(Flight flight) {
        return switch (flight) {
            case HOP -> PhaseName.HOP;
            case STEP -> PhaseName.STEP;
            case JUMP -> PhaseName.JUMP;
            case SKIP -> PhaseName.SKIP;
        };
    }

    public Optional<Phase> of(PhaseName name) {
        return phases.stream().filter(p -> p.name() == name).findFirst();
    }
}
