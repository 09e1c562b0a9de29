package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SavitzkyGolayTest {

    private static final double[] SERIES = {0, .1, .3, .2, .7, 1.1, .9, 1.6, 1.4, 2.2, 2.1, 1.8};

    // CALC, classic tables of Savitzky and Golay 1964: (-2,3,6,7,6,3,-2)/21.
    @Test
    void hasTheClassicSevenPointKernel() {
        double[] expected =
                IntStream.of(-2, 3, 6, 7, 6, 3, -2).mapToDouble(k -> k / 21.0).toArray();

        assertArrayEquals(expected, new SavitzkyGolay(3, 2).smoothingKernel(), 1e-12);
        assertArrayEquals(expected, new SavitzkyGolay(3, 3).smoothingKernel(), 1e-12);
    }

    // CALC, classic: (-2..2)/10 and (-3..3)/28 per step.
    @Test
    void hasTheClassicDerivativeKernels() {
        assertArrayEquals(
                IntStream.rangeClosed(-2, 2).mapToDouble(k -> k / 10.0).toArray(),
                new SavitzkyGolay(2, 2).derivativeKernel(),
                1e-12);
        assertArrayEquals(
                IntStream.rangeClosed(-3, 3).mapToDouble(k -> k / 28.0).toArray(),
                new SavitzkyGolay(3, 2).derivativeKernel(),
                1e-12);
    }

    // CALC with a reference library: scipy 1.17.1, savgol_filter(x, 7, 2), mode 'interp'.
    @Test
    void agreesWithTheReferenceLibraryToTheEnds() {
        assertArrayEquals(
                new double[] {
                    -0.033333333,
                    0.107142857,
                    0.264285714,
                    0.438095238,
                    0.614285714,
                    0.919047619,
                    1.142857143,
                    1.395238095,
                    1.704761905,
                    1.857142857,
                    1.95,
                    1.983333333
                },
                new SavitzkyGolay(3, 2).smooth(SERIES),
                1e-9);
        assertArrayEquals(
                new double[] {
                    6.607142857, 7.44047619, 8.273809524, 9.107142857, 11.785714286, 11.25,
                    14.107142857, 12.321428571, 9.107142857, 6.130952381, 3.154761905, 0.178571429
                },
                new SavitzkyGolay(3, 2).derivative(SERIES, 0.02),
                1e-8);
    }

    @Test
    void fitsAShortSeriesAsAWhole() {
        assertArrayEquals(new double[] {0, 1, 4, 9}, new SavitzkyGolay(3, 2).smooth(new double[] {0, 1, 4, 9}), 1e-9);
        assertArrayEquals(new double[] {5}, new SavitzkyGolay(3, 2).smooth(new double[] {5}), 1e-12);
        assertArrayEquals(new double[] {2, 2}, new SavitzkyGolay(3, 2).derivative(new double[] {5, 6}, 0.5), 1e-9);
        assertArrayEquals(new double[] {}, new SavitzkyGolay(3, 2).smooth(new double[] {}));
    }

    @Test
    void refusesADegreeThatTheWindowCannotHold() {
        assertThrows(IllegalArgumentException.class, () -> new SavitzkyGolay(1, 3));
        assertThrows(IllegalArgumentException.class, () -> new SavitzkyGolay(0, 0));
        assertThrows(IllegalArgumentException.class, () -> new SavitzkyGolay(3, 2).derivative(SERIES, 0));
    }
}
