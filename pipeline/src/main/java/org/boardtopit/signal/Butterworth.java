package org.boardtopit.signal;

/**
 * Second-order low-pass filter after Butterworth, made for one pass or for a zero-lag pair of passes.
 *
 * <p>Recurrence (the form of Winter, Biomechanics and Motor Control of Human Movement, 4th ed.):
 *
 * <pre>y[n] = a0 x[n] + a1 x[n-1] + a2 x[n-2] + b1 y[n-1] + b2 y[n-2],   a0 + a1 + a2 + b1 + b2 = 1</pre>
 *
 * <p>Running forward and then backward removes the lag but filters twice, which lowers the frequency at which the
 * amplitude is 1/sqrt(2). For p passes the remedy is K = tan(pi fc / fs) / C with C = (2^(1/p) - 1)^(1/4), 0.802243 for
 * two. The division belongs to the tangent: dividing fc itself by 0.802 is off by several per cent at video rates.
 *
 * <p>The ends are continued by odd reflection (point reflection in the end sample) over three periods of the cutoff, or
 * over all there is in a shorter series, and the filter starts at rest on the first continued value. So a straight line
 * comes out unchanged, and a series of one sample comes out as it went in. Unknown values (NaN) are refused: fill or cut
 * the series at its gaps first, see {@link ZeroLagLowPass}.
 *
 * @param padding samples of continuation at each end, at least 1
 */
public record Butterworth(double a0, double a1, double a2, double b1, double b2, int padding) {

    private static final double CUTOFF_PERIODS_OF_PADDING = 3;

    public Butterworth {
        double gain = a0 + a1 + a2 + b1 + b2;
        if (!(Math.abs(gain - 1) < 1e-9)) {
            throw new IllegalArgumentException("a low-pass filter passes a constant unchanged, its gain was " + gain);
        }
        if (padding < 1) {
            throw new IllegalArgumentException("padding must be at least one sample, was " + padding);
        }
    }

    /** For {@link #forward}: amplitude 1/sqrt(2) at the cutoff after one pass. Cutoff in (0, sampleHz / 2). */
    public static Butterworth forOnePass(double cutoffHz, double sampleHz) {
        return forPasses(1, cutoffHz, sampleHz);
    }

    /** For {@link #bothWays}: amplitude 1/sqrt(2) at the cutoff after both passes. Cutoff in (0, sampleHz / 2). */
    public static Butterworth forTwoPasses(double cutoffHz, double sampleHz) {
        return forPasses(2, cutoffHz, sampleHz);
    }

    private static Butterworth forPasses(int passes, double cutoffHz, double sampleHz) {
        if (!(cutoffHz > 0 && cutoffHz < sampleHz / 2 && sampleHz < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "the cutoff must lie between 0 and half the sampling rate, was %s of %s Hz"
                            .formatted(cutoffHz, sampleHz));
        }
        double correction = Math.pow(Math.pow(2, 1.0 / passes) - 1, 0.25);
        double k = Math.tan(Math.PI * cutoffHz / sampleHz) / correction;
        double k2 = k * k;
        double a0 = k2 / (1 + Math.sqrt(2) * k + k2);
        double b1 = 2 * a0 / k2 - 2 * a0;
        double b2 = 1 - 4 * a0 - b1;
        int padding = (int) Math.ceil(CUTOFF_PERIODS_OF_PADDING * sampleHz / cutoffHz);
        return new Butterworth(a0, 2 * a0, a0, b1, b2, padding);
    }

    /** One pass in the direction of time; it lags. The input is left alone. */
    public double[] forward(double[] series) {
        requireKnown(series);
        double[] continued = continued(series);
        run(continued);
        return middle(continued, series.length);
    }

    /** Forward, then backward: no lag, fourth order. The input is left alone. */
    public double[] bothWays(double[] series) {
        requireKnown(series);
        double[] continued = continued(series);
        run(continued);
        reverse(continued);
        run(continued);
        reverse(continued);
        return middle(continued, series.length);
    }

    /** Share of the amplitude that one pass lets through at a frequency: |H(f)|, 0 to 1. */
    public double gainOfOnePass(double frequencyHz, double sampleHz) {
        double w = 2 * Math.PI * frequencyHz / sampleHz;
        double upRe = a0 + a1 * Math.cos(w) + a2 * Math.cos(2 * w);
        double upIm = a1 * Math.sin(w) + a2 * Math.sin(2 * w);
        double downRe = 1 - b1 * Math.cos(w) - b2 * Math.cos(2 * w);
        double downIm = b1 * Math.sin(w) + b2 * Math.sin(2 * w);
        return Math.hypot(upRe, upIm) / Math.hypot(downRe, downIm);
    }

    private static void requireKnown(double[] series) {
        for (int i = 0; i < series.length; i++) {
            if (!Double.isFinite(series[i])) {
                throw new IllegalArgumentException(
                        "the filter needs a series without gaps, sample %d was %s".formatted(i, series[i]));
            }
        }
    }

    private int paddingOf(int length) {
        return Math.max(0, Math.min(padding, length - 1));
    }

    private double[] continued(double[] series) {
        int n = series.length;
        int pad = paddingOf(n);
        double[] continued = new double[n + 2 * pad];
        System.arraycopy(series, 0, continued, pad, n);
        for (int i = 1; i <= pad; i++) {
            continued[pad - i] = 2 * series[0] - series[i];
            continued[pad + n - 1 + i] = 2 * series[n - 1] - series[n - 1 - i];
        }
        return continued;
    }

    private double[] middle(double[] continued, int length) {
        double[] middle = new double[length];
        System.arraycopy(continued, paddingOf(length), middle, 0, length);
        return middle;
    }

    private void run(double[] series) {
        if (series.length == 0) {
            return;
        }
        double x1 = series[0];
        double x2 = x1;
        double y1 = x1;
        double y2 = x1;
        for (int i = 0; i < series.length; i++) {
            double x0 = series[i];
            double y0 = a0 * x0 + a1 * x1 + a2 * x2 + b1 * y1 + b2 * y2;
            series[i] = y0;
            x2 = x1;
            x1 = x0;
            y2 = y1;
            y1 = y0;
        }
    }

    private static void reverse(double[] series) {
        for (int i = 0, j = series.length - 1; i < j; i++, j--) {
            double swap = series[i];
            series[i] = series[j];
            series[j] = swap;
        }
    }
}
