package org.boardtopit.observations;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.Label;

/** Which guides hold for an athlete. */
public enum AthleteLevel implements Label {
    SENIOR("senior"),
    JUNIOR("junior"),
    MASTERS("masters"),
    /** Neither level nor age is known: the widest guide of all levels holds. */
    NOT_STATED("not_stated");

    /** In the year in which an athlete turns 19 the U20 category ends (World Athletics, from memory, sure). */
    private static final int LAST_JUNIOR_AGE = 19;
    /** On the 35th birthday the masters categories begin (World Masters Athletics, from memory, sure); by year here. */
    private static final int FIRST_MASTERS_AGE = 35;

    private static final Pattern SENIOR_WORDS = Pattern.compile("seniors?|open|elite|u23");
    private static final Pattern JUNIOR_WORDS = Pattern.compile("juniors?|youth|u ?(1[0-9]|20)|under ?(1[0-9]|20)");
    private static final Pattern MASTERS_WORDS =
            Pattern.compile("masters?|veterans?|[mwf] ?(3[5-9]|[4-9][05]|1[01][05])");

    private final String label;

    AthleteLevel(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }

    /**
     * From the sheet's word for the level, else from the year of birth and the day of the competition. There is no guess: who is
     * known by neither is {@link #NOT_STATED}.
     *
     * @param day of the competition
     */
    public static AthleteLevel of(Athlete athlete, Optional<LocalDate> day) {
        String word = athlete.level().strip().toLowerCase(Locale.ROOT);
        if (SENIOR_WORDS.matcher(word).matches()) {
            return SENIOR;
        }
        if (JUNIOR_WORDS.matcher(word).matches()) {
            return JUNIOR;
        }
        if (MASTERS_WORDS.matcher(word).matches()) {
            return MASTERS;
        }
        if (day.isEmpty() || athlete.bornYear().isEmpty()) {
            return NOT_STATED;
        }
        return ofAge(day.get().getYear() - athlete.bornYear().getAsInt());
    }

    private static AthleteLevel ofAge(int age) {
        if (age < 0) {
            return NOT_STATED;
        }
        return age <= LAST_JUNIOR_AGE ? JUNIOR : age >= FIRST_MASTERS_AGE ? MASTERS : SENIOR;
    }
}
