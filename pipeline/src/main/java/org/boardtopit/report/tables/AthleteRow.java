package org.boardtopit.report.tables;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;

/**
 * One athlete: a row of athletes.csv, of one competition or, in a season, of the latest one. Null where something is not known.
 *
 * @param id that the competition's sheet gives the athlete
 * @param born year of birth
 * @param attempts that were measured
 * @param poor how many of them are of poor quality; they count for the best distance only
 * @param bestM longest official distance of a valid attempt among them
 * @param bestWindMs of that attempt
 * @param bestClip name of its file
 * @param spreads what is not in it is not known
 */
public record AthleteRow(
        String id,
        String bib,
        String athlete,
        Integer born,
        String competition,
        LocalDate date,
        int attempts,
        int poor,
        Double bestM,
        Double bestWindMs,
        String bestClip,
        Map<AthleteMeasure, Spread> spreads) {

    /**
     * One measure over the attempts of the competition.
     *
     * @param sd standard deviation between the attempts; null with fewer than two
     * @param change against the earlier competitions; null where there are none
     * @param changePm half the width of the 95 % interval of the change; null where it cannot be told
     */
    public record Spread(Double mean, Double sd, Double change, Double changePm) {}

    private static final Spread NOT_KNOWN = new Spread(null, null, null, null);

    /** The columns of athletes.csv. */
    public static final Table<AthleteRow> TABLE = new Table<>("athletes.csv", columns());

    public AthleteRow {
        Objects.requireNonNull(bib, "bib");
        Objects.requireNonNull(athlete, "athlete");
        spreads = Map.copyOf(spreads);
        if (attempts < 0 || poor < 0 || poor > attempts) {
            throw new IllegalArgumentException(
                    "poor attempts are among the measured ones, was " + poor + " of " + attempts);
        }
    }

    private static List<Column<AthleteRow>> columns() {
        List<Column<AthleteRow>> columns = new ArrayList<>(List.of(
                Column.text("athlete", AthleteRow::athlete),
                Column.text("bib", AthleteRow::bib),
                Column.text("athlete_id", AthleteRow::id),
                Column.whole("born", AthleteRow::born),
                Column.text("competition", AthleteRow::competition),
                Column.date("date", AthleteRow::date),
                Column.whole("attempts", AthleteRow::attempts),
                Column.whole("attempts_poor", AthleteRow::poor),
                Column.truncated("best_m", 2, AthleteRow::bestM),
                Column.number("best_wind_ms", 1, AthleteRow::bestWindMs),
                Column.text("best_clip", AthleteRow::bestClip)));
        for (AthleteMeasure measure : AthleteMeasure.values()) {
            columns.add(column(measure, "mean", Spread::mean));
            columns.add(column(measure, "sd", Spread::sd));
            columns.add(column(measure, "change", Spread::change));
            columns.add(column(measure, "change_pm", Spread::changePm));
        }
        return columns;
    }

    private static Column<AthleteRow> column(AthleteMeasure measure, String of, Function<Spread, Double> number) {
        return Column.number(
                measure.column(of),
                measure.decimals(),
                row -> number.apply(row.spreads().getOrDefault(measure, NOT_KNOWN)));
    }
}
