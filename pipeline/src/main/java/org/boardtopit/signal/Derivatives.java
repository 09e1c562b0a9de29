package org.boardtopit.signal;

/**
 * Differences over irregular time stamps, per second.
 *
 * <p>Inside, the slope of the parabola through a sample and its two neighbours: the central difference when the steps are
 * even, and exact for constant acceleration when they are not. At an end, or beside an unknown neighbour, the one-sided
 * difference, which is late or early by half a step: {@link #isOneSided} tells where.
 */
public final class Derivatives {

    private Derivatives() {}

    /**
     * First derivative, in the unit of the values per second.
     *
     * @param timesUs rising
     * @param values one per stamp, NaN where unknown
     * @return NaN where the sample is unknown or has no known neighbour
     */
    public static double[] first(long[] timesUs, double[] values) {
        Stamps.check(timesUs, values);
        double[] slopes = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            slopes[i] = slopeAt(timesUs, values, i);
        }
        return slopes;
    }

    /** Second derivative per second squared; NaN at the ends and beside unknown samples: no one-sided guess. */
    public static double[] second(long[] timesUs, double[] values) {
        Stamps.check(timesUs, values);
        double[] bends = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            double before = chord(timesUs, values, i - 1);
            double after = chord(timesUs, values, i);
            bends[i] = i == 0 || i == values.length - 1
                    ? Double.NaN
                    : 2 * (after - before) / Stamps.secondsBetween(timesUs[i - 1], timesUs[i + 1]);
        }
        return bends;
    }

    /** True when the first derivative of a known sample rests on one neighbour only. */
    public static boolean isOneSided(double[] values, int sample) {
        boolean before = sample > 0 && !Double.isNaN(values[sample - 1]);
        boolean after = sample < values.length - 1 && !Double.isNaN(values[sample + 1]);
        return !Double.isNaN(values[sample]) && before != after;
    }

    private static double slopeAt(long[] timesUs, double[] values, int i) {
        double before = chord(timesUs, values, i - 1);
        double after = chord(timesUs, values, i);
        if (Double.isNaN(before)) {
            return after;
        }
        if (Double.isNaN(after)) {
            return before;
        }
        double hBefore = Stamps.secondsBetween(timesUs[i - 1], timesUs[i]);
        double hAfter = Stamps.secondsBetween(timesUs[i], timesUs[i + 1]);
        return (hAfter * before + hBefore * after) / (hBefore + hAfter);
    }

    /** Slope from a sample to the next; NaN when one of them is unknown or outside. */
    private static double chord(long[] timesUs, double[] values, int from) {
        if (from < 0 || from + 1 >= values.length) {
            return Double.NaN;
        }
        return (values[from + 1] - values[from]) / Stamps.secondsBetween(timesUs[from], timesUs[from + 1]);
    }
}
