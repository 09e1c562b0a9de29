package org.boardtopit.signal;

/**
 * By how much the standard deviation of samples must be enlarged so that they count as independent ones, when their errors
 * last for some samples.
 */
public final class LastingErrors {
    private LastingErrors() {}

    /**
     * For errors that stay as they are for a while and are then forgotten: never less than 1.
     *
     * @param memoryS how long they stay
     * @param stepS time between samples
     */
    public static double whileTheyStay(double memoryS, double stepS) {
        return Math.sqrt(Math.max(1, memoryS / stepS));
    }

    /**
     * For errors of which a share s of the variance fades exponentially and the rest is independent: sqrt(1 - s + s (1 + r) /
     * (1 - r)), r = exp(-step / memory), from the sum of a long series' correlations.
     *
     * @param share 0 to 1
     */
    public static double asTheyFade(double memoryS, double stepS, double share) {
        double r = Math.exp(-stepS / memoryS);
        return Math.sqrt(1 - share + share * (1 + r) / (1 - r));
    }
}
