package org.boardtopit.measures;

/**
 * A value with its standard deviation, both NaN when not measurable.
 */
public record Reading(double value, double sd) {
    /** Not measurable. */
    public static final Reading UNKNOWN = new Reading(Double.NaN, Double.NaN);

    /** This when the condition holds, else not measurable. */
    Reading onlyIf(boolean condition) {
        return condition ? this : UNKNOWN;
    }

    public boolean isKnown() {
        return Double.isFinite(value);
    }
}
