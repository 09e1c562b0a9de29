package org.boardtopit.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AthleteJoinTest {

    /** {@code folder id bib name born}, each - when it is not there. */
    private static Entrant entrant(String words) {
        String[] w = words.trim().split(" +");
        String[] cells = Arrays.stream(w)
                .map(c -> c.equals("-") ? "" : c.replace('_', ' '))
                .toArray(String[]::new);
        int day = Integer.parseInt(cells[0]);
        return new Entrant(
                Path.of("c" + day),
                "Meeting " + day,
                LocalDate.of(2026, 5, day),
                cells[1],
                cells[2],
                cells[3],
                cells[3],
                cells[4].isEmpty() ? null : Integer.valueOf(cells[4]),
                List.of(),
                List.of());
    }

    /** Labels, by what they were joined and how often they appear. */
    private static List<String> joined(boolean bibsStay, String... entrants) {
        return told(new AthleteJoin(bibsStay), entrants);
    }

    private static List<String> told(AthleteJoin join, String... entrants) {
        return join.join(Arrays.stream(entrants).map(AthleteJoinTest::entrant).toList()).stream()
                .map(a -> a.label() + " " + a.joinedBy().label() + " "
                        + a.appearances().size())
                .toList();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // an id joins whatever name and bib say
                "1 k7 214 Vask 2001 | 2 k7 99 Corin_Vask - | Corin Vask id 2",
                // a name joins, surer with the year
                "1 - 214 Vask 2001 | 2 - 99 Vask 2001 | Vask name_and_born 2",
                "1 - 214 Vask 2001 | 2 - 99 Vask - | Vask name 2",
                "1 - 214 Vask - | 2 k7 99 Vask - | Vask name 2",
                // two years, two ids: two athletes
                "1 - 214 Vask 2001 | 2 - 99 Vask 2008 | Vask (2001) nothing 1, Vask (2008) nothing 1",
                "1 k7 214 Vask - | 2 k8 99 Vask - | Vask (2026-05-01) nothing 1, Vask (2026-05-02) nothing 1",
                // two of the name in one competition
                "1 - 214 Vask - | 1 - 99 Vask - | Vask (2026-05-01) #2 nothing 1, Vask (2026-05-01) nothing 1",
                // bibs join nothing
                "1 - 214 - - | 2 - 214 - - | bib 214 (2026-05-01) nothing 1, bib 214 (2026-05-02) nothing 1",
                "1 - 214 Vask - | 2 - 214 Yolland - | Vask nothing 1, Yolland nothing 1"
            })
    void joinsByWhatIsCertainOnly(String first, String second, String expected) {
        List<String> joined = new ArrayList<>(joined(false, first, second));
        Collections.sort(joined);
        assertEquals(expected, String.join(", ", joined));
    }

    @Test
    void aYearTellsTwoOfTheSameNameApartOverSeveralCompetitions() {
        assertEquals(
                List.of("Vask (2001) name_and_born 2", "Vask (2008) name_and_born 2", "Vask (2026-05-03) nothing 1"),
                joined(
                        false,
                        "1 - 1 Vask 2001",
                        "1 - 2 Vask 2008",
                        "2 - 7 Vask 2008",
                        "2 - 8 Vask 2001",
                        "3 - 9 Vask -"));
    }

    @Test
    void bibsJoinTheNamelessWhenTheUserSaysThatTheyStay() {
        assertEquals(List.of("Vask bib 3"), joined(true, "1 - 214 - -", "2 - 214 - -", "3 - 214 Vask -"));
        assertEquals(
                List.of("Vask nothing 1", "Yolland nothing 1", "bib 214 nothing 1"),
                joined(true, "1 - 214 Vask -", "2 - 214 Yolland -", "3 - 214 - -"));
    }

    @Test
    void whatIsKeptApartIsTold() {
        AthleteJoin join = new AthleteJoin(false);
        told(join, "1 - 214 Vask 2001", "2 - 99 Vask 2008", "3 - 5 VASK -", "3 - 6 - -");
        assertEquals(3, join.notices().size(), join.notices().toString());
        assertTrue(
                join.notices().get(0).contains("there is more than one Vask"),
                join.notices().get(0));
        assertTrue(
                join.notices().get(1).contains("VASK and Vask are written differently"),
                join.notices().get(1));
        assertTrue(join.notices().get(2).contains("--bibs-stay"), join.notices().get(2));
    }

    @Test
    void theOrderOfTheFoldersDoesNotMatter() {
        List<String> all = List.of(
                "1 k7 1 Vask 2001",
                "1 - 2 Yolland -",
                "2 - 7 Vask -",
                "2 - 8 Yolland 2003",
                "3 k7 9 C.Vask -",
                "3 - 4 - -",
                "4 - 4 - -");
        List<String> first = joined(true, all.toArray(String[]::new));
        for (int seed = 0; seed < 200; seed++) {
            List<String> shuffled = new ArrayList<>(all);
            Collections.shuffle(shuffled, new Random(seed));
            assertEquals(first, joined(true, shuffled.toArray(String[]::new)), "seed " + seed);
        }
    }
}
