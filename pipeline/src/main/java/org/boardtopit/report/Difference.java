package org.boardtopit.report;

import java.util.List;
import org.boardtopit.report.tables.IntervalRow;

/**
 * How far one number is from another of the same measure. It counts as a difference only when it is larger than its own uncertainty.
 *
 * <p>Both numbers are taken to err by chance and apart from each other, so the halves of their 90 % intervals add in quadrature.
 *
 * @param value the first less the second, in the measure's unit
 * @param pm90 half of the 90 % interval of {@code value}, 0 or more
 */
public record Difference(double value, double pm90) {

    public Difference {
        if (!Double.isFinite(value) || !(pm90 >= 0)) {
            throw new IllegalArgumentException(
                    "a difference needs a value and pm90 of 0 or more, was " + value + ", " + pm90);
        }
    }

    /** The first less the second. */
    public static Difference of(IntervalRow a, IntervalRow b) {
        return new Difference(a.value() - b.value(), Math.hypot(half(a), half(b)));
    }

    /**
     * One number less the mean of others.
     *
     * @param others at least one, and not the number itself
     */
    public static Difference fromMean(IntervalRow one, List<IntervalRow> others) {
        double mean = others.stream().mapToDouble(IntervalRow::value).average().orElseThrow();
        double squares =
                others.stream().mapToDouble(row -> half(row) * half(row)).sum();
        return new Difference(one.value() - mean, Math.hypot(half(one), Math.sqrt(squares) / others.size()));
    }

    /** True when nought lies outside the interval. */
    public boolean isBeyondUncertainty() {
        return Math.abs(value) > pm90;
    }

    private static double half(IntervalRow row) {
        return (row.high90() - row.low90()) / 2;
    }
}
