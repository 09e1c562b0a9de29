package org.boardtopit.measures;

/**
 * How well a flight of n even samples with independent noise tells speed and gravity: the variances of the slope of a
 * fitted line and of the bend of a fitted parabola.
 *
 * <pre>sd(v) = s fs sqrt(12 / (n (n^2 - 1))),   sd(g) = 2 s fs^2 sqrt(180 / (n (n^2 - 1) (n^2 - 4)))</pre>
 *
 * <p>For long flights the second is nearly 2 s fs^2 sqrt(180 / n^5). A wrong scale is not in it: a scale too large by k makes
 * speed and gravity too large by k, which is what the gravity ratio shows.
 */
public final class FlightUncertainty {

    private FlightUncertainty() {}

    /**
     * Standard deviation of a constant speed, m/s.
     *
     * @param sampleSdM noise of each sample, m
     * @param samples at least 2, else NaN
     * @param sampleHz frames a second
     */
    public static double speedSdMs(double sampleSdM, int samples, double sampleHz) {
        double n = samples;
        return samples < 2 ? Double.NaN : sampleSdM * sampleHz * Math.sqrt(12 / (n * (n * n - 1)));
    }

    /**
     * Standard deviation of the fitted gravity, m/s^2.
     *
     * @param sampleSdM noise of each sample, m
     * @param samples at least 3, else NaN
     * @param sampleHz frames a second
     */
    public static double gravitySdMs2(double sampleSdM, int samples, double sampleHz) {
        double n = samples;
        return samples < 3
                ? Double.NaN
                : 2 * sampleSdM * sampleHz * sampleHz * Math.sqrt(180 / (n * (n * n - 1) * (n * n - 4)));
    }
}
