package org.boardtopit.contacts;

/**
 * How well a linear model with Gaussian priors explains whitened data, its coefficients integrated out.
 *
 * <p>y = A c + e, e ~ N(0, I), c ~ N(m, D^2): log p(y) = -1/2 (|r|^2 - v' M^-1 v + log|M|) + const with r = y - A m, B = A D, M
 * = I + B'B, v = B'r (Bishop 2006, Pattern Recognition and Machine Learning, section 3.5, from memory). The log-determinant is
 * what keeps a model from buying fit with freedom.
 */
final class LinearEvidence {
    private final int k;
    private final double[][] m;
    private final double[] v;
    private final double[] solved;
    private double logEvidence;

    LinearEvidence(int coefficients) {
        this.k = coefficients;
        this.m = new double[k][k];
        this.v = new double[k];
        this.solved = new double[k];
    }

    /**
     * Works out the evidence.
     *
     * @param columns whitened columns of A, each times its prior sd
     * @param r whitened data less the prior mean's prediction
     */
    double compute(double[][] columns, double[] r) {
        double rr = 0;
        for (double value : r) {
            rr += value * value;
        }
        for (int i = 0; i < k; i++) {
            double[] a = columns[i];
            for (int j = 0; j <= i; j++) {
                double[] b = columns[j];
                double s = i == j ? 1 : 0;
                for (int n = 0; n < r.length; n++) {
                    s += a[n] * b[n];
                }
                m[i][j] = s;
            }
            double s = 0;
            for (int n = 0; n < r.length; n++) {
                s += a[n] * r[n];
            }
            v[i] = s;
        }
        double log = 0;
        double explained = 0;
        for (int i = 0; i < k; i++) {
            for (int j = 0; j < i; j++) {
                double s = m[i][j];
                for (int l = 0; l < j; l++) {
                    s -= m[i][l] * m[j][l];
                }
                m[i][j] = s / m[j][j];
            }
            double d = m[i][i];
            double w = v[i];
            for (int l = 0; l < i; l++) {
                d -= m[i][l] * m[i][l];
                w -= m[i][l] * solved[l];
            }
            m[i][i] = Math.sqrt(d);
            solved[i] = w / m[i][i];
            log += Math.log(m[i][i]);
            explained += solved[i] * solved[i];
        }
        logEvidence = -0.5 * (rr - explained) - log;
        return logEvidence;
    }

    /** Posterior mean of the scaled coefficients after {@link #compute}: c = m + D times this. */
    double[] posteriorMean() {
        double[] c = solved.clone();
        for (int i = k - 1; i >= 0; i--) {
            for (int l = i + 1; l < k; l++) {
                c[i] -= m[l][i] * c[l];
            }
            c[i] /= m[i][i];
        }
        return c;
    }

    /** Posterior variance of one scaled coefficient after {@link #compute}. */
    double posteriorVariance(int coefficient) {
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
        return sum;
    }
}
