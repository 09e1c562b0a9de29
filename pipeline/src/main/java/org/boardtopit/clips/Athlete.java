package org.boardtopit.clips;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * What the competition knows of an athlete.
 *
 * @param bib number on the shirt, as text: 087 keeps its zero; may be empty when there is a name
 * @param name or a pseudonym; may be empty when there is a bib
 * @param statureM standing height; NaN when unknown
 * @param bornYear year of birth
 * @param level such as senior, junior or masters; free text
 * @param team whose members are compared with each other; empty when not given
 * @param id a word that stays with the athlete from one competition to the next; may be empty
 */
public record Athlete(
        String bib,
        String name,
        Optional<Sex> sex,
        double statureM,
        OptionalInt bornYear,
        String level,
        String team,
        String id) {
    public static final double LEAST_STATURE_M = 1.00;
    public static final double MOST_STATURE_M = 2.40;

    /** Of no team and without a word that stays. */
    public Athlete(String bib, String name, Optional<Sex> sex, double statureM, OptionalInt bornYear, String level) {
        this(bib, name, sex, statureM, bornYear, level, "", "");
    }

    /** Which body segment table applies. */
    public enum Sex {
        MALE,
        FEMALE
    }

    public Athlete {
        if (bib.isBlank() && name.isBlank()) {
            throw new IllegalArgumentException("an athlete needs a bib or a name");
        }
        if (statureM < LEAST_STATURE_M || statureM > MOST_STATURE_M) {
            throw new IllegalArgumentException(
                    "statureM must be from " + LEAST_STATURE_M + " to " + MOST_STATURE_M + ", was " + statureM);
        }
    }
}
