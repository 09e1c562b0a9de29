package org.boardtopit.report.page;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.report.tables.IntervalRow;

/** Finds the intervals of one clip by what they belong to. */
final class Intervals {
    private final Map<String, IntervalRow> rows = new HashMap<>();

    Intervals(List<IntervalRow> ofOneClip) {
        for (IntervalRow row : ofOneClip) {
            rows.put(key(row.of(), row.part(), row.measure()), row);
        }
    }

    Optional<IntervalRow> ofAttempt(String measure) {
        return find("attempt", "", measure);
    }

    Optional<IntervalRow> ofPhase(String phase, String measure) {
        return find("phase", phase, measure);
    }

    Optional<IntervalRow> ofContact(int contact, String measure) {
        return find("contact", Integer.toString(contact), measure);
    }

    private Optional<IntervalRow> find(String of, String part, String measure) {
        return Optional.ofNullable(rows.get(key(of, part, measure)));
    }

    private static String key(String of, String part, String measure) {
        return of + '\n' + part + '\n' + measure;
    }
}
