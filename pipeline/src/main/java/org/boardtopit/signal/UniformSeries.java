package org.boardtopit.signal;

import java.util.Arrays;

/**
 * A series at even steps of time, made from irregular stamps for filters that need even steps, and read off again at any
 * stamp.
 *
 * <p>Between samples runs a cubic Hermite curve whose slopes are those of the parabola through each sample and its two
 * neighbours: motion of constant acceleration passes through both ways unchanged.
 */
public final class UniformSeries {

    /** Stamps are whole microseconds, so a span is some hundredths of a step more or less than a whole number. */
    private static final double STAMP_ROUNDING_STEPS = 0.05;

    private final double startS;
    private final double stepS;
    private final double[] values;

    private UniformSeries(double startS, double stepS, double[] values) {
        this.startS = startS;
        this.stepS = stepS;
        this.values = values;
    }

    /**
     * Resamples so that first and last stamp keep their place and the rate is at least {@code leastRateHz}.
     *
     * @param timesUs rising, at least two
     * @param values one per stamp, all known
     */
    public static UniformSeries resample(long[] timesUs, double[] values, double leastRateHz) {
        Stamps.check(timesUs, values);
        if (timesUs.length < 2 || !(leastRateHz > 0) || !Arrays.stream(values).allMatch(Double::isFinite)) {
            throw new IllegalArgumentException(
                    "resampling needs two or more known samples and a rate above 0 Hz, was %d samples at %s Hz"
                            .formatted(timesUs.length, leastRateHz));
        }
        double[] timesS =
                Arrays.stream(timesUs).mapToDouble(t -> t / Stamps.US_PER_S).toArray();
        double spanS = timesS[timesS.length - 1] - timesS[0];
        int steps = Math.max(1, (int) Math.ceil(spanS * leastRateHz - STAMP_ROUNDING_STEPS));
        double stepS = spanS / steps;
        double[] evenS = new double[steps + 1];
        Arrays.setAll(evenS, i -> timesS[0] + i * stepS);
        return new UniformSeries(timesS[0], stepS, interpolate(timesS, values, evenS));
    }

    /** Frame rate of rising stamps, from the median step: a dropped frame does not change it. At least two stamps. */
    public static double medianRateHz(long[] timesUs) {
        if (timesUs.length < 2) {
            throw new IllegalArgumentException("a rate needs two stamps, was " + timesUs.length);
        }
        double[] stepsUs = new double[timesUs.length - 1];
        Arrays.setAll(stepsUs, i -> (double) (timesUs[i + 1] - timesUs[i]));
        return Stamps.US_PER_S / OrderStatistics.median(stepsUs);
    }

    public double rateHz() {
        return 1 / stepS;
    }

    public double[] values() {
        return values.clone();
    }

    /** The same steps with other values, one for each. */
    public UniformSeries withValues(double[] others) {
        if (others.length != values.length) {
            throw new IllegalArgumentException("%d values for a series of %d".formatted(others.length, values.length));
        }
        return new UniformSeries(startS, stepS, others.clone());
    }

    /** The series at rising stamps; unknown before its first and after its last sample. */
    public double[] at(long[] timesUs) {
        double[] evenS = new double[values.length];
        Arrays.setAll(evenS, i -> startS + i * stepS);
        double[] timesS =
                Arrays.stream(timesUs).mapToDouble(t -> t / Stamps.US_PER_S).toArray();
        return interpolate(evenS, values, timesS);
    }

    private static double[] interpolate(double[] knotsS, double[] values, double[] wantedS) {
        double[] slopes = slopes(knotsS, values);
        int last = knotsS.length - 1;
        // Half a microsecond: what a stamp is rounded by.
        double slackS = 0.5 / Stamps.US_PER_S;
        double[] result = new double[wantedS.length];
        int piece = 0;
        for (int i = 0; i < wantedS.length; i++) {
            if (wantedS[i] < knotsS[0] - slackS || wantedS[i] > knotsS[last] + slackS) {
                result[i] = Double.NaN;
                continue;
            }
            while (piece < last - 1 && wantedS[i] > knotsS[piece + 1]) {
                piece++;
            }
            result[i] = new CubicPiece(
                            knotsS[piece],
                            values[piece],
                            slopes[piece],
                            knotsS[piece + 1],
                            values[piece + 1],
                            slopes[piece + 1])
                    .at(wantedS[i]);
        }
        return result;
    }

    private static double[] slopes(double[] x, double[] y) {
        int last = x.length - 1;
        double[] chord = new double[last];
        Arrays.setAll(chord, i -> (y[i + 1] - y[i]) / (x[i + 1] - x[i]));
        if (last == 1) {
            return new double[] {chord[0], chord[0]};
        }
        double[] slopes = new double[last + 1];
        for (int i = 1; i < last; i++) {
            double before = x[i] - x[i - 1];
            double after = x[i + 1] - x[i];
            slopes[i] = (after * chord[i - 1] + before * chord[i]) / (before + after);
        }
        slopes[0] = 2 * chord[0] - slopes[1];
        slopes[last] = 2 * chord[last - 1] - slopes[last - 1];
        return slopes;
    }
}
