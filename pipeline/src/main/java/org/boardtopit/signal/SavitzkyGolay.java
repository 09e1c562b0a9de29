package org.boardtopit.signal;

/**
 * Smoothing and first derivative by a polynomial fitted in a moving window of even steps (Savitzky and Golay 1964, Anal.
 * Chem. 36:1627-1639).
 *
 * <p>In the first and last half window the fit of the end window is read off away from its middle. A series shorter than
 * the window is fitted as a whole, with the degree lowered to what its length allows. An unknown value makes all values
 * unknown whose window holds it.
 */
public final class SavitzkyGolay {

    private final int halfWidth;
    private final int degree;

    /**
     * @param halfWidth samples on each side: 3 for a window of seven
     * @param degree of the polynomial, 0 to the window's length less one
     */
    public SavitzkyGolay(int halfWidth, int degree) {
        if (halfWidth < 1 || degree < 0 || degree > 2 * halfWidth) {
            throw new IllegalArgumentException(
                    "half width at least 1 and degree 0 to twice that, was %d and %d".formatted(halfWidth, degree));
        }
        this.halfWidth = halfWidth;
        this.degree = degree;
    }

    public double[] smooth(double[] series) {
        return convolve(series, 0, 1);
    }

    /** First derivative per second for steps of {@code stepS} seconds. */
    public double[] derivative(double[] series, double stepS) {
        if (!(stepS > 0)) {
            throw new IllegalArgumentException("the step must be above 0 s, was " + stepS);
        }
        return convolve(series, 1, stepS);
    }

    /** Weights of the samples of a full window for the smoothed middle one. */
    public double[] smoothingKernel() {
        return kernel(2 * halfWidth + 1, halfWidth, 0);
    }

    /** Weights of the samples of a full window for the derivative at its middle, per step. */
    public double[] derivativeKernel() {
        return kernel(2 * halfWidth + 1, halfWidth, 1);
    }

    private double[] convolve(double[] series, int order, double stepS) {
        int n = series.length;
        int window = Math.min(2 * halfWidth + 1, n);
        double[] result = new double[n];
        int kernelPlace = -1;
        double[] kernel = {};
        for (int i = 0; i < n; i++) {
            int start = Math.max(0, Math.min(i - halfWidth, n - window));
            if (i - start != kernelPlace) {
                kernelPlace = i - start;
                kernel = kernel(window, kernelPlace, order);
            }
            double sum = 0;
            for (int k = 0; k < window; k++) {
                sum += kernel[k] * series[start + k];
            }
            result[i] = order == 0 ? sum : sum / stepS;
        }
        return result;
    }

    /** Weights that read the fitted polynomial, or its slope, at one place of a window. */
    private double[] kernel(int window, int place, int order) {
        int unknowns = Math.min(degree, window - 1) + 1;
        double[] kernel = new double[window];
        if (order >= unknowns) {
            return kernel;
        }
        NormalEquations equations = new NormalEquations(unknowns);
        for (int k = 0; k < window; k++) {
            equations.add(row(k - place, unknowns), 0, 1);
        }
        double[] inverseRow = equations.solve().orElseThrow().inverse[order];
        for (int k = 0; k < window; k++) {
            double[] row = row(k - place, unknowns);
            for (int j = 0; j < unknowns; j++) {
                kernel[k] += inverseRow[j] * row[j];
            }
        }
        return kernel;
    }

    private static double[] row(double x, int unknowns) {
        double[] row = new double[unknowns];
        row[0] = 1;
        for (int j = 1; j < unknowns; j++) {
            row[j] = row[j - 1] * x;
        }
        return row;
    }
}
