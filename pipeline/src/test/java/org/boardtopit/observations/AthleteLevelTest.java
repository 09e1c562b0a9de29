package org.boardtopit.observations;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import org.boardtopit.clips.Athlete;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Outside check: U20 holds to the end of the year in which one turns 19 (World Athletics rules, MEM-H); masters begin at 35
 * (World Masters Athletics rules, MEM-H).
 */
class AthleteLevelTest {
    private static final Optional<LocalDate> DAY = Optional.of(LocalDate.of(2026, 6, 14));

    private static AthleteLevel of(String word, Integer born, Optional<LocalDate> day) {
        OptionalInt year = born == null ? OptionalInt.empty() : OptionalInt.of(born);
        return AthleteLevel.of(new Athlete("1", "", Optional.empty(), Double.NaN, year, word), day);
    }

    @ParameterizedTest
    @CsvSource({"2007, JUNIOR", "2006, SENIOR", "1992, SENIOR", "1991, MASTERS", "1950, MASTERS", "2027, NOT_STATED"})
    void followsTheYearOfBirth(int born, AthleteLevel level) {
        assertEquals(level, of("", born, DAY));
    }

    @ParameterizedTest
    @CsvSource({
        "senior, SENIOR",
        "U23, SENIOR",
        "Junior, JUNIOR",
        "U18, JUNIOR",
        "under 16, JUNIOR",
        "masters, MASTERS",
        "M45, MASTERS",
        "W 50, MASTERS",
        "veteran, MASTERS",
        "beginner, NOT_STATED",
        "'', NOT_STATED"
    })
    void followsTheWordOfTheSheet(String word, AthleteLevel level) {
        assertEquals(level, of(word, null, DAY));
    }

    @Test
    void theWordCountsMoreThanTheYear() {
        assertEquals(AthleteLevel.SENIOR, of("senior", 1985, DAY));
    }

    @Test
    void withoutTheDayOfTheCompetitionAnAgeIsNotGuessed() {
        assertEquals(AthleteLevel.NOT_STATED, of("", 2007, Optional.empty()));
    }
}
