package org.boardtopit.signal;

import java.util.Arrays;
import java.util.Optional;

/**
 * The value of a noisy signal at an instant at which its speed may jump, from samples on both sides.
 *
 * <p>y(t) = a + b t- + c t+ + d t^2, t from the instant, t- = min(t, 0), t+ = max(t, 0): continuous with a break in slope.
 * Gaussian priors on b, c and d keep it sensible with few samples, Student weights (4 degrees) keep outliers from ruling. The
 * noise is the larger of the stated one and the scaled median absolute residual.
 */
public final class LocalHinge {
    private static final int PASSES = 4;
    private static final double DEGREES = 4;

    private final double value;
    private final double sd;
    private final double slopeBefore;
    private final double slopeAfter;
    private final double curvature;
    private final double[][] covariance;

    private LocalHinge(double[] coefficients, double[][] covariance) {
        this.value = coefficients[0];
        this.sd = Math.sqrt(covariance[0][0]);
        this.slopeBefore = coefficients[1];
        this.slopeAfter = coefficients[2];
        this.curvature = coefficients[3];
        this.covariance = covariance;
    }

    /**
     * Fits the samples.
     *
     * @param t seconds from the instant
     * @param y values, NaN where unknown
     * @param trust weight of each sample before any robust weighting, 0 to 1
     * @param noiseSd least standard deviation of a sample
     * @param slopeSd prior standard deviation of the speed on each side, about zero
     * @param curvatureSd prior standard deviation of the factor of t^2
     * @return empty with fewer than two known samples
     */
    public static Optional<LocalHinge> fit(
            double[] t, double[] y, double[] trust, double noiseSd, double slopeSd, double curvatureSd) {
        int known = (int) Arrays.stream(y).filter(Double::isFinite).count();
        if (known < 2) {
            return Optional.empty();
        }
        double[] weights = new double[t.length];
        Arrays.fill(weights, 1);
        double noise = noiseSd;
        LocalHinge result = null;
        for (int pass = 0; pass < PASSES; pass++) {
            NormalEquations equations = new NormalEquations(4);
            for (int i = 0; i < t.length; i++) {
                if (Double.isFinite(y[i])) {
                    equations.add(row(t[i]), y[i], trust[i] * weights[i] / (noise * noise));
                }
            }
            equations.add(new double[] {0, 1, 0, 0}, 0, 1 / (slopeSd * slopeSd));
            equations.add(new double[] {0, 0, 1, 0}, 0, 1 / (slopeSd * slopeSd));
            equations.add(new double[] {0, 0, 0, 1}, 0, 1 / (curvatureSd * curvatureSd));
            Optional<NormalEquations.Solution> solved = equations.solve();
            if (solved.isEmpty()) {
                return Optional.ofNullable(result);
            }
            double[] c = solved.get().unknowns;
            result = new LocalHinge(c, solved.get().inverse);
            double[] residuals = new double[known];
            int n = 0;
            for (int i = 0; i < t.length; i++) {
                if (Double.isFinite(y[i])) {
                    double r = y[i] - at(c, t[i]);
                    residuals[n++] = Math.abs(r);
                    weights[i] = (DEGREES + 1) / (DEGREES + r * r / (noise * noise));
                }
            }
            noise = Math.max(noiseSd, OrderStatistics.GAUSSIAN_MAD * OrderStatistics.median(residuals));
        }
        return Optional.of(result);
    }

    private static double[] row(double t) {
        return new double[] {1, Math.min(t, 0), Math.max(t, 0), t * t};
    }

    private static double at(double[] c, double t) {
        return c[0] + c[1] * Math.min(t, 0) + c[2] * Math.max(t, 0) + c[3] * t * t;
    }

    /** The value at the instant. */
    public double value() {
        return value;
    }

    /** Its standard deviation, samples taken as independent. */
    public double sd() {
        return sd;
    }

    /** The speed just before the instant, in units of the value a second. */
    public double slopeBefore() {
        return slopeBefore;
    }

    /** The speed just after it; what the prior says when there are no later samples. */
    public double slopeAfter() {
        return slopeAfter;
    }

    /** The mean speed over the last {@code spanS} seconds before the instant: b - d spanS. */
    public double meanSlopeBefore(double spanS) {
        return slopeBefore - curvature * spanS;
    }

    /** Standard deviation of {@link #meanSlopeBefore}, samples taken as independent. */
    public double meanSlopeBeforeSd(double spanS) {
        double variance = covariance[1][1] + spanS * spanS * covariance[3][3] - 2 * spanS * covariance[1][3];
        return Math.sqrt(Math.max(0, variance));
    }
}
