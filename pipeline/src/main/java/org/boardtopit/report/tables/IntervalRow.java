package org.boardtopit.report.tables;

import java.util.List;
import java.util.Objects;

/**
 * How well one number is known: a row of intervals.csv. It goes with a number of another table, or stands for one that has
 * no column there.
 *
 * @param of attempt, phase or contact
 * @param part number of the contact or name of the phase; empty for the attempt
 * @param measure the number's column in attempts.csv, phases.csv or contacts.csv, where it has one
 * @param low90 lower end of the interval that holds the true value in 90 of 100 cases
 * @param high90 its upper end
 * @param remark what lessens the number's worth, such as frame-limited; empty when nothing does
 */
public record IntervalRow(
        String clip, String of, String part, String measure, double value, double low90, double high90, String remark) {

    /** The columns of intervals.csv. */
    public static final Table<IntervalRow> TABLE = new Table<>(
            "intervals.csv",
            List.of(
                    Column.text("clip", IntervalRow::clip),
                    Column.label("of", "attempt|phase|contact", row -> row::of),
                    Column.text("part", IntervalRow::part),
                    Column.text("measure", IntervalRow::measure),
                    Column.number("value", 4, IntervalRow::value),
                    Column.number("low_90", 4, IntervalRow::low90),
                    Column.number("high_90", 4, IntervalRow::high90),
                    Column.text("remark", IntervalRow::remark)));

    public IntervalRow {
        Objects.requireNonNull(clip, "clip");
        if (!(low90 <= value && value <= high90)) {
            throw new IllegalArgumentException(
                    "an interval holds its value, was %s to %s about %s".formatted(low90, high90, value));
        }
    }
}
