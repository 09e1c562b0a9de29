package org.boardtopit.measures;

/** A closed range of values that have been reported. */
public record PlausibleRange(double low, double high) {

    public PlausibleRange {
        if (!(low <= high)) {
            throw new IllegalArgumentException("a range runs from low to high, was %s to %s".formatted(low, high));
        }
    }

    /** True inside the range, ends included; false for NaN. */
    public boolean contains(double value) {
        return value >= low && value <= high;
    }

    PlausibleRange joined(PlausibleRange other) {
        return new PlausibleRange(Math.min(low, other.low), Math.max(high, other.high));
    }
}
