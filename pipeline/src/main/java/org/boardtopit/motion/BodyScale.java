package org.boardtopit.motion;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * How tall the athlete is in the fixed picture, from the lengths of trunk, thigh and shank.
 *
 * <p>Their sum is {@value #SHARE} of the standing height (0.288 + 0.245 + 0.246: Winter's table after Drillis and Contini, from
 * memory). A side view shortens each a little in most frames, so the upper quartile over the clip is taken. Good to 4 or 5 %.
 */
public final class BodyScale {
    private static final double SHARE = 0.779;

    private BodyScale() {}

    /** Standing height in pixels of the fixed picture; NaN when the athlete is hardly seen. */
    public static double standingHeightPx(ClipLandmarks clip) {
        List<Double> sums = new ArrayList<>();
        for (int f = 0; f < clip.frameCount(); f++) {
            int frame = f;
            clip.poses()
                    .at(f)
                    .filter(p -> clip.background().frame(frame).registered())
                    .ifPresent(pose -> {
                        double left = chain(
                                pose,
                                clip.background(),
                                frame,
                                BodyPoint.LEFT_SHOULDER,
                                BodyPoint.LEFT_HIP,
                                BodyPoint.LEFT_KNEE,
                                BodyPoint.LEFT_ANKLE);
                        double right = chain(
                                pose,
                                clip.background(),
                                frame,
                                BodyPoint.RIGHT_SHOULDER,
                                BodyPoint.RIGHT_HIP,
                                BodyPoint.RIGHT_KNEE,
                                BodyPoint.RIGHT_ANKLE);
                        if (Double.isFinite(left) && Double.isFinite(right)) {
                            sums.add((left + right) / 2);
                        }
                    });
        }
        return sums.size() < 5
                ? Double.NaN
                : OrderStatistics.quantile(
                                0.75, sums.stream().mapToDouble(s -> s).toArray())
                        / SHARE;
    }

    private static double chain(FramePose pose, BackgroundMotion background, int frame, BodyPoint... points) {
        double length = 0;
        Point2 last = null;
        for (BodyPoint point : points) {
            Point2 fixed = background.toFixed(frame, pose.place(point, 0));
            length += last == null ? 0 : fixed.distanceTo(last);
            last = fixed;
        }
        return length;
    }
}
