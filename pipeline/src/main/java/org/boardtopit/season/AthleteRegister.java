package org.boardtopit.season;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.Safeguards;

/**
 * What the sheets of a competition tell of its day and its athletes beyond the attempts: by what a season knows them again.
 *
 * @param showsBorn false where athletes have pseudonyms, of which a year of birth would tell too much
 */
public record AthleteRegister(Optional<LocalDate> date, List<Athlete> athletes, boolean showsBorn) {
    /** Of a bare folder. */
    public static final AthleteRegister NONE = new AthleteRegister(Optional.empty(), List.of(), true);

    public AthleteRegister {
        athletes = List.copyOf(athletes);
    }

    public static AthleteRegister of(MeetSheet meet) {
        return new AthleteRegister(
                meet.date(), meet.athletes(), meet.safeguards().names() == Safeguards.Names.SHOW);
    }

    /** The athlete of an attempt, found as for its clip: by bib, or by name where the row has no bib. */
    Optional<Athlete> find(String bib, String name) {
        return athletes.stream()
                .filter(a -> bib.isEmpty()
                        ? !name.isEmpty() && a.name().equals(name)
                        : a.bib().equals(bib))
                .findFirst();
    }
}
