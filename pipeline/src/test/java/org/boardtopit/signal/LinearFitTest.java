package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class LinearFitTest {

    /** By hand (CALC): the line through (0, 1), (1, 3), (2, 2) is y = 1.5 + 0.5 x, off by -0.5, 1, -0.5. */
    @Test
    void fitsALineThroughThreePoints() {
        LinearFit fit = LinearFit.of(new double[][] {{1, 0}, {1, 1}, {1, 2}}, new double[] {1, 3, 2})
                .orElseThrow();
        assertEquals(1.5, fit.coefficient(0), 1e-12);
        assertEquals(0.5, fit.coefficient(1), 1e-12);
        assertEquals(1.5, fit.cost(), 1e-12);
    }

    @Test
    void isEmptyWhenAColumnRepeatsAnother() {
        assertTrue(LinearFit.of(new double[][] {{1, 2}, {2, 4}, {3, 6}}, new double[] {1, 2, 3})
                .isEmpty());
    }
}
