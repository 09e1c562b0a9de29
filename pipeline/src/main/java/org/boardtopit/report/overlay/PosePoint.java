package org.boardtopit.report.overlay;

import org.boardtopit.signal.Point2;

/**
 * One body point in one frame.
 *
 * @param place frame px; {@link Point2#UNKNOWN} when the point was not found
 * @param sdPx standard deviation of the place, at least 0; NaN when unknown
 */
public record PosePoint(Point2 place, double sdPx) {

    public static final PosePoint UNKNOWN = new PosePoint(Point2.UNKNOWN, Double.NaN);

    public PosePoint {
        if (sdPx < 0) {
            throw new IllegalArgumentException("sdPx must not be negative, was " + sdPx);
        }
    }

    public boolean isKnown() {
        return place.isKnown();
    }
}
