package org.boardtopit.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.report.page.FindingChoice.Found;
import org.boardtopit.report.page.SeriesView.ComparisonView;
import org.boardtopit.report.page.SeriesView.DifferenceView;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NumbersOnThePageTest {
    private static final Words ENGLISH = Words.of("page", Language.ENGLISH);
    private static final Optional<LocalDate> DAY = Optional.of(LocalDate.of(2026, 6, 14));

    /** The uncertainty keeps one digit, two where the first is small: as the GUM (JCGM 100:2008, 7.2.6) has it, from memory. */
    @ParameterizedTest
    @CsvSource({
        "37.2224, 0.304, 37.2 ± 0.3",
        "0.1030,  0.018, 0.10 ± 0.02",
        "0.1302,  0.0094, 0.13 ± 0.01",
        "155.2,   8.1,   155 ± 8",
        "151.4,   11,    151 ± 11",
        "9.3223,  0.0485, 9.32 ± 0.05",
        "-0.0024, 0.067, 0.00 ± 0.07",
        "0.12345, 0.0004, 0.123 ± 0.000",
    })
    void haveTheDigitsThatTheirUncertaintyLeaves(double value, double half, String text) {
        IntervalRow row = new IntervalRow("a", "attempt", "", "x", value, value - half, value + half, "");
        assertEquals(text, new Figures(ENGLISH).withPlusMinus(row).replace(Figures.NO_BREAK, ' '));
    }

    @Test
    void onlyWhatIsBeyondItsUncertaintyIsADifference() {
        PageRows rows = new DrawnMeet(21)
                .attempt("5", "", 1, 12.0, false)
                .attempt("5", "", 2, 12.6, false)
                .rows();
        List<IntervalRow> intervals = rows.intervals().stream()
                .map(row -> switch (row.clip() + " " + row.part() + " " + row.measure()) {
                    // 0.06 each: their difference is known to 0.085
                    case "5-1.mp4 hop distance_m" -> at(row, 4.60);
                    case "5-2.mp4 hop distance_m" -> at(row, 4.70);
                    case "5-1.mp4 step distance_m" -> at(row, 3.60);
                    case "5-2.mp4 step distance_m" -> at(row, 3.68);
                    default -> at(row, 1);
                })
                .toList();
        PageRows changed = new PageRows(
                rows.files(),
                rows.attempts(),
                rows.phases(),
                rows.contacts(),
                intervals,
                rows.observations(),
                rows.clips());
        ComparisonView view =
                new BestAgainstOthers(ENGLISH).view(series(changed)).orElseThrow();
        assertEquals(
                List.of(new DifferenceView("Hop: distance", "4.70 m", "4.60 m", "+0.10 ± 0.08 m")),
                view.differences().stream().map(NumbersOnThePageTest::plain).toList());
        assertTrue(view.sentence().startsWith("Attempt 2 (12.60"), view.sentence());
    }

    private static DifferenceView plain(DifferenceView view) {
        return new DifferenceView(
                view.measure(),
                view.best().replace(Figures.NO_BREAK, ' '),
                view.others().replace(Figures.NO_BREAK, ' '),
                view.difference().replace(Figures.NO_BREAK, ' '));
    }

    private static IntervalRow at(IntervalRow row, double value) {
        double half = Figures.half(row);
        return new IntervalRow(
                row.clip(), row.of(), row.part(), row.measure(), value, value - half, value + half, row.remark());
    }

    private static Series series(PageRows rows) {
        return new SeriesFinder(rows, DAY).series().get(0);
    }

    @Test
    void aLoneAttemptIsComparedWithNothing() {
        PageRows rows = new DrawnMeet(22).attempt("5", "", 1, 12.0, false).rows();
        assertEquals(Optional.empty(), new BestAgainstOthers(ENGLISH).view(series(rows)));
        PageRows fouls = new DrawnMeet(22)
                .attempt("5", "", 1, null, false)
                .attempt("5", "", 2, null, false)
                .rows();
        assertEquals(Optional.empty(), new BestAgainstOthers(ENGLISH).view(series(fouls)));
    }

    @Test
    void attemptsOfOneBibAreOneSeriesInTheirOrder() {
        PageRows rows = new DrawnMeet(23)
                .attempt("5", "A", 2, 12.0, false)
                .attempt("6", "B", 1, 12.0, false)
                .attempt("5", "A", 1, 12.0, false)
                .attempt("", "C", 1, 12.0, false)
                .attempt("", "", 4, 12.0, false)
                .attempt("", "", 5, 12.0, false)
                .rows();
        List<Series> series = new SeriesFinder(rows, DAY).series();
        assertEquals(
                List.of("5: 1 2", "6: 1", ": 1", ": 4", ": 5"),
                series.stream()
                        .map(one -> one.bib() + ": "
                                + String.join(
                                        " ",
                                        one.attempts().stream()
                                                .map(a -> a.row().attempt().toString())
                                                .toList()))
                        .toList());
    }

    /** Of equal distances the earlier counts, as in a result list before the next best is looked at. */
    @Test
    void theEarlierOfEqualDistancesIsTheBest() {
        PageRows rows = new DrawnMeet(24)
                .attempt("5", "A", 1, null, false)
                .attempt("5", "A", 2, 12.5, false)
                .attempt("5", "A", 3, 12.5, false)
                .rows();
        Series series = series(rows);
        assertEquals(2, series.best().orElseThrow().row().attempt());
        assertTrue(series.isBest(series.attempts().get(1)));
    }

    @ParameterizedTest
    @CsvSource({"2009, false", "2008, false", "2007, true", ", true"})
    void minorsAreNotNamed(Integer born, boolean named) {
        OptionalInt year = born == null ? OptionalInt.empty() : OptionalInt.of(born);
        PageRows rows = new DrawnMeet(25)
                .attempt("5", "A", 1, 12.0, false)
                .lastFile(year, false)
                .rows();
        assertEquals(named, series(rows).mayBeNamed());
        boolean unknownDay =
                new SeriesFinder(rows, Optional.empty()).series().get(0).mayBeNamed();
        assertEquals(born == null, unknownDay, "without a day everybody with a year of birth may be one");
    }

    @Test
    void whatComesBackInMoreAttemptsComesFirst() {
        PageRows rows = new DrawnMeet(26)
                .attempt("5", "A", 1, 12.0, false)
                .attempt("5", "A", 3, 12.0, false)
                .attempt("5", "A", 5, 12.0, false)
                .observe("5-1.mp4", Kind.PRIORITY, "once but far out", "", 4, 1)
                .observe("5-1.mp4", Kind.PRIORITY, "twice", "", 1, 2)
                .observe("5-3.mp4", Kind.PRIORITY, "twice", "", 2, 1)
                .observe("5-3.mp4", Kind.PRIORITY, "a third", "", 1, 2)
                .observe("5-5.mp4", Kind.PRIORITY, "a fourth", "", 1, 3)
                .rows();
        List<Found> found = FindingChoice.first(series(rows), Kind.PRIORITY);
        assertEquals(
                List.of("twice", "once but far out", "a third"),
                found.stream().map(one -> one.plainest().row().finding()).toList());
        assertEquals("5-3.mp4", found.get(0).plainest().row().clip(), "where it was furthest out");
    }
}
