package org.boardtopit.video;

import java.util.Arrays;
import java.util.OptionalLong;

/**
 * How the pictures of a clip follow one another, from their stamps.
 *
 * @param pictures how many stamps there are
 * @param spanUs from the first to the last
 * @param fps pictures a second: of a steady clip over the usual steps, so that a lost picture does not count, of one whose rate
 *     varies over all; NaN with fewer than two
 * @param usualStepUs median of the times between neighbours; empty with fewer than two
 * @param longestStepUs the longest of them; empty with fewer than two
 * @param unevenShare 0 to 1, of the steps that are not the usual one: off by more than a tenth of it and by more than the
 *     millisecond to which some containers round
 */
public record FrameTimes(
        long pictures,
        long spanUs,
        double fps,
        OptionalLong usualStepUs,
        OptionalLong longestStepUs,
        double unevenShare) {
    private static final double USUAL_JITTER = 0.1;
    private static final long ROUNDING_US = 1000;

    /** Above this share a clip is called one of variable frame rate; single lost pictures stay below (a first guess). */
    private static final double VARIABLE_SHARE = 0.05;

    public FrameTimes {
        if (pictures < 0 || !(unevenShare >= 0 && unevenShare <= 1)) {
            throw new IllegalArgumentException(
                    "frame times need pictures and a share of 0 to 1, was " + pictures + ", " + unevenShare);
        }
    }

    /** From stamps in any order, as decoders want pictures in another order than they are shown. */
    public static FrameTimes of(long[] stampsUs) {
        long[] sorted = stampsUs.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        if (n < 2) {
            return new FrameTimes(n, 0, Double.NaN, OptionalLong.empty(), OptionalLong.empty(), 0);
        }
        long[] steps = new long[n - 1];
        for (int i = 0; i < n - 1; i++) {
            steps[i] = sorted[i + 1] - sorted[i];
        }
        Arrays.sort(steps);
        long usual = steps[(n - 1) / 2];
        double least = Math.max(USUAL_JITTER * usual, ROUNDING_US);
        long[] even =
                Arrays.stream(steps).filter(s -> Math.abs(s - usual) <= least).toArray();
        double unevenShare = 1 - (double) even.length / steps.length;
        long[] counted = unevenShare > VARIABLE_SHARE ? steps : even;
        long countedUs = Arrays.stream(counted).sum();
        return new FrameTimes(
                n,
                sorted[n - 1] - sorted[0],
                countedUs > 0 ? counted.length * 1e6 / countedUs : Double.NaN,
                OptionalLong.of(usual),
                OptionalLong.of(steps[n - 2]),
                unevenShare);
    }

    /** True when the time between pictures changes again and again. Harmless: every time comes from its own stamp. */
    public boolean isVariable() {
        return unevenShare > VARIABLE_SHARE;
    }
}
