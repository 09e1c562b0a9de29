package org.boardtopit.report.overlay;

import java.util.Locale;
import java.util.Objects;

/**
 * One phase on the time axis.
 *
 * @param startUs inclusive
 * @param endUs exclusive, after startUs
 * @param note what to say beside the name, such as {@code "6.01 m  36.2 %"}; may be empty
 */
public record PhaseSpan(Name name, long startUs, long endUs, String note) {

    /** The phases of a triple jump in their order. */
    public enum Name {
        APPROACH,
        HOP,
        STEP,
        JUMP,
        LANDING;

        public String text() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public PhaseSpan {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(note, "note");
        if (endUs <= startUs) {
            throw new IllegalArgumentException("endUs must be after startUs, was " + endUs + " <= " + startUs);
        }
    }

    public boolean contains(long timeUs) {
        return timeUs >= startUs && timeUs < endUs;
    }
}
