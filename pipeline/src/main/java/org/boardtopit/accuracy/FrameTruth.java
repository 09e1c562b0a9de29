package org.boardtopit.accuracy;

import java.util.EnumMap;
import java.util.Map;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/**
 * The truth of one frame.
 *
 * @param timeS seconds from the first frame
 * @param points pixels of the upright frame; also outside of it
 */
record FrameTruth(
        double timeS, Part part, double comAlongM, double comAcrossM, double comUpM, Map<BodyPoint, Point2> points) {
    FrameTruth {
        Map<BodyPoint, Point2> copy = new EnumMap<>(BodyPoint.class);
        copy.putAll(points);
        points = java.util.Collections.unmodifiableMap(copy);
    }
}
