package org.boardtopit.season;

/**
 * A number and how well it is known.
 *
 * @param sd standard deviation of its error, in the number's unit; not negative
 */
public record Estimate(double value, double sd) {
    public Estimate {
        if (!Double.isFinite(value) || !(sd >= 0)) {
            throw new IllegalArgumentException("an estimate is a number with an error, was " + value + " and " + sd);
        }
    }
}
