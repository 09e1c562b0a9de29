package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WhitenerTest {

    /** The covariance that is documented: a quarter of each variance alone, a quarter with a memory of 40 ms. */
    private static double covariance(double[] t, double[] sd, int i, int j) {
        double shared = 0.25 * sd[i] * sd[j] * Math.exp(-Math.abs(t[i] - t[j]) / 0.040);
        return shared + (i == j ? 0.25 * sd[i] * sd[i] : 0);
    }

    /** Column by column L^-1 is read off; L^-1 C L^-T must be the identity. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void makesErrorsIndependentAndOfUnitSize(long seed) {
        Random random = new Random(seed);
        int n = 3 + random.nextInt(12);
        double[] t = new double[n];
        double[] sd = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = (i == 0 ? 0 : t[i - 1]) + 0.004 + 0.02 * random.nextDouble();
            sd[i] = 0.01 + 0.03 * random.nextDouble();
        }
        Whitener whitener = new Whitener(t, sd);
        double[][] inverse = new double[n][n];
        for (int k = 0; k < n; k++) {
            double[] unit = new double[n];
            unit[k] = 1;
            double[] out = new double[n];
            whitener.whiten(unit, out, 0);
            for (int i = 0; i < n; i++) {
                inverse[i][k] = out[i];
            }
        }
        double logDeterminant = 0;
        for (int i = 0; i < n; i++) {
            double[] row = new double[n];
            double[] expected = new double[n];
            expected[i] = 1;
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < n; k++) {
                    for (int l = 0; l < n; l++) {
                        row[j] += inverse[i][k] * covariance(t, sd, k, l) * inverse[j][l];
                    }
                }
            }
            assertArrayEquals(expected, row, 1e-9);
            logDeterminant -= 2 * Math.log(inverse[i][i]);
        }
        assertEquals(logDeterminant, whitener.logDeterminant(), 1e-9);
    }

    /** By hand: one sample of sd 2 has variance 4 / 4 + 4 / 4 = 2. */
    @Test
    void dividesOneSampleByItsOwnSpread() {
        Whitener whitener = new Whitener(new double[] {0.5}, new double[] {2});
        double[] out = {7, 7, 7};
        whitener.whiten(new double[] {3}, out, 1);
        assertArrayEquals(new double[] {7, 3 / Math.sqrt(2), 7}, out, 1e-12);
        assertEquals(Math.log(2), whitener.logDeterminant(), 1e-12);
    }
}
