package org.boardtopit.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.boardtopit.clips.Athlete;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.report.tables.AthleteMeasure;
import org.boardtopit.report.tables.AthleteRow;
import org.boardtopit.report.tables.AttemptRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AthleteTableTest {
    private static final Athlete VASK =
            new Athlete("214", "Corin Vask", Optional.empty(), Double.NaN, OptionalInt.of(2001), "", "", "club-17");

    private static AttemptRow row(String clip, String bib, String athlete) {
        return new AttemptRow(
                clip,
                "Meeting",
                "",
                bib,
                athlete,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                ScaleSource.NONE,
                null,
                null,
                Quality.GOOD,
                List.of(),
                Map.of());
    }

    private static MeasuredAttempt attempt(String clip, double bestM, double stepPct) {
        return new MeasuredAttempt(
                clip, bestM, 0.4, false, Map.of(AthleteMeasure.STEP_SHARE, new Estimate(stepPct, 0.2)));
    }

    private static List<AthleteRow> rows(boolean showsBorn, Object... rowsAndAttempts) {
        AthleteTable table =
                new AthleteTable(new AthleteRegister(Optional.of(LocalDate.of(2026, 6, 14)), List.of(VASK), showsBorn));
        for (int i = 0; i < rowsAndAttempts.length; i += 2) {
            table.add((AttemptRow) rowsAndAttempts[i], (MeasuredAttempt) rowsAndAttempts[i + 1]);
        }
        return table.rows();
    }

    /** By hand: mean of 28, 29, 31.5 is 29.5; squares 2.25 + 0.25 + 4 = 6.5; the root of 6.5 / 2 is 1.8028. */
    @Test
    void hasMeanAndStandardDeviationOfTheAttemptsAndTheBest() {
        List<AthleteRow> rows = rows(
                true,
                row("a.mp4", "214", "Corin Vask"),
                attempt("a.mp4", 14.88, 28),
                row("b.mp4", "131", "Imre-Lise Halloran"),
                attempt("b.mp4", Double.NaN, 30),
                row("c.mp4", "214", "Corin Vask"),
                attempt("c.mp4", 15.02, 29),
                row("d.mp4", "214", ""),
                attempt("d.mp4", Double.NaN, 31.5));
        assertEquals(
                List.of("Corin Vask", "Imre-Lise Halloran"),
                rows.stream().map(AthleteRow::athlete).toList());
        AthleteRow vask = rows.get(0);
        assertEquals(3, vask.attempts());
        assertEquals(15.02, vask.bestM());
        assertEquals("c.mp4", vask.bestClip());
        assertEquals("club-17", vask.id());
        assertEquals(2001, vask.born());
        assertEquals(LocalDate.of(2026, 6, 14), vask.date());
        AthleteRow.Spread step = vask.spreads().get(AthleteMeasure.STEP_SHARE);
        assertEquals(29.5, step.mean(), 1e-12);
        assertEquals(1.8028, step.sd(), 1e-4);
        assertNull(step.change());
        AthleteRow halloran = rows.get(1);
        assertNull(halloran.bestM());
        assertEquals(
                Double.NaN, halloran.spreads().get(AthleteMeasure.STEP_SHARE).sd(), "one attempt has no scatter");
    }

    @ParameterizedTest
    @CsvSource({"'', ''", ","})
    void attemptsOfNobodyAreLeftOut(String bib, String athlete) {
        assertEquals(List.of(), rows(true, row("a.mp4", bib, athlete), attempt("a.mp4", 14, 28)));
    }

    @Test
    void pseudonymsHaveNoYearOfBirth() {
        assertNull(rows(false, row("a.mp4", "214", "athlete-x"), attempt("a.mp4", 14, 28))
                .get(0)
                .born());
    }
}
