package org.boardtopit.season;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

/**
 * One athlete of one folder of results, before anything is known of other folders.
 *
 * @param id empty when there is none
 * @param bib likewise
 * @param name as people write it; empty when there is none, or when it is none that means something in another folder
 * @param shown what the folder calls the athlete, for messages
 * @param born year of birth; null when unknown
 */
public record Entrant(
        Path folder,
        String competition,
        LocalDate date,
        String id,
        String bib,
        String name,
        String shown,
        Integer born,
        List<MeasuredAttempt> attempts,
        List<Remark> remarks) {

    /**
     * What an observation said of an attempt.
     *
     * @param finding in English
     * @param heading the same in the language of the competition
     */
    public record Remark(String clip, String phase, String topic, String kind, String finding, String heading) {}

    public Entrant {
        Objects.requireNonNull(date, "date");
        attempts = List.copyOf(attempts);
        remarks = List.copyOf(remarks);
    }

    /** Two folders may hold parts of one competition. */
    public boolean isOfTheCompetitionOf(Entrant other) {
        return competition.equals(other.competition) && date.equals(other.date);
    }

    /** For messages, such as: Corin Vask (bib 214) of Open Meeting, 2026-06-14. */
    public String inWords() {
        String who = shown.isEmpty() ? "bib " + bib : bib.isEmpty() ? shown : shown + " (bib " + bib + ")";
        return who + " of " + (competition.isEmpty() ? "" : competition + ", ") + date;
    }

    Entrant with(List<MeasuredAttempt> otherAttempts, List<Remark> otherRemarks) {
        return new Entrant(folder, competition, date, id, bib, name, shown, born, otherAttempts, otherRemarks);
    }
}
