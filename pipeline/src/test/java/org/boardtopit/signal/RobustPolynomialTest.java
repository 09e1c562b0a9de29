package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class RobustPolynomialTest {

    private static final double[] X = {0, 1, 2, 3, 4, 5};
    private static final double[] Y = {1, 2.9, 5.2, 7.1, 8.8, 11.1};

    // CALC with a reference library: numpy 2.4.6, polyfit(x - 2.5, y, degree, cov=True).
    @Test
    void agreesWithTheReferenceLibraryWhenAllCountAlike() {
        RobustPolynomial line = RobustPolynomial.line(X, Y, RobustWeights.EQUAL);
        RobustPolynomial parabola = RobustPolynomial.quadratic(X, Y, RobustWeights.EQUAL);

        assertEquals(2.5, line.origin());
        assertEquals(6.01666667, line.coefficient(0), 1e-8);
        assertEquals(2.00285714, line.coefficient(1), 1e-8);
        assertEquals(4.50793651e-03, line.covariance(0, 0), 1e-11);
        assertEquals(1.54557823e-03, line.covariance(1, 1), 1e-11);
        assertEquals(-0.00714286, parabola.coefficient(2), 1e-8);
        assertEquals(9.48979592e-04, parabola.covariance(2, 2), 1e-12);
        assertEquals(-2.76785714e-03, parabola.covariance(0, 2), 1e-11);
        assertEquals(1.39776786e-02, parabola.covariance(0, 0), 1e-10);
    }

    @ParameterizedTest
    @EnumSource(
            value = RobustWeights.class,
            names = {"TUKEY", "STUDENT"})
    void findsTheLineAmongGrossErrors(RobustWeights weighting) {
        double[] x = IntStream.range(0, 20).mapToDouble(i -> i).toArray();
        double[] y = IntStream.range(0, 20)
                .mapToDouble(i -> i % 3 == 1 ? 60 + 5 * i : 1 + 2 * i + 0.01 * (i % 2))
                .toArray();
        RobustPolynomial line = RobustPolynomial.line(x, y, weighting);

        assertEquals(1, line.valueAt(0), 0.03);
        assertEquals(2, line.slopeAt(7), 0.003);
        assertEquals(0, line.weight(4), 0.001);
        assertTrue(line.weight(3) > 0.5);
    }

    @ParameterizedTest
    @EnumSource(RobustWeights.class)
    void isSureOfSamplesThatLieOnTheCurve(RobustWeights weighting) {
        double[] y = Arrays.stream(X).map(x -> 3 - 2 * x + 0.5 * x * x).toArray();
        RobustPolynomial parabola = RobustPolynomial.quadratic(X, y, weighting);

        assertEquals(0.5, parabola.coefficient(2), 1e-9);
        assertEquals(3 - 20 + 50, parabola.valueAt(10), 1e-8);
        assertEquals(-2 + 10, parabola.slopeAt(10), 1e-8);
        assertEquals(0, parabola.valueSdAt(10), 1e-6);
    }

    @ParameterizedTest
    @EnumSource(RobustWeights.class)
    void tellsTheSpreadThatRepeatedNoiseShows(RobustWeights weighting) {
        Random random = new Random(11);
        double[] x = IntStream.range(0, 26).mapToDouble(i -> i / 50.0).toArray();
        int runs = 2000;
        double squaredErrors = 0;
        double toldVariances = 0;
        for (int run = 0; run < runs; run++) {
            double[] y = Arrays.stream(x)
                    .map(t -> 2 * t - 4.905 * t * t + 0.02 * random.nextGaussian())
                    .toArray();
            RobustPolynomial fit = RobustPolynomial.quadratic(x, y, weighting);
            double error = fit.coefficient(2) + 4.905;
            squaredErrors += error * error;
            toldVariances += fit.covariance(2, 2);
        }

        assertEquals(1, Math.sqrt(toldVariances / squaredErrors), 0.12);
    }

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    /** The fit found is where the weighted residuals balance: the equation that defines an M-estimate. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void balancesTheWeightedResiduals(int seed) {
        Random random = new Random(seed);
        double[] x = random.doubles(30, -3, 8).toArray();
        double[] y = Arrays.stream(x)
                .map(t -> 1 + t + random.nextGaussian() * (random.nextInt(6) == 0 ? 20 : 1))
                .toArray();
        for (RobustWeights weighting : RobustWeights.values()) {
            RobustPolynomial line = RobustPolynomial.line(x, y, weighting);
            double sum = 0;
            double moment = 0;
            for (int i = 0; i < x.length; i++) {
                double pull = line.weight(i) * (y[i] - line.valueAt(x[i]));
                sum += pull;
                moment += pull * x[i];
            }
            assertEquals(0, sum, 1e-3);
            assertEquals(0, moment, 1e-2);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void shiftsWithItsPlaces(int seed) {
        Random random = new Random(seed);
        double[] x = random.doubles(12, 0, 0.5).toArray();
        double[] y = random.doubles(12).toArray();
        double[] later = Arrays.stream(x).map(t -> t + 1000).toArray();
        RobustPolynomial here = RobustPolynomial.line(x, y, RobustWeights.STUDENT);
        RobustPolynomial there = RobustPolynomial.line(later, y, RobustWeights.STUDENT);

        assertEquals(here.valueAt(0.2), there.valueAt(1000.2), 1e-6);
        assertEquals(here.slopeSdAt(0), there.slopeSdAt(0), 1e-6 * here.slopeSdAt(0));
    }

    @Test
    void countsASampleOfTwiceTheDeviationAQuarter() {
        // Two samples at one place, 0 with sd 1 and 10 with sd 2: mean weighted 4 to 1 is 2.
        double[] x = {0, 0};
        RobustPolynomial mean =
                RobustPolynomial.fit(0, x, new double[] {0, 10}, new double[] {1, 2}, RobustWeights.EQUAL);

        assertEquals(2, mean.valueAt(0), 1e-12);
    }

    @Test
    void leavesUnknownSamplesOut() {
        double[] y = Y.clone();
        y[2] = Double.NaN;
        RobustPolynomial line = RobustPolynomial.line(X, y, RobustWeights.TUKEY);

        assertEquals(0, line.weight(2));
        assertEquals(2, line.slopeAt(0), 0.05);
    }

    @Test
    void refusesTooFewSamplesOrPlaces() {
        assertThrows(
                IllegalArgumentException.class,
                () -> RobustPolynomial.line(new double[] {0, 1}, new double[] {0, 1}, RobustWeights.EQUAL));
        assertThrows(
                IllegalArgumentException.class,
                () -> RobustPolynomial.line(new double[] {1, 1, 1, 1}, new double[] {0, 1, 2, 3}, RobustWeights.TUKEY));
        assertThrows(
                IllegalArgumentException.class, () -> RobustPolynomial.line(X, new double[3], RobustWeights.EQUAL));
    }
}
