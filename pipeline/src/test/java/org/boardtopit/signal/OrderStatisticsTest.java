package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrderStatisticsTest {

    @Test
    void takesTheMiddleValueOrTheMeanOfTheMiddleTwo() {
        assertEquals(3, OrderStatistics.median(9, 3, 1));
        assertEquals(4, OrderStatistics.median(9, 3, 1, 5));
    }

    // CALC with a reference library: numpy 2.4.6, quantile.
    @ParameterizedTest
    @CsvSource({"0, 1", "0.1, 1", "0.25, 1.75", "0.9, 6.9", "1, 9"})
    void interpolatesQuantilesAsTheReferenceLibraryDoes(double share, double expected) {
        assertEquals(expected, OrderStatistics.quantile(share, 3, 1, 4, 1, 5, 9, 2, 6), 1e-12);
    }

    @Test
    void leavesUnknownValuesOut() {
        assertEquals(2, OrderStatistics.median(Double.NaN, 1, 2, 3, Double.NaN));
        assertEquals(Double.NaN, OrderStatistics.median(Double.NaN));
        assertEquals(Double.NaN, OrderStatistics.scaledMad());
    }

    @Test
    void bearsInfiniteValues() {
        assertEquals(
                Double.POSITIVE_INFINITY,
                OrderStatistics.median(1, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
    }

    @Test
    void estimatesTheDeviationOfGaussianNoiseDespiteOutliers() {
        Random random = new Random(7);
        double[] noise =
                random.doubles(20_000).map(u -> 3 * random.nextGaussian()).toArray();
        for (int i = 0; i < 200; i++) {
            noise[i] = 1000;
        }

        assertEquals(3, OrderStatistics.scaledMad(noise), 0.1);
    }

    @Test
    void refusesAShareOutsideZeroToOne() {
        assertThrows(IllegalArgumentException.class, () -> OrderStatistics.quantile(1.1, 1, 2));
        assertThrows(IllegalArgumentException.class, () -> OrderStatistics.quantile(Double.NaN, 1, 2));
    }
}
