package org.boardtopit.clips;

import java.util.Optional;

/**
 * A camera position of a competition.
 *
 * @param name as the sheet's camera column has it
 * @param view from where it sees the runway
 * @param distortionK1 how much its lens bends the picture: the share by which a point at the middle of a short edge has to be
 *     moved outwards to straighten lines; 0 for a lens that does not bend, docs/inputs.md has the formula
 * @param reference its picture with marks; without one there are no metres from marks
 */
public record Camera(String name, View view, double distortionK1, Optional<ReferencePicture> reference) {
    /** A stronger cushion shows two places at one pixel; no lens of a camera comes near. */
    public static final double LEAST_DISTORTION_K1 = -0.15;

    /** More than the widest of action cameras. */
    public static final double MOST_DISTORTION_K1 = 0.3;

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
        if (!(distortionK1 >= LEAST_DISTORTION_K1 && distortionK1 <= MOST_DISTORTION_K1)) {
            throw new IllegalArgumentException("distortionK1 must be from " + LEAST_DISTORTION_K1 + " to "
                    + MOST_DISTORTION_K1 + ", was " + distortionK1);
        }
    }
}
