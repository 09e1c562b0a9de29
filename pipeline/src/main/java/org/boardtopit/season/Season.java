package org.boardtopit.season;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boardtopit.clips.InputException;
import org.boardtopit.report.tables.FinishedFolder;

/**
 * Several competitions, joined by athlete.
 *
 * @param notices what is worth knowing about who was joined and what was left out
 */
public record Season(List<SeasonAthlete> athletes, List<String> notices) {
    public Season {
        athletes = List.copyOf(athletes);
        notices = List.copyOf(notices);
    }

    /**
     * Reads and joins.
     *
     * @param bibsStay true when a bib belongs to one athlete for the whole season
     * @throws InputException when a folder is there twice, or its tables cannot be read
     */
    public static Season of(List<FinishedFolder> folders, boolean bibsStay) throws InputException, IOException {
        Set<Path> seen = new HashSet<>();
        List<Entrant> entrants = new ArrayList<>();
        List<String> notices = new ArrayList<>();
        for (FinishedFolder folder : folders) {
            if (!seen.add(folder.folder().toRealPath())) {
                throw new InputException(folder.folder(), "the folder is given twice");
            }
            List<Entrant> read = new FolderReader(folder).read();
            if (folder.isTidied()) {
                notices.add(
                        folder.folder().getFileName() + " was tidied: its athletes are numbers, joined with nothing");
            }
            if (read.isEmpty()) {
                notices.add(folder.folder().getFileName() + " has no attempt of a named athlete and adds nothing");
            }
            entrants.addAll(read);
        }
        List<Entrant> once = once(entrants, notices);
        AthleteJoin join = new AthleteJoin(bibsStay);
        List<SeasonAthlete> athletes = join.join(once);
        notices.addAll(join.notices());
        return new Season(athletes, notices);
    }

    /**
     * Clips that two folders have: a competition that was measured twice must not count twice. They are the same when the
     * competition, its day and the name of the file are; when only the numbers are, which a copied clip makes, it is told.
     */
    private static List<Entrant> once(List<Entrant> entrants, List<String> notices) {
        Set<String> clips = new HashSet<>();
        Map<String, String> numbers = new HashMap<>();
        List<Entrant> kept = new ArrayList<>();
        for (Entrant entrant : entrants) {
            List<MeasuredAttempt> attempts = new ArrayList<>();
            Set<String> dropped = new HashSet<>();
            for (MeasuredAttempt attempt : entrant.attempts()) {
                String clip = entrant.date() + " " + entrant.competition() + " " + attempt.clip();
                if (clips.add(clip)) {
                    attempts.add(attempt);
                    tellOfEqualNumbers(entrant, attempt, numbers, notices);
                } else {
                    dropped.add(attempt.clip());
                }
            }
            if (!dropped.isEmpty()) {
                notices.add("counted once, though it is in another folder too: " + String.join(", ", dropped) + " in "
                        + entrant.folder().getFileName());
            }
            kept.add(entrant.with(
                    attempts,
                    entrant.remarks().stream()
                            .filter(r -> !dropped.contains(r.clip()))
                            .toList()));
        }
        return kept.stream().filter(e -> !e.attempts().isEmpty()).toList();
    }

    private static void tellOfEqualNumbers(
            Entrant entrant, MeasuredAttempt attempt, Map<String, String> numbers, List<String> notices) {
        if (attempt.values().size() < 3) {
            return; // too little to be sure of anything
        }
        String here = attempt.clip() + " of " + entrant.competition() + ", " + entrant.date();
        String there = numbers.putIfAbsent(
                attempt.values().entrySet().stream()
                        .sorted(Map.Entry.comparingByKey())
                        .toList()
                        .toString(),
                here);
        if (there != null) {
            notices.add(here + " has the numbers of " + there + ": probably one clip in two competitions; both count");
        }
    }
}
