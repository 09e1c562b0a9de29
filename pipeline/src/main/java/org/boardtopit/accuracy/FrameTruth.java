package org.boardtopit.accuracy;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/**
 * The truth of one frame.
 *
 * @param timeS seconds from the first frame
 * @param points pixels of the upright frame; also outside of it
 * @param places the same points in metres, along the runway and up; empty when the file has none
 */
record FrameTruth(
        double timeS,
        Part part,
        double comAlongM,
        double comAcrossM,
        double comUpM,
        Map<BodyPoint, Point2> points,
        Map<BodyPoint, Point2> places) {
    FrameTruth {
        points = copy(points);
        places = copy(places);
    }

    private static Map<BodyPoint, Point2> copy(Map<BodyPoint, Point2> points) {
        Map<BodyPoint, Point2> copy = new EnumMap<>(BodyPoint.class);
        copy.putAll(points);
        return Collections.unmodifiableMap(copy);
    }
}
