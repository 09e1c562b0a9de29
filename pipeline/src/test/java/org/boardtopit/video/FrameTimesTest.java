package org.boardtopit.video;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class FrameTimesTest {

    @Test
    void aSteadyRateIsOneLessPictureOverTheSpan() {
        FrameTimes times = FrameTimes.of(new long[] {0, 20_000, 40_000, 60_000});
        assertEquals(50, times.fps(), 1e-9); // CALC: 3 steps in 0.06 s
        assertEquals(20_000, times.usualStepUs().orElseThrow());
        assertFalse(times.isVariable());
    }

    @Test
    void theOrderInTheFileDoesNotMatter() {
        assertEquals(
                FrameTimes.of(new long[] {0, 40_000, 80_000, 120_000}),
                FrameTimes.of(new long[] {0, 120_000, 40_000, 80_000}));
    }

    /** Matroska rounds to milliseconds: 60 frames a second are steps of 16 and 17 (CALC). */
    @Test
    void stampsRoundedToMillisecondsAreSteady() {
        long[] stamps = LongStream.range(0, 120)
                .map(i -> Math.round(i * 1000 / 60.0) * 1000)
                .toArray();
        FrameTimes times = FrameTimes.of(stamps);
        assertEquals(60, times.fps(), 0.02);
        assertFalse(times.isVariable());
    }

    @Test
    void aRateThatFollowsTheLightIsVariable() {
        long[] stamps = LongStream.range(0, 60)
                .map(i -> i < 30 ? i * 16_667 : 30 * 16_667 + (i - 30) * 33_333)
                .toArray();
        assertTrue(FrameTimes.of(stamps).isVariable());
    }

    @Test
    void oneLostPictureIsAHoleAndNotAVariableRate() {
        long[] stamps = LongStream.range(0, 100)
                .filter(i -> i != 40)
                .map(i -> i * 20_000)
                .toArray();
        FrameTimes times = FrameTimes.of(stamps);
        assertFalse(times.isVariable());
        assertEquals(50, times.fps(), 1e-9);
        assertEquals(40_000, times.longestStepUs().orElseThrow());
    }

    @Test
    void onePictureHasNoRate() {
        FrameTimes times = FrameTimes.of(new long[] {7});
        assertTrue(Double.isNaN(times.fps()));
        assertTrue(times.usualStepUs().isEmpty());
    }
}
