package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class UniformSeriesTest {

    @Test
    void keepsEvenStampsOfARoundedRate() {
        // 60 frames a second in whole microseconds: 0, 16667, 33333, 50000.
        long[] timesUs = {0, 16_667, 33_333, 50_000};
        UniformSeries even = UniformSeries.resample(timesUs, new double[] {1, 2, 4, 3}, 60);

        assertEquals(60, even.rateHz(), 1e-9);
        assertArrayEquals(new double[] {1, 2, 4, 3}, even.values(), 1e-3);
    }

    @Test
    void fillsInADroppedFrame() {
        // x = t^2 in units of 10 ms; the sample at 20 ms is missing.
        UniformSeries even =
                UniformSeries.resample(new long[] {0, 10_000, 30_000, 40_000}, new double[] {0, 1, 9, 16}, 100);

        assertArrayEquals(new double[] {0, 1, 4, 9, 16}, even.values(), 1e-9);
    }

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void passesConstantAccelerationBothWaysUnchanged(int seed) {
        Random random = new Random(seed);
        long[] timesUs = risingStamps(random, 25);
        double a = random.nextGaussian();
        double b = random.nextGaussian();
        double[] parabola = LongStream.of(timesUs)
                .mapToDouble(t -> 1 + a * t * 1e-6 + b * t * t * 1e-12)
                .toArray();

        UniformSeries even = UniformSeries.resample(timesUs, parabola, UniformSeries.medianRateHz(timesUs));

        assertArrayEquals(parabola, even.at(timesUs), 1e-9);
        assertTrue(even.rateHz() >= UniformSeries.medianRateHz(timesUs) * 0.95);
    }

    private static long[] risingStamps(Random random, int count) {
        long[] timesUs = new long[count];
        for (int i = 1; i < count; i++) {
            timesUs[i] = timesUs[i - 1] + 8_000 + random.nextInt(20_000);
        }
        return timesUs;
    }

    @Test
    void isUnknownOutsideItsSpan() {
        UniformSeries even = UniformSeries.resample(new long[] {100, 200, 300}, new double[] {1, 2, 3}, 1e4);

        assertArrayEquals(
                new double[] {Double.NaN, 1, 2.5, 3, Double.NaN}, even.at(new long[] {98, 100, 250, 300, 302}), 1e-9);
    }

    @Test
    void takesTheRateFromTheMedianStep() {
        assertEquals(50, UniformSeries.medianRateHz(new long[] {0, 20_000, 40_000, 100_000, 120_000}));
    }

    @Test
    void refusesUnknownValuesAndSingleSamples() {
        assertThrows(
                IllegalArgumentException.class,
                () -> UniformSeries.resample(new long[] {0, 1}, new double[] {1, Double.NaN}, 50));
        assertThrows(
                IllegalArgumentException.class, () -> UniformSeries.resample(new long[] {0}, new double[] {1}, 50));
        UniformSeries two = UniformSeries.resample(new long[] {0, 20_000}, new double[] {1, 2}, 50);
        assertThrows(IllegalArgumentException.class, () -> two.withValues(new double[3]));
        assertEquals("[1.0, 2.0]", Arrays.toString(two.values()));
    }
}
