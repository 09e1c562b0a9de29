package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class HampelTest {

    private static final double NAN = Double.NaN;

    @Test
    void takesOutASpike() {
        double[] series = {1, 2, 3, 40, 5, 6, 7};

        // Window 2 3 40 5 6: median 5, deviations 3 2 35 0 1, MAD 2, limit 3 * 1.4826 * 2 = 8.9.
        assertArrayEquals(new double[] {1, 2, 3, NAN, 5, 6, 7}, new Hampel(2, 3, 0).withoutOutliers(series));
    }

    @Test
    void keepsAStraightLineToItsEnds() {
        double[] line = IntStream.range(0, 20).mapToDouble(i -> 5.0 * i).toArray();

        assertArrayEquals(line, new Hampel(2, 3, 0).withoutOutliers(line));
    }

    @Test
    void keepsSmallDifferencesOfAStandingFootUnderTheFloor() {
        double[] standing = {2, 2, 2, 2.4, 2, 2, 2};

        assertArrayEquals(new double[] {2, 2, 2, NAN, 2, 2, 2}, new Hampel(2, 3, 0).withoutOutliers(standing));
        assertArrayEquals(standing, new Hampel(2, 3, 0.2).withoutOutliers(standing));
    }

    @Test
    void doesNotCountUnknownNeighboursAndJudgesNothingWithTooFew() {
        double[] series = {1, NAN, 1, 50, NAN, 1, NAN, NAN, NAN, 80};

        assertArrayEquals(
                new boolean[] {false, false, false, true, false, false, false, false, false, false},
                new Hampel(2, 3, 0.1).outliers(series));
    }

    @Test
    void takesOutAPairButKeepsTheMiddleOfARunOfThree() {
        double[] pair = {0, 0, 0, 9, 9, 0, 0, 0};
        double[] three = {0, 0, 0, 9, 9, 9, 0, 0, 0};

        assertArrayEquals(new double[] {0, 0, 0, NAN, NAN, 0, 0, 0}, new Hampel(2, 3, 0.1).withoutOutliers(pair));
        // Windows of the run: 0 0 9 9 9 (median 9), 0 9 9 9 0 (9), 9 9 9 0 0 (9).
        assertArrayEquals(three, new Hampel(2, 3, 3.1).withoutOutliers(three));
    }

    @Test
    void refusesImpossibleSettings() {
        assertThrows(IllegalArgumentException.class, () -> new Hampel(0, 3, 0));
        assertThrows(IllegalArgumentException.class, () -> new Hampel(2, 0, 0));
        assertThrows(IllegalArgumentException.class, () -> new Hampel(2, 3, -1));
    }
}
