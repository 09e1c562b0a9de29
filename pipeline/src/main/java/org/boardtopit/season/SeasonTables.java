package org.boardtopit.season;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.boardtopit.report.tables.AthleteMeasure;
import org.boardtopit.report.tables.AthleteRow;
import org.boardtopit.report.tables.AthleteRow.Spread;
import org.boardtopit.report.tables.SeasonRows.Appearance;
import org.boardtopit.report.tables.SeasonRows.CompetitionRow;
import org.boardtopit.report.tables.SeasonRows.RecurringRow;
import org.boardtopit.report.tables.SeasonRows.TrendRow;
import org.boardtopit.report.tables.TableWriter;

/** The tables of a season. */
public final class SeasonTables {
    private final Season season;

    public SeasonTables(Season season) {
        this.season = season;
    }

    /**
     * Writes them, with their description.
     *
     * @param writer of the season's own folder
     */
    public void write(TableWriter writer) throws IOException {
        writer.describe();
        writer.write(Appearance.TABLE, each(SeasonTables::appearances));
        writer.write(CompetitionRow.TABLE, each(SeasonTables::competitions));
        writer.write(TrendRow.TABLE, each(SeasonTables::trends));
        writer.write(RecurringRow.TABLE, each(SeasonTables::recurring));
        writer.write(AthleteRow.TABLE, each(athlete -> List.of(latest(athlete))));
        writer.copy();
    }

    private interface RowsOf<R> {
        List<R> of(SeasonAthlete athlete);
    }

    private <R> List<R> each(RowsOf<R> rows) {
        return season.athletes().stream().flatMap(a -> rows.of(a).stream()).toList();
    }

    private static List<Appearance> appearances(SeasonAthlete athlete) {
        return athlete.appearances().stream()
                .map(e -> new Appearance(
                        athlete.label(),
                        e.date(),
                        e.competition(),
                        e.folder().getFileName().toString(),
                        e.bib(),
                        e.shown(),
                        e.id(),
                        e.attempts().size(),
                        athlete.joinedBy()))
                .toList();
    }

    private static Stream<Series> series(SeasonAthlete athlete) {
        return Stream.of(AthleteMeasure.values())
                .map(measure -> Series.of(athlete, measure))
                .flatMap(Optional::stream);
    }

    private static List<CompetitionRow> competitions(SeasonAthlete athlete) {
        List<CompetitionRow> rows = new ArrayList<>();
        series(athlete)
                .forEach(series -> series.points()
                        .forEach(p -> rows.add(new CompetitionRow(
                                athlete.label(),
                                p.date(),
                                p.competition(),
                                series.measure(),
                                p.mean().attempts(),
                                p.mean().mean(),
                                p.mean().sd(),
                                series.halfInterval(p)))));
        return rows;
    }

    private static List<TrendRow> trends(SeasonAthlete athlete) {
        return series(athlete)
                .map(series -> {
                    Trend trend = Trend.of(series);
                    return new TrendRow(
                            athlete.label(),
                            series.measure(),
                            trend.competitions(),
                            series.points().get(0).date(),
                            series.last().date(),
                            trend.perMonth(),
                            trend.pm(),
                            trend.direction());
                })
                .toList();
    }

    private static List<RecurringRow> recurring(SeasonAthlete athlete) {
        return Recurring.of(athlete).stream()
                .map(r -> new RecurringRow(
                        athlete.label(),
                        r.phase(),
                        r.topic(),
                        r.strength(),
                        r.finding(),
                        r.seen(),
                        r.competitions(),
                        r.attemptsSeen(),
                        r.attempts(),
                        r.first(),
                        r.last()))
                .toList();
    }

    /** The latest competition against the earlier ones. A measure that it does not have is left out. */
    private static AthleteRow latest(SeasonAthlete athlete) {
        List<List<Entrant>> competitions = athlete.competitions();
        List<Entrant> entrants = competitions.get(competitions.size() - 1);
        Entrant last = entrants.get(0);
        List<MeasuredAttempt> attempts = SeasonAthlete.attempts(entrants);
        Map<AthleteMeasure, Spread> spreads = new EnumMap<>(AthleteMeasure.class);
        series(athlete)
                .filter(s -> s.last().date().equals(last.date())
                        && s.last().competition().equals(last.competition()))
                .forEach(s -> spreads.put(s.measure(), spread(s)));
        Optional<MeasuredAttempt> best = AthleteTable.best(attempts);
        return new AthleteRow(
                last.id(),
                last.bib(),
                athlete.label(),
                athlete.appearances().stream()
                        .map(Entrant::born)
                        .filter(java.util.Objects::nonNull)
                        .findFirst()
                        .orElse(null),
                last.competition(),
                last.date(),
                attempts.size(),
                (int) attempts.stream().filter(MeasuredAttempt::poor).count(),
                best.map(MeasuredAttempt::bestM).orElse(null),
                best.map(MeasuredAttempt::windMs).orElse(null),
                best.map(MeasuredAttempt::clip).orElse(null),
                spreads);
    }

    private static Spread spread(Series series) {
        CompetitionMean mean = series.last().mean();
        Optional<Series.Change> change = series.change();
        return new Spread(
                mean.mean(),
                mean.sd(),
                change.map(Series.Change::value).orElse(null),
                change.map(Series.Change::pm).orElse(null));
    }
}
