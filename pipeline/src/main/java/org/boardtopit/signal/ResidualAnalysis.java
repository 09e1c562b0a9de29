package org.boardtopit.signal;

import java.util.Arrays;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/**
 * Winter's residual analysis: the cutoff at which the filter removes as much as the noise alone would leave.
 *
 * <p>R(fc) is the root mean square of the series less its filtered self, for cutoffs from 1 Hz to 0.45 of the sampling rate.
 * Where only noise is removed R falls in a straight line; that line, fitted to the upper half of the cutoffs, meets fc = 0
 * at a, and the cutoff is where R = a (Winter, Biomechanics and Motor Control of Human Movement, section on residual
 * analysis).
 *
 * <p>It assumes white noise. Landmarks from a network err alike over several frames; then the tail is not straight and the
 * cutoff comes out too high: prefer fixed cutoffs, and use this to look at a series.
 */
public final class ResidualAnalysis {

    private static final double FIRST_HZ = 1;
    private static final double STEP_HZ = 0.25;
    private static final double LAST_SHARE = 0.45;

    private ResidualAnalysis() {}

    /**
     * The cutoff in Hz of a series of known values at even steps; empty when the residual never falls to the line's value
     * at 0 Hz inside the range.
     */
    public static OptionalDouble cutoffHz(double[] series, double sampleHz) {
        double[] cutoffs = IntStream.iterate(0, i -> i + 1)
                .mapToDouble(i -> FIRST_HZ + i * STEP_HZ)
                .takeWhile(f -> f <= LAST_SHARE * sampleHz)
                .toArray();
        if (cutoffs.length < 8) {
            throw new IllegalArgumentException("a sampling rate of %s Hz is too low".formatted(sampleHz));
        }
        double[] residuals = new double[cutoffs.length];
        for (int i = 0; i < cutoffs.length; i++) {
            residuals[i] = residual(series, Butterworth.forTwoPasses(cutoffs[i], sampleHz));
        }
        return crossing(cutoffs, residuals, noiseAtZero(cutoffs, residuals));
    }

    private static double residual(double[] series, Butterworth filter) {
        double[] filtered = filter.bothWays(series);
        double sum = 0;
        for (int i = 0; i < series.length; i++) {
            sum += (series[i] - filtered[i]) * (series[i] - filtered[i]);
        }
        return Math.sqrt(sum / series.length);
    }

    private static double noiseAtZero(double[] cutoffs, double[] residuals) {
        int from = cutoffs.length / 2;
        return RobustPolynomial.line(
                        Arrays.copyOfRange(cutoffs, from, cutoffs.length),
                        Arrays.copyOfRange(residuals, from, residuals.length),
                        RobustWeights.EQUAL)
                .valueAt(0);
    }

    private static OptionalDouble crossing(double[] cutoffs, double[] residuals, double level) {
        for (int i = 1; i < cutoffs.length; i++) {
            if (residuals[i - 1] > level && residuals[i] <= level) {
                double share = (residuals[i - 1] - level) / (residuals[i - 1] - residuals[i]);
                return OptionalDouble.of(cutoffs[i - 1] + share * (cutoffs[i] - cutoffs[i - 1]));
            }
        }
        return OptionalDouble.empty();
    }
}
