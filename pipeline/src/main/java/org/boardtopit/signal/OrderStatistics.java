package org.boardtopit.signal;

import java.util.Arrays;

/** Median, quantiles and their spread. Unknown values (NaN) are left out; of nothing known, the answer is NaN. */
public final class OrderStatistics {

    /** Makes the median absolute deviation of Gaussian noise equal its standard deviation: 1 / 0.67449. */
    public static final double GAUSSIAN_MAD = 1.482602218505602;

    private OrderStatistics() {}

    public static double median(double... values) {
        return quantile(0.5, values);
    }

    /**
     * The value below which a share of the values lies, with straight lines between neighbours (type 7 of Hyndman and Fan
     * 1996, the one of most statistics programs).
     *
     * @param share 0 to 1
     */
    public static double quantile(double share, double... values) {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException("a quantile's share lies between 0 and 1, was " + share);
        }
        double[] sorted =
                Arrays.stream(values).filter(v -> !Double.isNaN(v)).sorted().toArray();
        if (sorted.length == 0) {
            return Double.NaN;
        }
        double place = share * (sorted.length - 1);
        int below = (int) Math.floor(place);
        int above = Math.min(below + 1, sorted.length - 1);
        // Equal neighbours first: between two infinities the line below would be unknown.
        return sorted[below] == sorted[above]
                ? sorted[below]
                : sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    /** Median absolute deviation from the median, times {@link #GAUSSIAN_MAD}: a standard deviation that bears outliers. */
    public static double scaledMad(double... values) {
        double middle = median(values);
        return GAUSSIAN_MAD
                * median(Arrays.stream(values).map(v -> Math.abs(v - middle)).toArray());
    }
}
