package org.boardtopit.signal;

import java.util.Arrays;

/**
 * Outlier filter after Hampel: a sample is an outlier when it is further from the median of its window than a number of
 * scaled median absolute deviations.
 *
 * <p>The window is the sample with {@code halfWidth} neighbours on each side, fewer at the ends; unknown neighbours do not
 * count, and with fewer than three known values nothing is judged. A floor under the deviation keeps a window of nearly
 * equal values (a foot that stands still) from calling every small difference an outlier. The window is counted in samples,
 * so at twice the frame rate it is half as long.
 *
 * <p>It finds single wrong samples and pairs in a window of five, not a run that is as long as half the window.
 */
public final class Hampel {

    private static final int FEWEST_TO_JUDGE = 3;

    private final int halfWidth;
    private final double deviations;
    private final double floor;

    /**
     * @param halfWidth neighbours on each side, at least 1 (2 with {@code deviations} 3 is common practice for landmarks)
     * @param deviations scaled median absolute deviations that are still believed, above 0
     * @param floor smallest deviation that is assumed, in the unit of the series, 0 or more
     */
    public Hampel(int halfWidth, double deviations, double floor) {
        if (halfWidth < 1 || !(deviations > 0) || !(floor >= 0)) {
            throw new IllegalArgumentException(
                    "half width at least 1, deviations above 0, floor not negative; was %d, %s, %s"
                            .formatted(halfWidth, deviations, floor));
        }
        this.halfWidth = halfWidth;
        this.deviations = deviations;
        this.floor = floor;
    }

    /** True where a known sample is an outlier. */
    public boolean[] outliers(double[] series) {
        boolean[] outliers = new boolean[series.length];
        for (int i = 0; i < series.length; i++) {
            double[] window = known(series, Math.max(0, i - halfWidth), Math.min(series.length, i + halfWidth + 1));
            if (Double.isNaN(series[i]) || window.length < FEWEST_TO_JUDGE) {
                continue;
            }
            double spread = Math.max(floor, OrderStatistics.scaledMad(window));
            outliers[i] = Math.abs(series[i] - OrderStatistics.median(window)) > deviations * spread;
        }
        return outliers;
    }

    /** The series with outliers made unknown (NaN), to be filled, or not, as any gap. */
    public double[] withoutOutliers(double[] series) {
        boolean[] outliers = outliers(series);
        double[] clean = series.clone();
        for (int i = 0; i < clean.length; i++) {
            if (outliers[i]) {
                clean[i] = Double.NaN;
            }
        }
        return clean;
    }

    private static double[] known(double[] series, int from, int to) {
        return Arrays.stream(series, from, to).filter(v -> !Double.isNaN(v)).toArray();
    }
}
