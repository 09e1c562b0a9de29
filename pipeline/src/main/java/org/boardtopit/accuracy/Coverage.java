package org.boardtopit.accuracy;

import java.util.List;
import org.boardtopit.signal.OrderStatistics;

/**
 * How honest stated standard deviations are: errors that are Gaussian with them lie within 1.645 of them in 90 % of the cases,
 * within two in 95.4 %, and half within 0.674 (any table of the normal distribution).
 *
 * @param n values with a stated standard deviation
 * @param within90Pct share within the 90 % interval
 * @param within2SdPct share within the plus-minus that the tables print
 * @param medianRatio median of the absolute error over the standard deviation
 */
record Coverage(int n, double within90Pct, double within2SdPct, double medianRatio) {
    /** Half the 90 % interval of a Gaussian, in standard deviations. */
    private static final double HALF_90 = 1.6448536;

    static Coverage of(List<MeasuredError> errors) {
        double[] ratios = errors.stream()
                .filter(e -> Double.isFinite(e.error()) && e.sd() > 0)
                .mapToDouble(e -> Math.abs(e.error()) / e.sd())
                .toArray();
        return new Coverage(ratios.length, share(ratios, HALF_90), share(ratios, 2), OrderStatistics.median(ratios));
    }

    private static double share(double[] ratios, double most) {
        int within = 0;
        for (double ratio : ratios) {
            within += ratio <= most ? 1 : 0;
        }
        return ratios.length == 0 ? Double.NaN : 100.0 * within / ratios.length;
    }
}
