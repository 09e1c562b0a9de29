package org.boardtopit.cli;

import java.util.Locale;

/** Spans of time as a person says them. */
final class Spoken {
    private Spoken() {}

    /** Such as 7.4 s, 48 s, 12 min 05 s or 2 h 10 min. */
    static String duration(double seconds) {
        return seconds < 9.95 ? String.format(Locale.ROOT, "%.1f s", seconds) : forecast(seconds);
    }

    /** The same to the second: a forecast is no more exact than that. */
    static String forecast(double seconds) {
        long whole = Math.round(seconds);
        if (whole < 60) {
            return whole + " s";
        }
        if (whole < 3600) {
            return String.format(Locale.ROOT, "%d min %02d s", whole / 60, whole % 60);
        }
        long minutes = Math.round(seconds / 60);
        return String.format(Locale.ROOT, "%d h %02d min", minutes / 60, minutes % 60);
    }
}
