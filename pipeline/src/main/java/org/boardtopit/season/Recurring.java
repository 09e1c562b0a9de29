package org.boardtopit.season;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * An observation that came back: on the same topic in the same phase in two competitions or more.
 *
 * @param strength false for what stands outside its guide
 * @param finding in the words of the latest competition that has it
 * @param heading the same in the language of that competition
 * @param seen competitions with the observation
 * @param competitions of the athlete with a measured attempt
 * @param attemptsSeen attempts with the observation
 * @param attempts of the athlete that were measured
 */
public record Recurring(
        String phase,
        String topic,
        boolean strength,
        String finding,
        String heading,
        int seen,
        int competitions,
        int attemptsSeen,
        int attempts,
        LocalDate first,
        LocalDate last) {

    private static final int LEAST_COMPETITIONS = 2;
    private static final String STRENGTH = "strength";

    private record Key(boolean strength, String phase, String topic) {}

    private static final class Found {
        private final Set<Integer> competitions = new HashSet<>();
        private final Set<String> attempts = new HashSet<>();
        private LocalDate first;
        private LocalDate last;
        private String finding;
        private String heading;
    }

    /** Of one athlete; those seen in most competitions first, and what stands outside its guide before the strengths. */
    public static List<Recurring> of(SeasonAthlete athlete) {
        List<List<Entrant>> competitions = athlete.competitions();
        Map<Key, Found> all = new LinkedHashMap<>();
        for (int i = 0; i < competitions.size(); i++) {
            for (Entrant entrant : competitions.get(i)) {
                for (Entrant.Remark remark : entrant.remarks()) {
                    Key key = new Key(remark.kind().equals(STRENGTH), remark.phase(), remark.topic());
                    Found found = all.computeIfAbsent(key, unused -> new Found());
                    found.competitions.add(i);
                    found.attempts.add(i + " " + entrant.folder() + " " + remark.clip());
                    found.first = found.first == null ? entrant.date() : found.first;
                    found.last = entrant.date();
                    found.finding = remark.finding();
                    found.heading = remark.heading();
                }
            }
        }
        int measured = (int) competitions.stream()
                .filter(c -> !SeasonAthlete.attempts(c).isEmpty())
                .count();
        int attempts = SeasonAthlete.attempts(athlete.appearances()).size();
        List<Recurring> recurring = new ArrayList<>();
        all.forEach((key, found) -> {
            if (found.competitions.size() >= LEAST_COMPETITIONS) {
                recurring.add(new Recurring(
                        key.phase(),
                        key.topic(),
                        key.strength(),
                        found.finding,
                        found.heading,
                        found.competitions.size(),
                        measured,
                        found.attempts.size(),
                        attempts,
                        found.first,
                        found.last));
            }
        });
        recurring.sort(Comparator.comparing(Recurring::strength)
                .thenComparing(Comparator.comparingInt(Recurring::seen).reversed())
                .thenComparing(Comparator.comparingInt(Recurring::attemptsSeen).reversed()));
        return List.copyOf(recurring);
    }
}
