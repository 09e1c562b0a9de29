package org.boardtopit.report.overlay;

import java.util.Objects;
import org.boardtopit.phases.PhaseName;

/**
 * One phase on the time axis.
 *
 * @param name decides on the colour
 * @param text what it is called, such as {@code "hop 2"}
 * @param startUs inclusive
 * @param endUs exclusive, after startUs
 * @param note what to say beside the text, such as {@code "6.01 m  36.2 %"}; may be empty
 */
public record PhaseSpan(PhaseName name, String text, long startUs, long endUs, String note) {

    public PhaseSpan {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(text, "text");
        Objects.requireNonNull(note, "note");
        if (endUs <= startUs) {
            throw new IllegalArgumentException("endUs must be after startUs, was " + endUs + " <= " + startUs);
        }
    }

    /** Called by its name. */
    public PhaseSpan(PhaseName name, long startUs, long endUs, String note) {
        this(name, name.label(), startUs, endUs, note);
    }

    public boolean contains(long timeUs) {
        return timeUs >= startUs && timeUs < endUs;
    }
}
