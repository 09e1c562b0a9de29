package org.boardtopit.contacts;

/**
 * Of two heels side by side the one that is nearer to the board.
 *
 * <p>The nearer of two noisy places lies too near on average, so the distance between them is shrunk by the share of it that is
 * real (the mean of a normal posterior): d a^2 / (a^2 + n^2), a being how far heels stand apart in the sand and n the noise of that.
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
        double real = apart * apart / (apart * apart + noise * noise);
        double place = (left + right) / 2 - real * Math.abs(left - right) / 2;
        return new RearHeel(place, Math.hypot(own, Math.sqrt(real) * noise) / 2);
    }
}
