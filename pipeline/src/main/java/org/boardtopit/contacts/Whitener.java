package org.boardtopit.contacts;

/**
 * Makes the errors of one point's samples independent and of unit size.
 *
 * <p>Covariance of the errors: half of the variance independent from frame to frame, half correlated with a memory, as the
 * network's errors are (a shoe that is read short stays short for some frames). Cholesky factor L; whitening is L^-1.
 */
final class Whitener {
    /** Share of the standard deviation in each of the two parts, and the memory (measured on our footage). */
    private static final double INDEPENDENT = 0.5;

    private static final double CORRELATED = 0.5;
    private static final double MEMORY_S = 0.040;

    private final double[][] inverse;
    private final double logDeterminant;

    /**
     * For samples at the given times.
     *
     * @param sd standard deviation of each
     */
    Whitener(double[] timesS, double[] sd) {
        int n = timesS.length;
        double[][] lower = new double[n][n];
        double log = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double c =
                        CORRELATED * CORRELATED * sd[i] * sd[j] * Math.exp(-Math.abs(timesS[i] - timesS[j]) / MEMORY_S);
                c += i == j ? INDEPENDENT * INDEPENDENT * sd[i] * sd[i] : 0;
                for (int k = 0; k < j; k++) {
                    c -= lower[i][k] * lower[j][k];
                }
                lower[i][j] = i == j ? Math.sqrt(c) : c / lower[j][j];
            }
            log += Math.log(lower[i][i]);
        }
        this.logDeterminant = 2 * log;
        this.inverse = inverse(lower);
    }

    private static double[][] inverse(double[][] lower) {
        int n = lower.length;
        double[][] inv = new double[n][n];
        for (int j = 0; j < n; j++) {
            inv[j][j] = 1 / lower[j][j];
            for (int i = j + 1; i < n; i++) {
                double s = 0;
                for (int k = j; k < i; k++) {
                    s -= lower[i][k] * inv[k][j];
                }
                inv[i][j] = s / lower[i][i];
            }
        }
        return inv;
    }

    /** Writes the whitened column into {@code out} from {@code offset}. */
    void whiten(double[] column, double[] out, int offset) {
        for (int i = 0; i < column.length; i++) {
            double s = 0;
            double[] row = inverse[i];
            for (int k = 0; k <= i; k++) {
                s += row[k] * column[k];
            }
            out[offset + i] = s;
        }
    }

    /** Logarithm of the determinant of the covariance. */
    double logDeterminant() {
        return logDeterminant;
    }
}
