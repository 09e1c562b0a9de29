package org.boardtopit.measures;

import java.util.Arrays;

/**
 * Which phase leads and by how much.
 *
 * <p>Two-point rule (Hay 1992, J Sports Sci 10:343-378; Hay 1999, Track Technique, "Effort distribution in the triple
 * jump"): hop- or jump-dominated when that phase's share is at least two percentage points above the next largest, balanced
 * otherwise. Shares are taken unrounded: 36.0 against 34.0 in print may be 2.01 or 1.96.
 *
 * @param kind the class
 * @param leadPct largest share less the next largest, in points, 0 or more
 */
public record Effort(EffortClass kind, double leadPct) {

    /** Points by which a phase has to lead. */
    public static final double LEADING_POINTS = 2;

    /** So that shares that are exactly two points apart on paper are so in binary: a billionth of a point. */
    private static final double BINARY_ERROR_POINTS = 1e-9;

    public Effort {
        if (!(leadPct >= 0)) {
            throw new IllegalArgumentException("the lead is 0 points or more, was " + leadPct);
        }
    }

    /**
     * Classifies unrounded shares in per cent.
     *
     * @throws IllegalArgumentException when a share is unknown or negative
     */
    public static Effort of(double hopPct, double stepPct, double jumpPct) {
        if (!(hopPct >= 0 && stepPct >= 0 && jumpPct >= 0)) {
            throw new IllegalArgumentException(
                    "three shares of 0 or more are needed, was %s, %s, %s".formatted(hopPct, stepPct, jumpPct));
        }
        double[] sorted = {hopPct, stepPct, jumpPct};
        Arrays.sort(sorted);
        double lead = sorted[2] - sorted[1];
        if (lead < LEADING_POINTS - BINARY_ERROR_POINTS) {
            return new Effort(EffortClass.BALANCED, lead);
        }
        if (hopPct == sorted[2]) {
            return new Effort(EffortClass.HOP_DOMINATED, lead);
        }
        return new Effort(jumpPct == sorted[2] ? EffortClass.JUMP_DOMINATED : EffortClass.STEP_LARGEST, lead);
    }

    /** True when the lead is further from the two points than twice its standard deviation, in points: the class holds. */
    public boolean isCertain(double leadSdPct) {
        return Math.abs(leadPct - LEADING_POINTS) > 2 * leadSdPct;
    }
}
