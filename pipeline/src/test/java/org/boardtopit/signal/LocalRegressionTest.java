package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LocalRegressionTest {
    private static double[] uneven(int n) {
        double[] t = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = 0.02 * i + 0.006 * Math.sin(2.1 * i);
        }
        return t;
    }

    private static double[] values(double[] t, double a, double b, double c) {
        return Arrays.stream(t).map(x -> a + b * x + c * x * x).toArray();
    }

    /** A local polynomial of degree d reproduces polynomials up to d, at and between uneven samples. */
    @ParameterizedTest(name = "degree {0}: {1} + {2} t + {3} t^2")
    @CsvSource({"0, 3, 0, 0", "1, 3, -2, 0", "2, 3, -2, 5", "2, 1, 0, 0"})
    void reproducesPolynomialsOfItsDegree(int degree, double a, double b, double c) {
        double[] t = uneven(40);
        LocalRegression fit = new LocalRegression(t, values(t, a, b, c), 0.07, degree);
        for (double at = t[0]; at <= t[39]; at += 0.0131) {
            assertEquals(a + b * at + c * at * at, fit.at(at), 1e-7, "at " + at);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void resistsOneGrossErrorInEight(long seed) {
        Random random = new Random(seed);
        double[] t = uneven(80);
        double[] y = values(t, 1, 4, -2);
        boolean[] wrong = new boolean[80];
        for (int i = 0; i < 80; i++) {
            y[i] += 0.01 * random.nextGaussian();
            wrong[i] = i % 8 == 3;
            y[i] += wrong[i] ? (random.nextBoolean() ? 1 : -1) * (0.5 + random.nextDouble()) : 0;
        }
        LocalRegression fit = new LocalRegression(t, y, 0.12, 2);
        for (int i = 5; i < 75; i++) {
            assertEquals(1 + 4 * t[i] - 2 * t[i] * t[i], fit.at(t[i]), 0.03, "at sample " + i);
            if (wrong[i]) {
                assertEquals(0, fit.trust(i), 1e-9);
            }
        }
    }

    /** A kink in an exact line: without a floor every residual but the kink's is nought, and the kink an outlier. */
    @Test
    void aFloorKeepsAKinkInASmoothSeriesFromBeingRuledOut() {
        double[] t = uneven(60);
        double[] y = Arrays.stream(t).map(x -> Math.abs(x - t[30])).toArray();
        assertEquals(0, new LocalRegression(t, y, 0.07, 1).trust(30), 1e-9);
        LocalRegression tolerant = new LocalRegression(t, y, 0.07, 1, 0.02);
        assertTrue(tolerant.trust(30) > 0.9, "trust " + tolerant.trust(30));
    }

    @Test
    void leavesOutWhatIsUnknownAndReachesAcrossGaps() {
        double[] t = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
        double[] y = {0, 2, Double.NaN, Double.NaN, Double.NaN, Double.NaN, 12, 14, Double.NaN, 18};
        LocalRegression fit = new LocalRegression(t, y, 1.5, 1);
        assertEquals(5, fit.sampleCount());
        assertEquals(8, fit.at(4), 1e-9);
    }

    @Test
    void staysAtTheOutermostSampleBeyondTheEnds() {
        double[] t = uneven(20);
        LocalRegression fit = new LocalRegression(t, values(t, 1, 2, 0), 0.07, 1);
        assertEquals(fit.at(t[0]), fit.at(-5), 1e-12);
        assertEquals(fit.at(t[19]), fit.at(5), 1e-12);
    }

    @Test
    void saysNothingWithoutASampleAndTheSampleItselfWithOne() {
        double nan = Double.NaN;
        assertTrue(Double.isNaN(new LocalRegression(new double[] {0, 1}, new double[] {nan, nan}, 1, 2).at(0.5)));
        assertEquals(7, new LocalRegression(new double[] {0, 1}, new double[] {7, nan}, 1, 2).at(0.9));
    }
}
