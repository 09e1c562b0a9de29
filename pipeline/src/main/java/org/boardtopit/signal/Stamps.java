package org.boardtopit.signal;

/** What every series over time stamps relies on. */
final class Stamps {

    static final double US_PER_S = 1e6;

    private Stamps() {}

    /** Throws IllegalArgumentException unless there is one value per stamp and the stamps rise strictly. */
    static void check(long[] timesUs, double[] values) {
        if (timesUs.length != values.length) {
            throw new IllegalArgumentException(
                    "one value per time stamp: %d values, %d stamps".formatted(values.length, timesUs.length));
        }
        for (int i = 1; i < timesUs.length; i++) {
            if (timesUs[i] <= timesUs[i - 1]) {
                throw new IllegalArgumentException("time stamps must rise, was %d then %d us at sample %d"
                        .formatted(timesUs[i - 1], timesUs[i], i));
            }
        }
    }

    /** Seconds from one stamp to another. */
    static double secondsBetween(long fromUs, long toUs) {
        return (toUs - fromUs) / US_PER_S;
    }
}
