package org.boardtopit.contacts;

/**
 * Of two heels side by side the one that is nearer to the board.
 *
 * <p>The nearer of two noisy places lies too near on average, so the distance between them is shrunk by the share of it that is
 * real: d a^2 / (a^2 + n^2), the mean of a normal posterior, n being the noise. How far heels stand apart, a, is what is usual or
 * what this distance itself tells where that is more, a^2 = d^2 - n^2 (empirical Bayes; the idea: James and Stein 1961, from memory): heels that are
 * clearly apart stay so.
 *
 * @param place along the run, in the unit of the standing height
 * @param sd its standard deviation
 */
public record RearHeel(double place, double sd) {
    /** Feet land together; one is ahead of the other by a third of a shoe at times (common practice, no source). */
    private static final double APART_SD_STATURE = 0.03;
    /**
     * By how much the network parts heels that stand side by side: one leg hides the other (7 cm in clips of our footage,
     * whose heels are level, for as long as the feet stand).
     */
    private static final double NOISE_SD_STATURE = 0.04;

    /** From the places of both and their standard deviations; unknown (NaN) when one is. */
    public static RearHeel of(double left, double leftSd, double right, double rightSd, double stature) {
        double apart = APART_SD_STATURE * stature;
        double own = Math.hypot(leftSd, rightSd);
        double noise = Math.hypot(NOISE_SD_STATURE * stature, own);
        double told = (left - right) * (left - right) - noise * noise;
        double variance = Math.max(apart * apart, told);
        double real = variance / (variance + noise * noise);
        double place = (left + right) / 2 - real * Math.abs(left - right) / 2;
        return new RearHeel(place, Math.hypot(own, Math.sqrt(real) * noise) / 2);
    }
}
