package org.boardtopit.measures;

/**
 * A value with its standard deviation, both NaN when not measurable.
 *
 * @param atS seconds from the first frame at which a picture shows it; NaN when it belongs to no instant of its own, as a
 *     duration does
 */
public record Reading(double value, double sd, double atS) {
    /** Not measurable. */
    public static final Reading UNKNOWN = new Reading(Double.NaN, Double.NaN);

    /** A value without an instant of its own. */
    public Reading(double value, double sd) {
        this(value, sd, Double.NaN);
    }

    /** This, seen at an instant. */
    Reading at(double seconds) {
        return new Reading(value, sd, seconds);
    }

    /** This when the condition holds, else not measurable. */
    Reading onlyIf(boolean condition) {
        return condition ? this : UNKNOWN;
    }

    /** This less another whose error is independent, at the instant of this. */
    Reading minus(Reading other) {
        return new Reading(value - other.value, Math.hypot(sd, other.sd), atS);
    }

    public boolean isKnown() {
        return Double.isFinite(value);
    }
}
