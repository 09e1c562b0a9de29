package org.boardtopit.frontal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.ContactQuantity;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.measures.PhaseQuantity;
import org.boardtopit.measures.Reading;
import org.boardtopit.phases.PhaseName;

/**
 * What a clip from in front or behind tells of an attempt.
 *
 * @param clock its clock against that of the clip from the side
 * @param contacts one for each contact of the clip from the side, in its order
 * @param phases of the phases with a flight that is seen
 */
public record FrontalAttempt(
        ClockOffset clock, List<SeenContact> contacts, Map<PhaseName, Map<PhaseQuantity, Reading>> phases) {

    /**
     * One contact.
     *
     * @param own with the times of this clip's clock; empty where it lies outside the clip
     */
    public record SeenContact(Optional<Contact> own, Map<ContactQuantity, Reading> readings) {
        public SeenContact {
            readings = Map.copyOf(readings);
        }
    }

    public FrontalAttempt {
        contacts = List.copyOf(contacts);
        phases = Map.copyOf(phases);
    }

    /** The contacts that this clip shows, in its own time, without the angles that only the side shows. */
    public List<ContactMeasures> ownContacts() {
        List<ContactMeasures> own = new ArrayList<>();
        for (SeenContact seen : contacts) {
            seen.own().ifPresent(c -> own.add(new ContactMeasures(c, Map.of(), Map.of(), seen.readings())));
        }
        return own;
    }

    /** The measures of the attempt with these in addition; where another view has told the same, the surer one stays. */
    public AttemptMeasures addedTo(AttemptMeasures side) {
        List<ContactMeasures> withContacts = new ArrayList<>();
        for (int i = 0; i < side.contacts().size(); i++) {
            ContactMeasures c = side.contacts().get(i);
            Map<ContactQuantity, Reading> more = new EnumMap<>(ContactQuantity.class);
            more.putAll(c.more());
            if (i < contacts.size()) {
                contacts.get(i)
                        .readings()
                        .forEach((quantity, reading) -> more.merge(quantity, reading, FrontalAttempt::surer));
            }
            withContacts.add(new ContactMeasures(c.contact(), c.touchdown(), c.toeOff(), more));
        }
        List<PhaseMeasures> withPhases = new ArrayList<>();
        for (PhaseMeasures p : side.phases()) {
            Map<PhaseQuantity, Reading> more = new EnumMap<>(PhaseQuantity.class);
            more.putAll(p.more());
            phases.getOrDefault(p.phase().name(), Map.of())
                    .forEach((quantity, reading) -> more.merge(quantity, reading, FrontalAttempt::surer));
            withPhases.add(p.with(more));
        }
        return side.with(withContacts, withPhases);
    }

    private static Reading surer(Reading a, Reading b) {
        return b.sd() < a.sd() ? b : a;
    }
}
