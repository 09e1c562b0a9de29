package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class DerivativesTest {

    private static final double NAN = Double.NaN;

    // CALC with a reference library: numpy 2.4.6, gradient over the same uneven stamps.
    @Test
    void agreesWithTheReferenceLibraryOnUnevenStamps() {
        long[] timesUs = {0, 16_000, 34_000, 50_000, 70_000};
        double[] values = {0, .1, .5, .4, .9};

        assertArrayEquals(
                new double[] {6.25, 13.766339869, 7.14869281, 7.638888889, 25.0},
                Derivatives.first(timesUs, values),
                1e-8);
    }

    @Test
    void isTheCentralDifferenceOnEvenStampsAndOneSidedAtTheEnds() {
        long[] timesUs = {0, 10_000, 20_000, 30_000};
        double[] values = {0, 1, 4, 9};

        assertArrayEquals(new double[] {100, 200, 400, 500}, Derivatives.first(timesUs, values), 1e-9);
        assertTrue(Derivatives.isOneSided(values, 0));
        assertFalse(Derivatives.isOneSided(values, 1));
        assertTrue(Derivatives.isOneSided(values, 3));
    }

    @Test
    void isOneSidedBesideAGapAndUnknownWhereNothingIsKnown() {
        long[] timesUs = {0, 10_000, 20_000, 30_000, 40_000, 50_000};
        double[] values = {0, 1, NAN, 5, NAN, 7};

        assertArrayEquals(new double[] {100, 100, NAN, NAN, NAN, NAN}, Derivatives.first(timesUs, values), 1e-9);
        assertTrue(Derivatives.isOneSided(values, 1));
        assertFalse(Derivatives.isOneSided(values, 2));
        assertFalse(Derivatives.isOneSided(values, 3));
        assertEquals(NAN, Derivatives.first(new long[] {5}, new double[] {1})[0]);
    }

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void isExactForConstantAccelerationOnAnyStamps(int seed) {
        Random random = new Random(seed);
        long[] timesUs = new long[20];
        for (int i = 1; i < timesUs.length; i++) {
            timesUs[i] = timesUs[i - 1] + 1_000 + random.nextInt(30_000);
        }
        double v = 10 * random.nextGaussian();
        double[] flight = LongStream.of(timesUs)
                .mapToDouble(t -> 1 + v * t * 1e-6 - 9.81 / 2 * t * t * 1e-12)
                .toArray();
        double[] first = Derivatives.first(timesUs, flight);
        double[] second = Derivatives.second(timesUs, flight);

        for (int i = 1; i < timesUs.length - 1; i++) {
            assertEquals(v - 9.81 * timesUs[i] * 1e-6, first[i], 1e-8);
            assertEquals(-9.81, second[i], 1e-5);
        }
        assertEquals(NAN, second[0]);
        assertEquals(NAN, second[timesUs.length - 1]);
    }
}
