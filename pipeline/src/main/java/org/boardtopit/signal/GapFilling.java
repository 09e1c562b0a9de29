package org.boardtopit.signal;

/**
 * Fills short gaps by a cubic that never overshoots the samples beside the gap (PCHIP, Fritsch and Carlson 1980, SIAM J.
 * Numer. Anal. 17:238-246, with the weighted harmonic mean of slopes).
 *
 * <p>A gap is filled when both sides have two known samples next to it, when the time from the last known sample to the
 * next is no more than the longest gap, and when no instant lies inside it that must not be crossed: at a touchdown the
 * velocity jumps, and a smooth curve across it would invent motion. There is no extrapolation at the ends.
 *
 * <p>No overshoot was chosen over a better guess at peaks (Akima) because a foot that stands still must not be given a swing.
 */
public final class GapFilling {

    private final long longestGapUs;

    /** Longest time without a sample that is bridged, known sample to known sample, above 0 (common practice 50-100 ms). */
    public GapFilling(long longestGapUs) {
        if (longestGapUs <= 0) {
            throw new IllegalArgumentException("the longest gap must be above 0 us, was " + longestGapUs);
        }
        this.longestGapUs = longestGapUs;
    }

    /**
     * Fills what may be filled and leaves the rest unknown.
     *
     * @param timesUs rising
     * @param values one per stamp, NaN where unknown
     * @param neverAcrossUs instants (touchdowns, toe-offs) that no filled gap may contain, in any order
     */
    public FilledSeries fill(long[] timesUs, double[] values, long... neverAcrossUs) {
        Stamps.check(timesUs, values);
        double[] filledValues = values.clone();
        boolean[] filled = new boolean[values.length];
        for (int before = 0; before < values.length - 1; before++) {
            if (Double.isNaN(values[before]) || !Double.isNaN(values[before + 1])) {
                continue;
            }
            int after = nextKnown(values, before + 1);
            if (isFillable(timesUs, values, before, after, neverAcrossUs)) {
                CubicPiece bridge = bridge(timesUs, values, before, after);
                for (int i = before + 1; i < after; i++) {
                    filledValues[i] = bridge.at(Stamps.secondsBetween(timesUs[before], timesUs[i]));
                    filled[i] = true;
                }
            }
        }
        return new FilledSeries(filledValues, filled);
    }

    private static int nextKnown(double[] values, int from) {
        int next = from;
        while (next < values.length && Double.isNaN(values[next])) {
            next++;
        }
        return next;
    }

    private boolean isFillable(long[] timesUs, double[] values, int before, int after, long[] neverAcrossUs) {
        boolean twoOnEachSide = before >= 1
                && after + 1 < values.length
                && !Double.isNaN(values[before - 1])
                && !Double.isNaN(values[after + 1]);
        if (!twoOnEachSide || timesUs[after] - timesUs[before] > longestGapUs) {
            return false;
        }
        for (long instantUs : neverAcrossUs) {
            if (instantUs > timesUs[before] && instantUs < timesUs[after]) {
                return false;
            }
        }
        return true;
    }

    private static CubicPiece bridge(long[] timesUs, double[] values, int before, int after) {
        double hIn = Stamps.secondsBetween(timesUs[before - 1], timesUs[before]);
        double hGap = Stamps.secondsBetween(timesUs[before], timesUs[after]);
        double hOut = Stamps.secondsBetween(timesUs[after], timesUs[after + 1]);
        double slopeIn = (values[before] - values[before - 1]) / hIn;
        double slopeGap = (values[after] - values[before]) / hGap;
        double slopeOut = (values[after + 1] - values[after]) / hOut;
        return new CubicPiece(
                0,
                values[before],
                knotSlope(hIn, slopeIn, hGap, slopeGap),
                hGap,
                values[after],
                knotSlope(hGap, slopeGap, hOut, slopeOut));
    }

    private static double knotSlope(double h0, double slope0, double h1, double slope1) {
        if (slope0 * slope1 <= 0) {
            return 0;
        }
        double w0 = 2 * h1 + h0;
        double w1 = h1 + 2 * h0;
        return (w0 + w1) / (w0 / slope0 + w1 / slope1);
    }
}
