package org.boardtopit.contacts;

/**
 * How well a linear model with Gaussian priors explains whitened data, its coefficients integrated out.
 *
 * <p>y = A c + e, e ~ N(0, I), c ~ N(m, D^2): log p(y) = -1/2 (|r|^2 - v' M^-1 v + log|M|) + const with r = y - A m, B = A D, M
 * = I + B'B, v = B'r (Bishop 2006, Pattern Recognition and Machine Learning, section 3.5, from memory). The log-determinant is
 * what keeps a model from buying fit with freedom. Everything is computed from the products A'A, A'y and y'y, because a search
 * over instants changes few of them at a time.
 */
final class LinearEvidence {
    private final int k;
    private final double[] mean;
    private final double[] sd;
    private final double[][] m;
    private final double[] solved;

    /** For a model of as many coefficients as {@code mean} and {@code sd} of their prior have. */
    LinearEvidence(double[] mean, double[] sd) {
        this.k = mean.length;
        this.mean = mean;
        this.sd = sd;
        this.m = new double[k][k];
        this.solved = new double[k];
    }

    /**
     * Works out the logarithm of the evidence, up to a constant of the data.
     *
     * @param gram A'A (only the lower triangle is read)
     * @param projected A'y
     * @param squares y'y
     */
    double compute(double[][] gram, double[] projected, double squares) {
        double rr = squares;
        double log = 0;
        double explained = 0;
        for (int i = 0; i < k; i++) {
            double gm = 0; // (A'A m)_i
            for (int j = 0; j < k; j++) {
                gm += (j <= i ? gram[i][j] : gram[j][i]) * mean[j];
            }
            rr += mean[i] * (gm - 2 * projected[i]);
            double w = sd[i] * (projected[i] - gm);
            for (int j = 0; j < i; j++) {
                double s = sd[i] * sd[j] * gram[i][j];
                for (int l = 0; l < j; l++) {
                    s -= m[i][l] * m[j][l];
                }
                m[i][j] = s / m[j][j];
                w -= m[i][j] * solved[j];
            }
            double d = 1 + sd[i] * sd[i] * gram[i][i];
            for (int l = 0; l < i; l++) {
                d -= m[i][l] * m[i][l];
            }
            m[i][i] = Math.sqrt(d);
            solved[i] = w / m[i][i];
            log += Math.log(m[i][i]);
            explained += solved[i] * solved[i];
        }
        return -0.5 * (rr - explained) - log;
    }

    /** Posterior mean of the coefficients after {@link #compute}. */
    double[] posteriorMean() {
        double[] c = solved.clone();
        for (int i = k - 1; i >= 0; i--) {
            for (int l = i + 1; l < k; l++) {
                c[i] -= m[l][i] * c[l];
            }
            c[i] /= m[i][i];
        }
        for (int i = 0; i < k; i++) {
            c[i] = mean[i] + sd[i] * c[i];
        }
        return c;
    }

    /** Posterior standard deviation of one coefficient after {@link #compute}. */
    double posteriorSd(int coefficient) {
        double[] e = new double[k];
        e[coefficient] = 1;
        double sum = 0;
        for (int i = 0; i < k; i++) {
            for (int l = 0; l < i; l++) {
                e[i] -= m[i][l] * e[l];
            }
            e[i] /= m[i][i];
            sum += e[i] * e[i];
        }
        return sd[coefficient] * Math.sqrt(sum);
    }
}
