package org.boardtopit.signal;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A straight line or a parabola through noisy samples with outliers, by iteratively reweighted least squares, with the
 * covariance of its coefficients.
 *
 * <p>Method: a least-absolute-deviation fit (reweighting by 1/|r|) gives a start and the scale s of the noise, from the
 * median of the residuals without the smallest p (p coefficients make p residuals vanish); with s fixed, samples are
 * reweighted by {@link RobustWeights} until the fit stands. Covariance after Huber (Robust Statistics, 1981, section 7.6):
 *
 * <pre>s^2 [sum psi(u)^2 / (n - p)] / [mean psi'(u)]^2 (X' P X)^-1,   u = r / s,   psi(u) = u w(u),   P = 1 / sd^2</pre>
 *
 * <p>y(x) = c0 + c1 (x - x0) + c2 (x - x0)^2 with x0 the {@link #origin}, the mean of the known x. It bears nearly half of
 * the samples being wrong in y; a wrong x, or outliers gathered at one end, can mislead it. Samples are taken as
 * independent: noise that lasts over several frames makes the true spread larger than the one told.
 */
public final class RobustPolynomial {

    private static final int ROUNDS = 50;
    private static final double STANDS = 1e-10;
    /** Residuals below this share of the range of y count as none: the samples lie on the curve. */
    private static final double NO_RESIDUAL = 1e-12;

    private final double origin;
    private final double[] coefficients;
    private final double[][] covariance;
    private final double scale;
    private final double[] weights;

    private RobustPolynomial(
            double origin, double[] coefficients, double[][] covariance, double scale, double[] weights) {
        this.origin = origin;
        this.coefficients = coefficients;
        this.covariance = covariance;
        this.scale = scale;
        this.weights = weights;
    }

    /** A line with equal uncertainty of all samples, see {@link #fit}. */
    public static RobustPolynomial line(double[] x, double[] y, RobustWeights weighting) {
        return fit(1, x, y, ones(x.length), weighting);
    }

    /** A parabola with equal uncertainty of all samples, see {@link #fit}. */
    public static RobustPolynomial quadratic(double[] x, double[] y, RobustWeights weighting) {
        return fit(2, x, y, ones(x.length), weighting);
    }

    /**
     * Fits a polynomial.
     *
     * @param degree 0 to 3
     * @param x places of the samples
     * @param y values, NaN where unknown: such samples are left out
     * @param sd standard deviation of each sample or, up to a common factor, its share of it; above 0
     * @throws IllegalArgumentException when fewer than degree + 2 samples, or fewer than degree + 1 different places, are
     *     known
     */
    public static RobustPolynomial fit(int degree, double[] x, double[] y, double[] sd, RobustWeights weighting) {
        if (degree < 0 || degree > 3 || x.length != y.length || x.length != sd.length) {
            throw new IllegalArgumentException("degree 0 to 3 and as many x as y and sd, was %d, %d, %d, %d"
                    .formatted(degree, x.length, y.length, sd.length));
        }
        return new Fitting(degree + 1, x, y, sd, weighting).result();
    }

    /** x0, the mean of the known places: coefficients are about it. */
    public double origin() {
        return origin;
    }

    /** c_k of the power k about the origin. */
    public double coefficient(int power) {
        return coefficients[power];
    }

    /** Covariance of two coefficients. */
    public double covariance(int powerA, int powerB) {
        return covariance[powerA][powerB];
    }

    /** Robust standard deviation of the residuals, in the unit of y (in units of sd when those were given). */
    public double scale() {
        return scale;
    }

    /** How much a sample counted in the end, 0 for one left out. */
    public double weight(int sample) {
        return weights[sample];
    }

    public double valueAt(double x) {
        return dot(coefficients, powers(x - origin, coefficients.length));
    }

    public double slopeAt(double x) {
        return dot(coefficients, slopesOfPowers(x - origin, coefficients.length));
    }

    /** Standard deviation of the curve (not of a new sample) at a place. */
    public double valueSdAt(double x) {
        return spread(powers(x - origin, coefficients.length));
    }

    public double slopeSdAt(double x) {
        return spread(slopesOfPowers(x - origin, coefficients.length));
    }

    private double spread(double[] row) {
        double variance = 0;
        for (int i = 0; i < row.length; i++) {
            variance += row[i] * dot(covariance[i], row);
        }
        return Math.sqrt(Math.max(0, variance));
    }

    private static double[] ones(int count) {
        double[] ones = new double[count];
        Arrays.fill(ones, 1);
        return ones;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static double[] powers(double x, int count) {
        double[] powers = new double[count];
        powers[0] = 1;
        for (int i = 1; i < count; i++) {
            powers[i] = powers[i - 1] * x;
        }
        return powers;
    }

    private static double[] slopesOfPowers(double x, int count) {
        double[] powers = powers(x, count);
        double[] slopes = new double[count];
        for (int i = 1; i < count; i++) {
            slopes[i] = i * powers[i - 1];
        }
        return slopes;
    }

    /** One fit on its way: the known samples, x moved to their mean and divided by their reach. */
    private static final class Fitting {
        private final int unknowns;
        private final RobustWeights weighting;
        private final int[] known;
        private final int samples;
        private final double origin;
        private final double reach;
        private final double[][] rows;
        private final double[] observed;
        private final double[] sd;

        Fitting(int unknowns, double[] x, double[] y, double[] sdOfAll, RobustWeights weighting) {
            this.unknowns = unknowns;
            this.weighting = weighting;
            this.samples = x.length;
            this.known = IntStream.range(0, x.length)
                    .filter(i -> Double.isFinite(x[i]) && Double.isFinite(y[i]) && sdOfAll[i] > 0)
                    .toArray();
            if (known.length < unknowns + 1) {
                throw new IllegalArgumentException("a fit of %d coefficients needs %d known samples, was %d"
                        .formatted(unknowns, unknowns + 1, known.length));
            }
            this.origin = Arrays.stream(known).mapToDouble(i -> x[i]).average().orElseThrow();
            this.reach = Arrays.stream(known)
                    .mapToDouble(i -> Math.abs(x[i] - origin))
                    .max()
                    .orElseThrow();
            double unit = reach > 0 ? reach : 1;
            this.rows = Arrays.stream(known)
                    .mapToObj(i -> powers((x[i] - origin) / unit, unknowns))
                    .toArray(double[][]::new);
            this.observed = Arrays.stream(known).mapToDouble(i -> y[i]).toArray();
            this.sd = Arrays.stream(known).mapToDouble(i -> sdOfAll[i]).toArray();
        }

        RobustPolynomial result() {
            NormalEquations.Solution plain = solve(ones(known.length))
                    .orElseThrow(() -> new IllegalArgumentException(
                            "a fit of %d coefficients needs as many different places".formatted(unknowns)));
            if (weighting == RobustWeights.EQUAL) {
                return finished(plain.unknowns, plain.inverse, rootMeanSquare(residuals(plain.unknowns)));
            }
            double[] start = leastAbsolute(plain.unknowns);
            double scale = medianScale(residuals(start));
            return finished(reweighted(start, scale), plain.inverse, scale);
        }

        private Optional<NormalEquations.Solution> solve(double[] weights) {
            NormalEquations equations = new NormalEquations(unknowns);
            for (int i = 0; i < known.length; i++) {
                equations.add(rows[i], observed[i], weights[i] / (sd[i] * sd[i]));
            }
            return equations.solve();
        }

        /** In units of the sample's own sd. */
        private double[] residuals(double[] c) {
            double[] residuals = new double[known.length];
            Arrays.setAll(residuals, i -> (observed[i] - dot(c, rows[i])) / sd[i]);
            return residuals;
        }

        private double smallestScale() {
            double low = Arrays.stream(observed).min().orElseThrow();
            double high = Arrays.stream(observed).max().orElseThrow();
            double size = Math.max(high - low, Math.max(Math.abs(low), Math.abs(high)));
            return NO_RESIDUAL * size / Arrays.stream(sd).max().orElseThrow();
        }

        private double[] leastAbsolute(double[] from) {
            double[] c = from;
            double floor = Math.max(Double.MIN_NORMAL, 1e-4 * rootMeanSquare(residuals(c)));
            for (int round = 0; round < ROUNDS; round++) {
                double[] weights = Arrays.stream(residuals(c))
                        .map(r -> floor / Math.max(floor, Math.abs(r)))
                        .toArray();
                c = solve(weights).map(s -> s.unknowns).orElse(c);
            }
            return c;
        }

        private double[] reweighted(double[] from, double scale) {
            double[] c = from;
            for (int round = 0; round < ROUNDS && scale > smallestScale(); round++) {
                double[] weights = weights(c, scale);
                double[] next = solve(weights).map(s -> s.unknowns).orElse(c);
                double moved = 0;
                for (int k = 0; k < unknowns; k++) {
                    moved = Math.max(moved, Math.abs(next[k] - c[k]));
                }
                c = next;
                if (moved < STANDS * scale) {
                    break;
                }
            }
            return c;
        }

        private double[] weights(double[] c, double scale) {
            if (scale <= smallestScale()) {
                double tolerance = 10 * smallestScale();
                return Arrays.stream(residuals(c))
                        .map(r -> weighting == RobustWeights.EQUAL || Math.abs(r) <= tolerance ? 1 : 0)
                        .toArray();
            }
            return Arrays.stream(residuals(c))
                    .map(r -> weighting.weight(r / scale))
                    .toArray();
        }

        private double rootMeanSquare(double[] residuals) {
            double sum = Arrays.stream(residuals).map(r -> r * r).sum();
            return Math.sqrt(sum / (known.length - unknowns));
        }

        private double medianScale(double[] residuals) {
            double[] sizes = Arrays.stream(residuals).map(Math::abs).sorted().toArray();
            double[] free = Arrays.copyOfRange(sizes, unknowns, sizes.length);
            return OrderStatistics.GAUSSIAN_MAD * OrderStatistics.median(free);
        }

        private RobustPolynomial finished(double[] c, double[][] inverse, double scale) {
            double variance = scale > smallestScale() ? scale * scale * inflation(c, scale) : 0;
            double[] unit = powers(reach > 0 ? reach : 1, unknowns);
            double[] coefficients = new double[unknowns];
            double[][] covariance = new double[unknowns][unknowns];
            for (int i = 0; i < unknowns; i++) {
                coefficients[i] = c[i] / unit[i];
                for (int j = 0; j < unknowns; j++) {
                    covariance[i][j] = variance * inverse[i][j] / (unit[i] * unit[j]);
                }
            }
            double[] counted = weights(c, scale);
            double[] weights = new double[samples];
            for (int i = 0; i < known.length; i++) {
                weights[known[i]] = counted[i];
            }
            return new RobustPolynomial(origin, coefficients, covariance, scale, weights);
        }

        private double inflation(double[] c, double scale) {
            double squares = 0;
            double slopes = 0;
            for (double r : residuals(c)) {
                double u = r / scale;
                double psi = u * weighting.weight(u);
                squares += psi * psi;
                slopes += weighting.influenceSlope(u);
            }
            double meanSlope = slopes / known.length;
            return squares / (known.length - unknowns) / (meanSlope * meanSlope);
        }
    }
}
