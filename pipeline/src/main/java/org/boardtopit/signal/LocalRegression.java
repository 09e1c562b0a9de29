package org.boardtopit.signal;

import java.util.Arrays;

/**
 * Smooths scattered samples by local polynomials with robust weights, at any time asked for.
 *
 * <p>Method: Cleveland 1979, "Robust locally weighted regression and smoothing scatterplots", JASA 74:829-836 (tricube
 * distance weights, bisquare residual weights), with a fixed half width instead of a fixed number of neighbours. Uses samples
 * on both sides, so it has no lag. Where fewer than {@code degree + 1} samples are near, the window is widened to reach them;
 * beyond the outermost samples it extrapolates the nearest ones with a constant.
 */
public final class LocalRegression {
    private static final int ROBUST_PASSES = 3;

    private final double[] times;
    private final double[] values;
    private final double[] weights;
    private final double halfWidth;
    private final int degree;
    private final double leastResidual;

    /**
     * Takes the samples and works out how far each is to be trusted.
     *
     * @param times rising
     * @param values same length; NaN samples are left out
     * @param halfWidth reach of the window, in the unit of times
     * @param degree 0, 1 or 2
     */
    public LocalRegression(double[] times, double[] values, double halfWidth, int degree) {
        this(times, values, halfWidth, degree, 1e-9);
    }

    /**
     * The same with a floor under the residual that counts as usual, so that a few bends in an otherwise perfectly smooth
     * series are not taken for errors.
     *
     * @param leastResidual in the unit of values; samples closer than six times this are never ruled out
     */
    public LocalRegression(double[] times, double[] values, double halfWidth, int degree, double leastResidual) {
        int n = 0;
        double[] t = new double[times.length];
        double[] v = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            if (Double.isFinite(values[i])) {
                t[n] = times[i];
                v[n++] = values[i];
            }
        }
        this.times = Arrays.copyOf(t, n);
        this.values = Arrays.copyOf(v, n);
        this.weights = new double[n];
        Arrays.fill(weights, 1);
        this.halfWidth = halfWidth;
        this.degree = degree;
        this.leastResidual = leastResidual;
        for (int pass = 0; pass < ROBUST_PASSES && n > degree + 1; pass++) {
            reweigh();
        }
    }

    public int sampleCount() {
        return times.length;
    }

    /** How far the robust weight of the i-th known sample has fallen: 1 fully trusted, 0 an outlier. */
    public double trust(int i) {
        return weights[i];
    }

    private void reweigh() {
        double[] residual = new double[times.length];
        double[] size = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            residual[i] = values[i] - at(times[i]);
            size[i] = Math.abs(residual[i]);
        }
        Arrays.sort(size);
        double s = 6 * Math.max(size[size.length / 2], leastResidual);
        for (int i = 0; i < times.length; i++) {
            double u = residual[i] / s;
            weights[i] = Math.abs(u) < 1 ? (1 - u * u) * (1 - u * u) : 0;
        }
    }

    /** The smoothed value; NaN when there is no sample at all. */
    public double at(double time) {
        if (times.length == 0) {
            return Double.NaN;
        }
        double clamped = Math.max(times[0], Math.min(times[times.length - 1], time));
        double width = halfWidth;
        for (int widen = 0; widen < 20; widen++) {
            double fitted = fitAt(clamped, width);
            if (Double.isFinite(fitted)) {
                return fitted;
            }
            width *= 1.6;
        }
        return values[nearest(clamped)];
    }

    private double fitAt(double time, double width) {
        int from = lowerBound(time - width);
        double[] m = new double[5];
        double[] b = new double[3];
        int used = 0;
        for (int i = from; i < times.length && times[i] <= time + width; i++) {
            double d = (times[i] - time) / width;
            double a = 1 - Math.abs(d * d * d);
            double w = a * a * a * weights[i];
            if (w <= 1e-6) {
                continue;
            }
            used++;
            double p = w;
            for (int k = 0; k < 5; k++) {
                m[k] += p;
                if (k < 3) {
                    b[k] += p * values[i];
                }
                p *= d;
            }
        }
        if (used < degree + 1 + Math.min(1, degree)) {
            return Double.NaN;
        }
        return switch (degree) {
            case 0 -> b[0] / m[0];
            case 1 -> {
                double det = m[0] * m[2] - m[1] * m[1];
                yield det > 1e-9 * m[0] * m[0] ? (b[0] * m[2] - b[1] * m[1]) / det : Double.NaN;
            }
            default -> quadratic(m, b);
        };
    }

    private static double quadratic(double[] m, double[] b) {
        double c0 = m[2] * m[4] - m[3] * m[3];
        double c1 = m[1] * m[4] - m[2] * m[3];
        double c2 = m[1] * m[3] - m[2] * m[2];
        double det = m[0] * c0 - m[1] * c1 + m[2] * c2;
        if (!(det > 1e-9 * m[0] * m[0] * m[0])) {
            return Double.NaN;
        }
        return (b[0] * c0 - b[1] * c1 + b[2] * c2) / det;
    }

    private int lowerBound(double time) {
        int i = Arrays.binarySearch(times, time);
        return i >= 0 ? i : -i - 1;
    }

    private int nearest(double time) {
        int i = Math.min(times.length - 1, lowerBound(time));
        return i > 0 && time - times[i - 1] < times[i] - time ? i - 1 : i;
    }
}
