package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class LastingErrorsTest {

    @Test
    void countsFourSamplesOfOneErrorAsOne() {
        assertEquals(2, LastingErrors.whileTheyStay(0.04, 0.01), 1e-12);
        assertEquals(1, LastingErrors.whileTheyStay(0.04, 0.08), 1e-12);
    }

    /** The variance of a mean of many samples is that of one times the sum of the correlations, added up here one by one. */
    @Test
    void addsUpTheCorrelationsOfFadingErrors() {
        double sum = 1;
        for (int lag = 1; lag < 2000; lag++) {
            sum += 2 * 0.5 * Math.exp(-lag * 0.01 / 0.04);
        }
        assertEquals(Math.sqrt(sum), LastingErrors.asTheyFade(0.04, 0.01, 0.5), 1e-9);
    }

    @Test
    void leavesIndependentErrorsAsTheyAre() {
        assertEquals(1, LastingErrors.asTheyFade(0.04, 0.01, 0), 1e-12);
    }
}
