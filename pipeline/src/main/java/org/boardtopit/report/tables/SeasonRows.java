package org.boardtopit.report.tables;

import java.time.LocalDate;
import java.util.List;
import org.boardtopit.clips.Label;

/** Rows of the tables that only a season has. Null where something is not known. */
public final class SeasonRows {
    private static final String MEASURES = Column.oneOf(java.util.Arrays.stream(AthleteMeasure.values())
            .map(measure -> (Label) measure::key)
            .toArray(Label[]::new));

    private SeasonRows() {}

    /**
     * Whom a season took for the same athlete: a row of appearances.csv.
     *
     * @param folder name of the folder of results
     * @param shown what that folder calls the athlete
     * @param joinedBy of the athlete as a whole: the least sure of what joins the competitions
     */
    public record Appearance(
            String athlete,
            LocalDate date,
            String competition,
            String folder,
            String bib,
            String shown,
            String id,
            int attempts,
            Label joinedBy) {

        /** The columns of appearances.csv. */
        public static final Table<Appearance> TABLE = new Table<>(
                "appearances.csv",
                List.of(
                        Column.text("athlete", Appearance::athlete),
                        Column.date("date", Appearance::date),
                        Column.text("competition", Appearance::competition),
                        Column.text("folder", Appearance::folder),
                        Column.text("bib", Appearance::bib),
                        Column.text("called", Appearance::shown),
                        Column.text("athlete_id", Appearance::id),
                        Column.whole("attempts", Appearance::attempts),
                        Column.label("joined_by", "id|name_and_born|name|bib|nothing", Appearance::joinedBy)));
    }

    /**
     * One measure of an athlete in one competition: a row of competitions.csv.
     *
     * @param pm half the 95 % interval of the mean
     */
    public record CompetitionRow(
            String athlete,
            LocalDate date,
            String competition,
            AthleteMeasure measure,
            int attempts,
            double mean,
            Double sd,
            Double pm) {

        /** The columns of competitions.csv. */
        public static final Table<CompetitionRow> TABLE = new Table<>(
                "competitions.csv",
                List.of(
                        Column.text("athlete", CompetitionRow::athlete),
                        Column.date("date", CompetitionRow::date),
                        Column.text("competition", CompetitionRow::competition),
                        Column.label("measure", MEASURES, row -> row.measure()::key),
                        Column.text("unit", row -> row.measure().unitSymbol()),
                        Column.whole("attempts", CompetitionRow::attempts),
                        Column.number("mean", 4, CompetitionRow::mean),
                        Column.number("sd", 4, CompetitionRow::sd),
                        Column.number("pm", 4, CompetitionRow::pm)));
    }

    /**
     * Whether one measure of an athlete rises or falls: a row of trends.csv.
     *
     * @param per30Days slope
     * @param pm half its 95 % interval
     */
    public record TrendRow(
            String athlete,
            AthleteMeasure measure,
            int competitions,
            LocalDate first,
            LocalDate last,
            Double per30Days,
            Double pm,
            Label trend) {

        /** The columns of trends.csv. */
        public static final Table<TrendRow> TABLE = new Table<>(
                "trends.csv",
                List.of(
                        Column.text("athlete", TrendRow::athlete),
                        Column.label("measure", MEASURES, row -> row.measure()::key),
                        Column.text("unit", row -> row.measure().unitSymbol()),
                        Column.whole("competitions", TrendRow::competitions),
                        Column.date("first_date", TrendRow::first),
                        Column.date("last_date", TrendRow::last),
                        Column.number("per_30_days", 4, TrendRow::per30Days),
                        Column.number("pm", 4, TrendRow::pm),
                        Column.label("trend", "rising|falling|not_shown|too_few", TrendRow::trend)));
    }

    /** An observation that came back: a row of recurring.csv. */
    public record RecurringRow(
            String athlete,
            String phase,
            String topic,
            boolean strength,
            String finding,
            int seen,
            int competitions,
            int attemptsSeen,
            int attempts,
            LocalDate first,
            LocalDate last) {

        /** The columns of recurring.csv. */
        public static final Table<RecurringRow> TABLE = new Table<>(
                "recurring.csv",
                List.of(
                        Column.text("athlete", RecurringRow::athlete),
                        Column.text("phase", RecurringRow::phase),
                        Column.text("topic", RecurringRow::topic),
                        Column.yesOrNo("strength", RecurringRow::strength),
                        Column.text("finding", RecurringRow::finding),
                        Column.whole("competitions_seen", RecurringRow::seen),
                        Column.whole("competitions", RecurringRow::competitions),
                        Column.whole("attempts_seen", RecurringRow::attemptsSeen),
                        Column.whole("attempts", RecurringRow::attempts),
                        Column.date("first_date", RecurringRow::first),
                        Column.date("last_date", RecurringRow::last)));
    }
}
