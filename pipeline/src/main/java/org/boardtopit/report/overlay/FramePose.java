package org.boardtopit.report.overlay;

import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/**
 * Where the athlete and the runway are in one frame.
 *
 * @param frameIndex number of the frame in decoder order, from 0
 * @param timestampUs presentation time of the frame
 * @param points the 33 points in the order of {@link BodyPoint}; all unknown when the athlete is not in the picture
 * @param nearSide the side of the body towards the camera
 * @param fixedToFrame map of the fixed picture onto this frame; empty when this frame could not be registered, then
 *     nothing that belongs to the runway is drawn on it
 */
public record FramePose(
        int frameIndex,
        long timestampUs,
        List<PosePoint> points,
        BodySide nearSide,
        Optional<Homography> fixedToFrame) {

    public FramePose {
        points = List.copyOf(points);
        Objects.requireNonNull(nearSide, "nearSide");
        Objects.requireNonNull(fixedToFrame, "fixedToFrame");
        if (frameIndex < 0) {
            throw new IllegalArgumentException("frameIndex counts from 0, was " + frameIndex);
        }
        if (points.size() != BodyPoint.COUNT) {
            throw new IllegalArgumentException("a pose has " + BodyPoint.COUNT + " points, was " + points.size());
        }
    }

    /** A frame without the athlete. */
    public static FramePose withoutAthlete(int frameIndex, long timestampUs, Optional<Homography> fixedToFrame) {
        List<PosePoint> none = Collections.nCopies(BodyPoint.COUNT, PosePoint.UNKNOWN);
        return new FramePose(frameIndex, timestampUs, none, BodySide.RIGHT, fixedToFrame);
    }

    public PosePoint point(BodyPoint point) {
        return points.get(point.index());
    }

    /** Place of a point in frame px, perhaps unknown. */
    public Point2 place(BodyPoint point) {
        return point(point).place();
    }

    /** Half-way between a point and its partner of the other side; unknown unless both are known. */
    public Point2 middle(BodyPoint point) {
        return place(point).plus(place(point.otherSide())).times(0.5);
    }

    /** The smallest box around all known points; empty when there are fewer than two. */
    public Optional<Box> bounds() {
        List<Point2> known =
                points.stream().filter(PosePoint::isKnown).map(PosePoint::place).toList();
        return known.size() < 2 ? Optional.empty() : Optional.of(Box.around(known));
    }
}
