package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class ZeroLagLowPassTest {

    private static final double NAN = Double.NaN;

    @Test
    void matchesThePlainFilterOnEvenStamps() {
        long[] timesUs = LongStream.range(0, 100).map(i -> i * 20_000).toArray();
        double[] series = IntStream.range(0, 100)
                .mapToDouble(i -> Math.sin(0.3 * i) + 0.2 * (i % 3))
                .toArray();

        assertArrayEquals(
                Butterworth.forTwoPasses(8, 50).bothWays(series), new ZeroLagLowPass(8).smooth(timesUs, series), 1e-9);
    }

    @Test
    void keepsASlowMotionOnStampsThatJitterAndDropAFrame() {
        // 60 frames a second, every third one 5 ms late, frame 40 dropped; 1 Hz motion under a 10 Hz cutoff.
        long[] timesUs = LongStream.range(0, 120)
                .filter(i -> i != 40)
                .map(i -> Math.round(i * 1e6 / 60) + (i % 3 == 0 ? 5_000 : 0))
                .toArray();
        double[] slow = LongStream.of(timesUs)
                .mapToDouble(t -> Math.cos(2e-6 * Math.PI * t))
                .toArray();
        double[] smooth = new ZeroLagLowPass(10).smooth(timesUs, slow);

        for (int i = 10; i < smooth.length - 10; i++) {
            assertEquals(slow[i], smooth[i], 1e-3);
        }
    }

    @Test
    void carriesNothingAcrossAGapAndLeavesTinyRunsAlone() {
        long[] timesUs = LongStream.range(0, 12).map(i -> i * 10_000).toArray();
        double[] series = {1, 1, 1, 1, 1, NAN, 9, 7, 9, NAN, NAN, 4};

        assertArrayEquals(
                new double[] {1, 1, 1, 1, 1, NAN, 9, 7, 9, NAN, NAN, 4},
                new ZeroLagLowPass(6).smooth(timesUs, series),
                1e-12);
    }

    // Common practice, no source: for 50 / 60 frames a second no more than a quarter of the rate.
    @Test
    void lowersTheCutoffAtLowFrameRates() {
        ZeroLagLowPass filter = new ZeroLagLowPass(12);

        assertEquals(12, filter.cutoffAtHz(50));
        assertEquals(7.5, filter.cutoffAtHz(30));
    }

    @Test
    void refusesStampsThatStandStill() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new ZeroLagLowPass(6).smooth(new long[] {0, 10, 10}, new double[3]));
    }
}
