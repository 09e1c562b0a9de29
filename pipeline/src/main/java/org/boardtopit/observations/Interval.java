package org.boardtopit.observations;

import org.boardtopit.measures.Reading;

/** The 90 % interval of a measure: value plus-minus 1.645 standard deviations, as in intervals.csv. */
public record Interval(double low, double high) {
    /** Half of a 90 % interval of a Gaussian in standard deviations (any table of the normal distribution). */
    private static final double HALF_90 = 1.645;

    public Interval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("an interval runs from low to high, was %s to %s".formatted(low, high));
        }
    }

    static Interval of(Reading reading) {
        double half = HALF_90 * reading.sd();
        return new Interval(reading.value() - half, reading.value() + half);
    }
}
