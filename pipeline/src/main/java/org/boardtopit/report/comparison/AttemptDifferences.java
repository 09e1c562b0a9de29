package org.boardtopit.report.comparison;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.report.Difference;
import org.boardtopit.report.tables.DifferenceRow;
import org.boardtopit.report.tables.IntervalRow;

/**
 * The numbers of two attempts that differ by more than is uncertain.
 *
 * <p>Compared is what both attempts have with an interval: numbers of the whole attempt, of phases of one name, and of contacts of one
 * kind. Left out: contacts of the approach, whose numbers in the tables do not belong together, and when something is (touchdown_s
 * and toe_off_s count from the beginning of each clip).
 *
 * @param rows in the order of the first attempt's numbers
 * @param compared how many numbers both have
 */
public record AttemptDifferences(List<DifferenceRow> rows, int compared) {
    private static final Set<String> CLOCK = Set.of("touchdown_s", "toe_off_s");
    private static final String CONTACT = "contact";

    public AttemptDifferences {
        rows = List.copyOf(rows);
    }

    /** What belongs together: a part is what it is called in both, not its number in one clip. */
    private record Place(String of, String part, String measure) {}

    /** Of two measured attempts. */
    public static AttemptDifferences of(ComparedAttempt a, ComparedAttempt b) {
        return of(a.intervals(), a.contacts(), b.intervals(), b.contacts());
    }

    static AttemptDifferences of(
            List<IntervalRow> a, List<Contact> contactsOfA, List<IntervalRow> b, List<Contact> contactsOfB) {
        Map<Place, IntervalRow> ofB = new HashMap<>();
        b.forEach(row -> place(row, contactsOfB).ifPresent(place -> ofB.put(place, row)));
        List<DifferenceRow> rows = new ArrayList<>();
        int compared = 0;
        for (IntervalRow row : a) {
            Optional<Place> place = place(row, contactsOfA);
            IntervalRow other = place.map(ofB::get).orElse(null);
            if (other != null) {
                compared++;
                Difference difference = Difference.of(other, row);
                if (difference.isBeyondUncertainty()) {
                    rows.add(row(place.get(), row, other, difference));
                }
            }
        }
        return new AttemptDifferences(rows, compared);
    }

    private static Optional<Place> place(IntervalRow row, List<Contact> contacts) {
        if (CLOCK.contains(row.measure())) {
            return Optional.empty();
        }
        if (!row.of().equals(CONTACT)) {
            return Optional.of(new Place(row.of(), row.part(), row.measure()));
        }
        int i = Integer.parseInt(row.part());
        ContactKind kind = contacts.get(i).kind();
        if (kind == ContactKind.APPROACH) {
            return Optional.empty();
        }
        long before =
                contacts.subList(0, i).stream().filter(c -> c.kind() == kind).count();
        String part = kind == ContactKind.DRILL ? kind.label() + "_" + before : kind.label();
        return Optional.of(new Place(CONTACT, part, row.measure()));
    }

    private static DifferenceRow row(Place place, IntervalRow a, IntervalRow b, Difference difference) {
        return new DifferenceRow(
                a.clip(),
                b.clip(),
                place.of(),
                place.part(),
                place.measure(),
                a.value(),
                b.value(),
                difference.value(),
                difference.pm90());
    }
}
