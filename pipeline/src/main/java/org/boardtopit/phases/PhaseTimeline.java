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
        return contacts.isDrill()
                ? ofDrill(contacts, contacts.pattern().orElseThrow(), firstSightS, lastSightS)
                : ofTripleJump(contacts, firstSightS, lastSightS);
    }

    private static PhaseTimeline ofTripleJump(ContactTimeline contacts, double firstSightS, double lastSightS) {
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

    private static PhaseTimeline ofDrill(
            ContactTimeline contacts, Pattern pattern, double firstSightS, double lastSightS) {
        List<Contact> drill = contacts.contacts().stream()
                .filter(c -> c.kind() != ContactKind.APPROACH)
                .toList();
        if (drill.isEmpty()) {
            return new PhaseTimeline(List.of());
        }
        List<Phase> phases = new ArrayList<>();
        if (drill.get(0).touchdownS() > firstSightS) {
            phases.add(new Phase(PhaseName.APPROACH, firstSightS, drill.get(0).touchdownS()));
        }
        List<Flight> flights =
                pattern.isSkip() ? Collections.nCopies(drill.size() - 1, Flight.SKIP) : pattern.flights();
        for (int i = 0; i + 1 < drill.size(); i++) {
            double startS = startS(drill.get(i), firstSightS);
            phases.add(new Phase(
                    name(flights.get(i)),
                    number(flights, i),
                    startS,
                    drill.get(i + 1).touchdownS()));
        }
        double last = drill.get(drill.size() - 1).touchdownS();
        if (last <= lastSightS) {
            phases.add(new Phase(PhaseName.LANDING, last, lastSightS));
        }
        return new PhaseTimeline(phases);
    }

    /** Which of its name a flight is; 0 for the only one. */
    private static int number(List<Flight> flights, int i) {
        Flight flight = flights.get(i);
        boolean several = flight == Flight.SKIP || Collections.frequency(flights, flight) > 1;
        return several ? Collections.frequency(flights.subList(0, i + 1), flight) : 0;
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
