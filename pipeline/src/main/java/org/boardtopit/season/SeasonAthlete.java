package org.boardtopit.season;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One athlete over all competitions.
 *
 * @param label what tables and page say; no other athlete of the season has it
 * @param joinedBy the least sure of what joins the competitions
 * @param appearances in the order of their days; not empty
 */
public record SeasonAthlete(String label, JoinedBy joinedBy, List<Entrant> appearances) {
    public SeasonAthlete {
        appearances = List.copyOf(appearances);
        if (appearances.isEmpty()) {
            throw new IllegalArgumentException(label + " appears nowhere");
        }
    }

    /** Appearances by competition, in the order of their days; folders that hold parts of one competition are together. */
    public List<List<Entrant>> competitions() {
        Map<String, List<Entrant>> byCompetition = new LinkedHashMap<>();
        for (Entrant entrant : appearances) {
            byCompetition
                    .computeIfAbsent(entrant.date() + " " + entrant.competition(), unused -> new ArrayList<>())
                    .add(entrant);
        }
        return List.copyOf(byCompetition.values());
    }

    /** All measured attempts of a competition, or of several. */
    public static List<MeasuredAttempt> attempts(List<Entrant> entrants) {
        return entrants.stream().flatMap(e -> e.attempts().stream()).toList();
    }
}
