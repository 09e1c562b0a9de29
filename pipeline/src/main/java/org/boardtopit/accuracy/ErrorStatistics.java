package org.boardtopit.accuracy;

import java.util.Arrays;
import org.boardtopit.signal.OrderStatistics;

/**
 * What is said of many errors of one kind. Of no error at all, all but the counts are NaN.
 *
 * @param n values that were measured
 * @param missing values that have a truth and were not measured
 * @param bias mean error, measured less true
 * @param mae mean absolute error
 * @param p95 95 % of the absolute errors are no larger ({@link OrderStatistics#quantile})
 * @param max largest absolute error
 */
record ErrorStatistics(int n, int missing, double bias, double mae, double p95, double max) {

    static ErrorStatistics of(double... errors) {
        double[] known = Arrays.stream(errors).filter(Double::isFinite).toArray();
        double[] sizes = Arrays.stream(known).map(Math::abs).toArray();
        return new ErrorStatistics(
                known.length,
                errors.length - known.length,
                Arrays.stream(known).average().orElse(Double.NaN),
                Arrays.stream(sizes).average().orElse(Double.NaN),
                OrderStatistics.quantile(0.95, sizes),
                Arrays.stream(sizes).max().orElse(Double.NaN));
    }
}
