package org.boardtopit.report.tables;

import java.util.List;
import java.util.Objects;

/**
 * One number in which two attempts differ by more than is uncertain: a row of the table of a comparison.
 *
 * @param clipA name of the file of the first clip
 * @param clipB name of that of the second
 * @param of attempt, phase or contact
 * @param part name of the phase, kind of the contact (of a drill with its number from 0); empty for the attempt
 * @param measure the number's column, as in intervals.csv
 * @param difference second less first
 * @param differencePm90 half of its 90 % interval
 */
public record DifferenceRow(
        String clipA,
        String clipB,
        String of,
        String part,
        String measure,
        double valueA,
        double valueB,
        double difference,
        double differencePm90) {

    /** Stands for any comparison: each has a file of its own in the folder comparisons. */
    public static final Table<DifferenceRow> TABLE = new Table<>(
            "comparison.csv",
            List.of(
                    Column.text("clip_a", DifferenceRow::clipA),
                    Column.text("clip_b", DifferenceRow::clipB),
                    Column.label("of", "attempt|phase|contact", row -> row::of),
                    Column.text("part", DifferenceRow::part),
                    Column.text("measure", DifferenceRow::measure),
                    Column.number("value_a", 4, DifferenceRow::valueA),
                    Column.number("value_b", 4, DifferenceRow::valueB),
                    Column.number("difference", 4, DifferenceRow::difference),
                    Column.number("difference_pm", 4, DifferenceRow::differencePm90)));

    public DifferenceRow {
        Objects.requireNonNull(clipA, "clipA");
        Objects.requireNonNull(clipB, "clipB");
        if (!(Math.abs(difference) > differencePm90)) {
            throw new IllegalArgumentException(
                    "a difference is larger than its uncertainty, was " + difference + " +- " + differencePm90);
        }
    }
}
