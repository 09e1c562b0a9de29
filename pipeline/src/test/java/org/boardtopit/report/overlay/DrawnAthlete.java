package org.boardtopit.report.overlay;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/** A stick figure for tests: upright, 100 units tall, the near leg a little ahead of the far one. */
public final class DrawnAthlete {
    private DrawnAthlete() {}

    /** The figure with its feet at (x, y); the right side is the near one. */
    public static FramePose standing(int frameIndex, long timestampUs, double x, double y, double heightPx) {
        return standing(frameIndex, timestampUs, x, y, heightPx, Homography.IDENTITY, 0);
    }

    public static FramePose standing(
            int frameIndex,
            long timestampUs,
            double x,
            double y,
            double heightPx,
            Homography fixedToFrame,
            double sdPx) {
        PosePoint[] points = new PosePoint[BodyPoint.COUNT];
        Arrays.fill(points, PosePoint.UNKNOWN);
        for (BodySide side : BodySide.values()) {
            double ahead = side == BodySide.RIGHT ? 0.1 : -0.1;
            put(points, side.of(BodyPoint.LEFT_EAR), x, y - 0.94 * heightPx, sdPx);
            put(points, side.of(BodyPoint.LEFT_SHOULDER), x, y - 0.8 * heightPx, sdPx);
            put(points, side.of(BodyPoint.LEFT_ELBOW), x + ahead * heightPx, y - 0.65 * heightPx, sdPx);
            put(points, side.of(BodyPoint.LEFT_WRIST), x + 2 * ahead * heightPx, y - 0.6 * heightPx, sdPx);
            put(points, side.of(BodyPoint.LEFT_HIP), x, y - 0.5 * heightPx, sdPx);
            put(points, side.of(BodyPoint.LEFT_KNEE), x + ahead * heightPx, y - 0.27 * heightPx, sdPx);
            put(points, side.of(BodyPoint.LEFT_ANKLE), x + 1.5 * ahead * heightPx, y - 0.04 * heightPx, sdPx);
            put(points, side.of(BodyPoint.LEFT_HEEL), x + 1.4 * ahead * heightPx, y, sdPx);
            put(points, side.of(BodyPoint.LEFT_TOE), x + 1.5 * ahead * heightPx + 0.1 * heightPx, y, sdPx);
        }
        return new FramePose(frameIndex, timestampUs, List.of(points), BodySide.RIGHT, Optional.of(fixedToFrame));
    }

    private static void put(PosePoint[] points, BodyPoint point, double x, double y, double sdPx) {
        points[point.index()] = new PosePoint(new Point2(x, y), sdPx);
    }
}
