package org.boardtopit.report.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.report.tables.ObservationRow;

/**
 * What stands out in a series: observations that are the same in several attempts are one, and come first.
 *
 * <p>Order: in how many attempts it was seen, then its best place among the observations of an attempt, then how far out it was. That
 * what comes back is worth more training time than what happened once is our judgement, no source.
 */
final class FindingChoice {
    private static final int MOST = 3;

    private FindingChoice() {}

    /** In one attempt. */
    record Seen(Attempt attempt, ObservationRow row) {
        private double severity() {
            return row.severity() == null ? 0 : row.severity();
        }
    }

    /**
     * One finding.
     *
     * @param seen in the order of the attempts, at least once
     */
    record Found(List<Seen> seen) {
        Found {
            seen = List.copyOf(seen);
        }

        /** Where it was furthest out. */
        Seen plainest() {
            return seen.stream().max(Comparator.comparingDouble(Seen::severity)).orElseThrow();
        }

        private int rank() {
            return seen.stream().mapToInt(one -> one.row().rank()).min().orElseThrow();
        }
    }

    /** At most three of one kind. */
    static List<Found> first(Series series, Kind kind) {
        return all(series, kind).stream().limit(MOST).toList();
    }

    /** All of one kind. */
    static List<Found> all(Series series, Kind kind) {
        Map<String, List<Seen>> byFinding = new LinkedHashMap<>();
        for (Attempt attempt : series.attempts()) {
            for (ObservationRow row : attempt.observations()) {
                if (row.kind() == kind) {
                    byFinding
                            .computeIfAbsent(key(row), unused -> new ArrayList<>())
                            .add(new Seen(attempt, row));
                }
            }
        }
        return byFinding.values().stream()
                .map(Found::new)
                .sorted(Comparator.comparingInt((Found found) -> -found.seen().size())
                        .thenComparingInt(Found::rank)
                        .thenComparing(found -> found.plainest().severity(), Comparator.reverseOrder()))
                .toList();
    }

    private static String key(ObservationRow row) {
        return row.topic() + '\n' + row.phase() + '\n' + row.finding();
    }
}
