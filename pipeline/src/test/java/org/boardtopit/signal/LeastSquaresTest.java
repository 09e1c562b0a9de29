package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class LeastSquaresTest {
    private static final double[] ONES = {1, 1};

    /** Rosenbrock 1960, Computer Journal 3:175-184: the banana valley, minimum 0 at (1, 1) (MEM-H). */
    @Test
    void followsTheCurvedValleyToItsEnd() {
        LeastSquares.Fit fit = LeastSquares.minimise(
                p -> new double[] {10 * (p[1] - p[0] * p[0]), 1 - p[0]}, new double[] {-1.2, 1}, ONES);
        assertArrayEquals(new double[] {1, 1}, fit.parameters(), 1e-5);
        assertEquals(0, fit.cost(), 1e-9);
    }

    /** By hand: a line through (0, 1), (1, 3), (2, 4), (3, 8): slope 2.2, intercept 0.7, squared residuals 1.8. */
    @Test
    void solvesALinearProblem() {
        double[] y = {1, 3, 4, 8};
        LeastSquares.Fit fit = LeastSquares.minimise(
                p -> {
                    double[] r = new double[4];
                    for (int i = 0; i < 4; i++) {
                        r[i] = p[0] + p[1] * i - y[i];
                    }
                    return r;
                },
                new double[] {0, 0},
                ONES);
        assertArrayEquals(new double[] {0.7, 2.2}, fit.parameters(), 1e-6);
        assertEquals(1.8, fit.cost(), 1e-9);
    }

    @Test
    void keepsTheStartWhereNoStepHelps() {
        double[] start = {3, 4};
        LeastSquares.Fit fit = LeastSquares.minimise(p -> new double[] {5, 5, 5}, start, ONES);
        assertArrayEquals(start, fit.parameters());
        assertEquals(75, fit.cost());
    }

    @Test
    void stepsAroundPlacesWhereTheResidualIsNotANumber() {
        LeastSquares.Fit fit =
                LeastSquares.minimise(p -> new double[] {Math.log(p[0]) - 2}, new double[] {0.1}, new double[] {1});
        assertEquals(Math.exp(2), fit.parameters()[0], 1e-4);
        assertTrue(fit.cost() < 1e-8);
    }

    /**
     * A level and a slope from values at -1, 0, 1 of standard deviation 1: variances 1/3 and 1/2, not correlated (textbook
     * formulas sigma^2 / n and sigma^2 / Sxx, MEM-H).
     */
    @Test
    void pointsOneStandardDeviationAwayCarryTheCovariance() {
        LeastSquares.Fit fit = LeastSquares.minimise(
                p -> new double[] {p[0] - p[1] - 2, p[0] - 3, p[0] + p[1] - 4}, new double[] {0, 0}, ONES);
        double level = 0;
        double slope = 0;
        double both = 0;
        for (double[] away : fit.oneSdAway().orElseThrow()) {
            level += (away[0] - 3) * (away[0] - 3);
            slope += (away[1] - 1) * (away[1] - 1);
            both += (away[0] - 3) * (away[1] - 1);
        }
        assertEquals(1 / 3.0, level, 1e-6);
        assertEquals(1 / 2.0, slope, 1e-6);
        assertEquals(0, both, 1e-6);
    }

    @Test
    void knowsNoDeviationOfWhatIsNotDetermined() {
        LeastSquares.Fit fit = LeastSquares.minimise(p -> new double[] {p[0] + p[1] - 1, 0}, new double[] {0, 0}, ONES);
        assertTrue(fit.oneSdAway().isEmpty());
    }
}
