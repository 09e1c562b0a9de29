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
}
