package org.boardtopit.signal;

import java.util.Arrays;

/**
 * Zero-lag Butterworth smoothing of a series over irregular time stamps that may have gaps.
 *
 * <p>Every unbroken run of known values is resampled to even steps at the run's median frame rate, filtered both ways and
 * read off again at its own stamps. Unknown values stay unknown and nothing is carried across them.
 *
 * <p>Not for timing a touchdown or a toe-off: the filter rounds the bend at the ground over some 0.4 / cutoff seconds.
 */
public final class ZeroLagLowPass {

    /**
     * Largest cutoff as a share of the frame rate: 0.25, common practice for video at 50 and 60 frames a second (cutoffs to
     * 12 Hz); above it the filter has little left to do and the correction for two passes grows wild.
     */
    public static final double LARGEST_CUTOFF_SHARE = 0.25;

    /** Runs of fewer samples are given back as they are: there is nothing to tell noise from motion. */
    public static final int SHORTEST_RUN = 4;

    private final double cutoffHz;

    /** Cutoff in Hz, above 0: the frequency at which the amplitude is 1/sqrt(2) after both passes. */
    public ZeroLagLowPass(double cutoffHz) {
        if (!(cutoffHz > 0 && cutoffHz < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("the cutoff must be a frequency above 0 Hz, was " + cutoffHz);
        }
        this.cutoffHz = cutoffHz;
    }

    /** The cutoff that is used at a frame rate: lowered where the rate is too low for the one asked for. */
    public double cutoffAtHz(double sampleHz) {
        return Math.min(cutoffHz, LARGEST_CUTOFF_SHARE * sampleHz);
    }

    /**
     * The smoothed series at the same stamps.
     *
     * @param timesUs rising
     * @param values one per stamp, NaN where unknown
     */
    public double[] smooth(long[] timesUs, double[] values) {
        Stamps.check(timesUs, values);
        double[] smooth = values.clone();
        int start = 0;
        while (start < values.length) {
            int end = start;
            while (end < values.length && Double.isFinite(values[end])) {
                end++;
            }
            if (end - start >= SHORTEST_RUN) {
                double[] run =
                        smoothRun(Arrays.copyOfRange(timesUs, start, end), Arrays.copyOfRange(values, start, end));
                System.arraycopy(run, 0, smooth, start, run.length);
            }
            start = end + 1;
        }
        return smooth;
    }

    private double[] smoothRun(long[] timesUs, double[] values) {
        UniformSeries even = UniformSeries.resample(timesUs, values, UniformSeries.medianRateHz(timesUs));
        Butterworth filter = Butterworth.forTwoPasses(cutoffAtHz(even.rateHz()), even.rateHz());
        return even.withValues(filter.bothWays(even.values())).at(timesUs);
    }
}
