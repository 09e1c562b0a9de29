package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LinearEvidenceTest {

    /**
     * By hand: one column (1, 1), prior 0 +- 1, data (1, 3). y'y = 10, A'y = 4, M = 1 + 2 = 3: log evidence = -(10 - 16 / 3) / 2
     * - log(3) / 2; posterior mean 4 / 3, variance 1 / 3.
     */
    @Test
    void agreesWithOneCoefficientWorkedByHand() {
        LinearEvidence evidence = new LinearEvidence(new double[] {0}, new double[] {1});
        double log = evidence.compute(new double[][] {{2}}, new double[] {4}, 10);
        assertEquals(-7.0 / 3 - Math.log(3) / 2, log, 1e-12);
        assertEquals(4.0 / 3, evidence.posteriorMean()[0], 1e-12);
        assertEquals(Math.sqrt(1.0 / 3), evidence.posteriorSd(0), 1e-12);
    }

    /** By hand: the same with prior 2 +- 0.5: r = (-1, 1), B'B = 0.5, v = 0: nothing left to explain but the spread. */
    @Test
    void countsFromThePriorMean() {
        LinearEvidence evidence = new LinearEvidence(new double[] {2}, new double[] {0.5});
        double log = evidence.compute(new double[][] {{2}}, new double[] {4}, 10);
        assertEquals(-1 - Math.log(1.5) / 2, log, 1e-12);
        assertEquals(2, evidence.posteriorMean()[0], 1e-12);
    }

    /** CALC: sums likelihood times prior of two coefficients over a grid of ten prior sds either way. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void agreesWithIntegratingTheCoefficientsOnAGrid(long seed) {
        Random random = new Random(seed);
        int n = 6;
        double[][] a = new double[2][n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            a[0][i] = random.nextGaussian();
            a[1][i] = random.nextGaussian();
            y[i] = 2 * random.nextGaussian();
        }
        double[] mean = {random.nextGaussian(), random.nextGaussian()};
        double[] sd = {0.3 + random.nextDouble(), 0.3 + random.nextDouble()};
        LinearEvidence evidence = new LinearEvidence(mean, sd);
        double[][] gram = {{dot(a[0], a[0]), Double.NaN}, {dot(a[1], a[0]), dot(a[1], a[1])}}; // upper half not read
        double log = evidence.compute(gram, new double[] {dot(a[0], y), dot(a[1], y)}, dot(y, y));

        double sum = 0;
        double[] first = new double[2];
        double[] second = new double[2];
        double step = 0.05;
        for (double u = -10; u <= 10; u += step) {
            for (double v = -10; v <= 10; v += step) {
                double[] c = {mean[0] + sd[0] * u, mean[1] + sd[1] * v};
                double miss = 0;
                for (int i = 0; i < n; i++) {
                    double r = y[i] - c[0] * a[0][i] - c[1] * a[1][i];
                    miss += r * r;
                }
                double w = Math.exp(-0.5 * (miss + u * u + v * v)) * step * step / (2 * Math.PI);
                sum += w;
                for (int k = 0; k < 2; k++) {
                    first[k] += w * c[k];
                    second[k] += w * c[k] * c[k];
                }
            }
        }
        assertEquals(Math.log(sum), log, 1e-6);
        for (int k = 0; k < 2; k++) {
            double m = first[k] / sum;
            assertEquals(m, evidence.posteriorMean()[k], 1e-6);
            assertEquals(Math.sqrt(second[k] / sum - m * m), evidence.posteriorSd(k), 1e-6);
        }
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        for (int i = 0; i < a.length; i++) {
            s += a[i] * b[i];
        }
        return s;
    }
}
