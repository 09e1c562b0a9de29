package org.boardtopit.signal;

import java.util.Optional;

/** Ordinary least squares for a handful of coefficients: y = X c. */
public final class LinearFit {
    private final double[] coefficients;
    private final double cost;

    private LinearFit(double[] coefficients, double cost) {
        this.coefficients = coefficients;
        this.cost = cost;
    }

    /**
     * Fits.
     *
     * @param rows one for each observation, all of the same length
     * @return empty when the rows do not determine every coefficient
     */
    public static Optional<LinearFit> of(double[][] rows, double[] y) {
        if (rows.length == 0 || rows.length != y.length) {
            throw new IllegalArgumentException(
                    "one observation per row, was " + y.length + " and " + rows.length + " rows");
        }
        NormalEquations equations = new NormalEquations(rows[0].length);
        for (int i = 0; i < rows.length; i++) {
            equations.add(rows[i], y[i], 1);
        }
        return equations.solve().map(solution -> new LinearFit(solution.unknowns, cost(rows, y, solution.unknowns)));
    }

    private static double cost(double[][] rows, double[] y, double[] c) {
        double sum = 0;
        for (int i = 0; i < rows.length; i++) {
            double r = y[i];
            for (int k = 0; k < c.length; k++) {
                r -= rows[i][k] * c[k];
            }
            sum += r * r;
        }
        return sum;
    }

    /** Of a column of the rows. */
    public double coefficient(int column) {
        return coefficients[column];
    }

    /** Sum of the squared residuals. */
    public double cost() {
        return cost;
    }
}
