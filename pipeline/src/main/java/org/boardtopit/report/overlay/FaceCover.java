package org.boardtopit.report.overlay;

import org.boardtopit.signal.Point2;

/**
 * A disc that hides a face in one frame.
 *
 * @param centre frame px; may lie outside the picture
 * @param radiusPx above 0
 */
public record FaceCover(Point2 centre, double radiusPx) {
    public FaceCover {
        if (!centre.isKnown() || !(radiusPx > 0) || !Double.isFinite(radiusPx)) {
            throw new IllegalArgumentException("a cover needs a place and a radius, was " + centre + ", " + radiusPx);
        }
    }
}
