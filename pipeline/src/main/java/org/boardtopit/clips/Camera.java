package org.boardtopit.clips;

import java.util.Optional;

/**
 * A camera position of a competition.
 *
 * @param name as the sheet's camera column has it
 * @param view from where it sees the runway
 * @param reference its picture with marks; without one there are no metres from marks
 */
public record Camera(String name, View view, Optional<ReferencePicture> reference) {

    /** From where a camera sees the athlete. */
    public enum View {
        SIDE,
        FRONT,
        REAR
    }

    public Camera {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a camera needs a name");
        }
    }
}
