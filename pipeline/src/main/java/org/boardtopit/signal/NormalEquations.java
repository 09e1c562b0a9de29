package org.boardtopit.signal;

import java.util.Optional;

/** Weighted least squares for a handful of unknowns: rows are gathered, then solved by Cholesky's factors. */
final class NormalEquations {

    /** A pivot this much smaller than its diagonal means that the rows do not determine the unknown. */
    private static final double SINGULAR = 1e-12;

    private final int unknowns;
    private final double[][] matrix;
    private final double[] right;

    NormalEquations(int unknowns) {
        this.unknowns = unknowns;
        this.matrix = new double[unknowns][unknowns];
        this.right = new double[unknowns];
    }

    void add(double[] row, double observed, double weight) {
        for (int i = 0; i < unknowns; i++) {
            right[i] += weight * row[i] * observed;
            for (int j = 0; j <= i; j++) {
                matrix[i][j] += weight * row[i] * row[j];
            }
        }
    }

    /** Empty when the rows do not determine every unknown. */
    Optional<Solution> solve() {
        double[][] lower = new double[unknowns][unknowns];
        for (int i = 0; i < unknowns; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                if (i != j) {
                    lower[i][j] = sum / lower[j][j];
                } else if (sum > SINGULAR * matrix[i][i]) {
                    lower[i][i] = Math.sqrt(sum);
                } else {
                    return Optional.empty();
                }
            }
        }
        double[][] inverse = new double[unknowns][];
        for (int i = 0; i < unknowns; i++) {
            double[] unit = new double[unknowns];
            unit[i] = 1;
            inverse[i] = substitute(lower, unit);
        }
        return Optional.of(new Solution(substitute(lower, right), inverse));
    }

    private double[] substitute(double[][] lower, double[] given) {
        double[] x = given.clone();
        for (int i = 0; i < unknowns; i++) {
            for (int k = 0; k < i; k++) {
                x[i] -= lower[i][k] * x[k];
            }
            x[i] /= lower[i][i];
        }
        for (int i = unknowns - 1; i >= 0; i--) {
            for (int k = i + 1; k < unknowns; k++) {
                x[i] -= lower[k][i] * x[k];
            }
            x[i] /= lower[i][i];
        }
        return x;
    }

    /** The unknowns and the inverse of the matrix, which times the noise variance is their covariance. */
    static final class Solution {
        final double[] unknowns;
        final double[][] inverse;

        Solution(double[] unknowns, double[][] inverse) {
            this.unknowns = unknowns;
            this.inverse = inverse;
        }
    }
}
