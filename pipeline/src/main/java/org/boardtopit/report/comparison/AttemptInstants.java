package org.boardtopit.report.comparison;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;

/**
 * When the contacts of one attempt begin and end, by what they are, so that those of another attempt can be laid beside them.
 *
 * @param seconds in time order, from the clip's first frame; what was not seen is not in it
 * @param firstS when the athlete is first seen, in the same seconds
 * @param lastS when last
 */
public record AttemptInstants(Map<KeyInstant, Double> seconds, double firstS, double lastS) {

    public AttemptInstants {
        if (!(lastS > firstS)) {
            throw new IllegalArgumentException("lastS must be after firstS, was " + firstS + " >= " + lastS);
        }
        seconds = Collections.unmodifiableMap(new LinkedHashMap<>(seconds));
        double last = Double.NEGATIVE_INFINITY;
        for (Map.Entry<KeyInstant, Double> entry : seconds.entrySet()) {
            if (!(entry.getValue() >= last)) {
                throw new IllegalArgumentException("instants must be in time order, was " + seconds);
            }
            last = entry.getValue();
        }
    }

    /** Of contacts in time order. */
    public static AttemptInstants of(List<Contact> contacts, double firstS, double lastS) {
        List<Map.Entry<KeyInstant, Double>> all = new ArrayList<>();
        for (int i = 0; i < contacts.size(); i++) {
            Contact contact = contacts.get(i);
            int number = number(contacts, i);
            add(all, new KeyInstant(contact.kind(), number, true), contact.touchdownS());
            add(all, new KeyInstant(contact.kind(), number, false), contact.toeOffS());
        }
        all.sort(Map.Entry.comparingByValue());
        Map<KeyInstant, Double> seconds = new LinkedHashMap<>();
        all.forEach(entry -> seconds.put(entry.getKey(), entry.getValue()));
        return new AttemptInstants(seconds, firstS, lastS);
    }

    private static void add(List<Map.Entry<KeyInstant, Double>> all, KeyInstant instant, double atS) {
        if (Double.isFinite(atS)) {
            all.add(Map.entry(instant, atS));
        }
    }

    private static int number(List<Contact> contacts, int i) {
        ContactKind kind = contacts.get(i).kind();
        int before = (int)
                contacts.subList(0, i).stream().filter(c -> c.kind() == kind).count();
        int all = (int) contacts.stream().filter(c -> c.kind() == kind).count();
        return switch (kind) {
            case APPROACH -> all - before;
            default -> before;
        };
    }

    public Optional<Double> at(KeyInstant instant) {
        return Optional.ofNullable(seconds.get(instant));
    }
}
