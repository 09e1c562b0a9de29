package org.boardtopit.observations;

/**
 * Between which values nothing is remarked; a limit that is NaN is open.
 */
public record Guide(double low, double high) {

    public Guide {
        if (Double.isNaN(low) && Double.isNaN(high)) {
            throw new IllegalArgumentException("a guide has a low or a high limit, or both");
        }
        if (low > high) {
            throw new IllegalArgumentException("a guide runs from low to high, was %s to %s".formatted(low, high));
        }
    }

    /** The narrowest guide that holds both. */
    Guide joined(Guide other) {
        return new Guide(lower(low, other.low), higher(high, other.high));
    }

    private static double lower(double a, double b) {
        return Double.isNaN(a) || Double.isNaN(b) ? Double.NaN : Math.min(a, b);
    }

    private static double higher(double a, double b) {
        return Double.isNaN(a) || Double.isNaN(b) ? Double.NaN : Math.max(a, b);
    }

    /** By how much an interval as a whole lies below the low limit; 0 when it does not. */
    double below(Interval interval) {
        return Double.isNaN(low) ? 0 : Math.max(0, low - interval.high());
    }

    /** By how much an interval as a whole lies above the high limit; 0 when it does not. */
    double above(Interval interval) {
        return Double.isNaN(high) ? 0 : Math.max(0, interval.low() - high);
    }

    /** How far an interval lies inside, from its nearer limit; negative when it reaches out. */
    double inside(Interval interval) {
        double fromLow = Double.isNaN(low) ? Double.POSITIVE_INFINITY : interval.low() - low;
        double fromHigh = Double.isNaN(high) ? Double.POSITIVE_INFINITY : high - interval.high();
        return Math.min(fromLow, fromHigh);
    }
}
