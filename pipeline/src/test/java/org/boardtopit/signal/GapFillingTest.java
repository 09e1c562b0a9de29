package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GapFillingTest {

    private static final double NAN = Double.NaN;
    private static final long[] SIXTY_HZ = {0, 16_667, 33_333, 50_000, 66_667, 83_333, 100_000, 116_667, 133_333};

    // CALC with a reference library: scipy 1.17.1, PchipInterpolator over the known samples.
    @Test
    void agreesWithTheReferenceLibrary() {
        double[] peak = {1.0, 1.2, 1.5, 1.9, NAN, NAN, 2.2, 2.1, 1.7};
        double[] rising = {1.0, 1.2, 1.5, 1.9, NAN, NAN, 1.95, 2.4, 3.0};

        assertArrayEquals(
                new double[] {1.0, 1.2, 1.5, 1.9, 2.056792249, 2.161726643, 2.2, 2.1, 1.7},
                new GapFilling(60_000).fill(SIXTY_HZ, peak).values(),
                1e-9);
        assertArrayEquals(
                new double[] {1.0, 1.2, 1.5, 1.9, 1.921310317, 1.928534417, 1.95, 2.4, 3.0},
                new GapFilling(60_000).fill(SIXTY_HZ, rising).values(),
                1e-9);
    }

    @Test
    void marksWhatWasFilled() {
        double[] series = {1, 2, NAN, 4, 5, 6, 7, 8, 9};
        FilledSeries filled = new GapFilling(40_000).fill(SIXTY_HZ, series);

        assertTrue(filled.isFilled(2));
        assertFalse(filled.isFilled(3));
        assertEquals(1.0 / 9, filled.filledShare(), 1e-12);
        assertEquals(0.5, filled.filledShare(2, 4), 1e-12);
        assertEquals(0, filled.filledShare(4, 4));
    }

    @Test
    void leavesOpenWhatIsTooLongOrHasOneSampleBesideItOrLiesAtAnEnd() {
        double[] tooLong = {1, 2, NAN, NAN, NAN, 6, 7, 8, 9};
        double[] oneBeside = {1, 2, 3, 4, NAN, 6, NAN, 8, 9};
        double[] ends = {NAN, 2, 3, 4, 5, 6, 7, 8, NAN};

        assertArrayEquals(
                tooLong, new GapFilling(60_000).fill(SIXTY_HZ, tooLong).values());
        assertArrayEquals(
                oneBeside, new GapFilling(60_000).fill(SIXTY_HZ, oneBeside).values());
        assertArrayEquals(ends, new GapFilling(60_000).fill(SIXTY_HZ, ends).values());
    }

    @Test
    void bridgesAGapOfJustTheLongestTime() {
        double[] series = {0, 1, 2, NAN, 4, 5, 6, 7, 8};
        long spanUs = SIXTY_HZ[4] - SIXTY_HZ[2];

        assertEquals(3, new GapFilling(spanUs).fill(SIXTY_HZ, series).values()[3], 1e-3);
        assertEquals(NAN, new GapFilling(spanUs - 1).fill(SIXTY_HZ, series).values()[3]);
    }

    @Test
    void neverBridgesATouchdown() {
        double[] series = {0, 1, 2, NAN, 4, 5, 6, 7, 8};

        assertEquals(NAN, new GapFilling(60_000).fill(SIXTY_HZ, series, 40_000).values()[3]);
        assertEquals(
                3, new GapFilling(60_000).fill(SIXTY_HZ, series, 20_000, 70_000).values()[3], 1e-3);
    }

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void staysBetweenTheSamplesBesideTheGap(int seed) {
        Random random = new Random(seed);
        double[] series = random.doubles(9, -5, 5).toArray();
        series[3] = NAN;
        series[4] = NAN;
        double[] filled = new GapFilling(60_000).fill(SIXTY_HZ, series).values();

        double low = Math.min(series[2], series[5]);
        double high = Math.max(series[2], series[5]);
        for (int i = 3; i <= 4; i++) {
            assertTrue(filled[i] >= low - 1e-12 && filled[i] <= high + 1e-12);
        }
    }

    @Test
    void refusesALongestGapOfNothing() {
        assertThrows(IllegalArgumentException.class, () -> new GapFilling(0));
    }
}
