package org.boardtopit.frontal;

import java.util.Optional;
import org.boardtopit.contacts.Foot;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.signal.LocalRegression;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * The network's points of a clip from in front or behind, with left and right put right.
 *
 * <p>From in front or behind, the left shoulder of somebody who runs along the runway is always to the left of the right one,
 * and so are the hips: where the network has them the other way round it took the one for the other (a twist past 90 degrees
 * does not happen). Legs may cross, so a foot that stands is told from the other by being down.
 */
final class FrontalTrack {
    /** Half the reach of the smoothing of the trunk's length, which changes with the distance only. */
    private static final double SIZE_REACH_S = 0.4;
    /** A line much shorter than usual for the body's size is seen along itself, or one end is wrong. */
    private static final double LEAST_WIDTH = 0.5;

    /**
     * By how much a knee that is higher by a trunk's length tilts the hips in the network's eyes, in degrees: a constant of the
     * network, measured over the 240 frames of our clip from in front (10.7; 3.1 degrees a frame come down to 1.8).
     */
    private static final double HIP_RISE_DEG = 10.7;

    private final ClipLandmarks clip;
    private final FrontalPlane plane;
    private final double[] timesS;
    private final double[] trunkPx;

    FrontalTrack(ClipLandmarks clip, FrontalPlane plane) {
        this.clip = clip;
        this.plane = plane;
        int n = clip.frameCount();
        this.timesS = new double[n];
        double[] trunk = new double[n];
        for (int f = 0; f < n; f++) {
            timesS[f] = clip.timeS(f);
            trunk[f] = fixedMiddle(f, BodyPoint.LEFT_SHOULDER).distanceTo(fixedMiddle(f, BodyPoint.LEFT_HIP));
        }
        LocalRegression smooth = new LocalRegression(timesS, trunk, SIZE_REACH_S, 1);
        this.trunkPx = new double[n];
        for (int f = 0; f < n; f++) {
            trunkPx[f] = isSeen(f) ? smooth.at(timesS[f]) : Double.NaN;
        }
    }

    int frameCount() {
        return timesS.length;
    }

    double timeS(int frame) {
        return timesS[frame];
    }

    double frameStepS() {
        return clip.frameStepS();
    }

    boolean isSeen(int frame) {
        return clip.background().frame(frame).registered()
                && clip.poses().at(frame).isPresent();
    }

    /** Smoothed length of the trunk in the fixed picture: how near the athlete is; NaN where not seen. */
    double trunkPx(int frame) {
        return trunkPx[frame];
    }

    /** The middle of the hips in the fixed picture. */
    Point2 hipsFixed(int frame) {
        return fixedMiddle(frame, BodyPoint.LEFT_HIP);
    }

    private Point2 fixedMiddle(int frame, BodyPoint left) {
        return fixed(frame, left).plus(fixed(frame, left.otherSide())).times(0.5);
    }

    private Point2 fixed(int frame, BodyPoint point) {
        Point2 px = px(frame, point);
        return px.isKnown() ? clip.background().toFixed(frame, px) : Point2.UNKNOWN;
    }

    private Point2 px(int frame, BodyPoint point) {
        Optional<FramePose> pose = isSeen(frame) ? clip.poses().at(frame) : Optional.empty();
        return pose.map(p -> p.place(point, 0)).orElse(Point2.UNKNOWN);
    }

    /**
     * Tilt of the line through a pair of points in every frame, in degrees against the horizontal, + the left one high; NaN
     * where it cannot be read.
     *
     * @param left the left one of the pair
     */
    double[] tiltDeg(BodyPoint left, Depth depth) {
        double[] tilt = new double[frameCount()];
        double[] width = new double[frameCount()];
        for (int f = 0; f < tilt.length; f++) {
            Point2 line = line(f, left, depth);
            tilt[f] = Math.toDegrees(Math.atan2(line.y(), line.x()));
            double unit = plane.isMetric() ? 1 : trunkPx[f];
            width[f] = line.length() / unit;
        }
        double least = LEAST_WIDTH * OrderStatistics.median(width);
        for (int f = 0; f < tilt.length; f++) {
            tilt[f] = width[f] >= least ? tilt[f] : Double.NaN;
        }
        return tilt;
    }

    /** From the right one of a pair to the left one; exchanged where the network has them the wrong way round. */
    private Point2 line(int frame, BodyPoint left, Depth depth) {
        BodyPoint right = left.otherSide();
        boolean exchanged = isExchanged(frame, left, depth);
        return place(frame, exchanged ? right : left, left, depth)
                .minus(place(frame, exchanged ? left : right, right, depth));
    }

    private Point2 place(int frame, BodyPoint seenAs, BodyPoint meant, Depth depth) {
        return plane.place(frame, px(frame, seenAs), depth.alongM(frame, meant));
    }

    /**
     * Tilt of the hips, as {@link #tiltDeg}, less what a raised knee does to it: the network follows the crease of the hip, which
     * goes up with the thigh, and draws that hip too high.
     */
    double[] hipTiltDeg(Depth depth) {
        double[] tilt = tiltDeg(BodyPoint.LEFT_HIP, depth);
        for (int f = 0; f < tilt.length; f++) {
            tilt[f] -= HIP_RISE_DEG * leftKneeAbove(f, depth) / trunkPx[f];
        }
        return tilt;
    }

    /** By how many pixels of the fixed picture the left knee is higher than the right one. */
    private double leftKneeAbove(int frame, Depth depth) {
        double leftBelow = fixed(frame, BodyPoint.LEFT_KNEE)
                .minus(fixed(frame, BodyPoint.RIGHT_KNEE))
                .y();
        return isExchanged(frame, BodyPoint.LEFT_HIP, depth) ? leftBelow : -leftBelow;
    }

    private boolean isExchanged(int frame, BodyPoint left, Depth depth) {
        BodyPoint right = left.otherSide();
        return place(frame, left, left, depth).x()
                < place(frame, right, right, depth).x();
    }

    /** Lean of the trunk in every frame, in degrees from the vertical, + to the athlete's left; NaN where not seen. */
    double[] leanDeg(Depth depth) {
        double[] lean = new double[frameCount()];
        for (int f = 0; f < lean.length; f++) {
            Point2 trunk = middle(f, BodyPoint.LEFT_SHOULDER, depth).minus(middle(f, BodyPoint.LEFT_HIP, depth));
            lean[f] = Math.toDegrees(Math.atan2(trunk.x(), trunk.y()));
        }
        return lean;
    }

    private Point2 middle(int frame, BodyPoint left, Depth depth) {
        Point2 sum = place(frame, left, left, depth).plus(place(frame, left.otherSide(), left.otherSide(), depth));
        return sum.times(0.5);
    }

    /**
     * The middle of a foot across the runway, in metres, in one frame of its support: of toe and heel. Unknown without marks.
     *
     * @param foot the one that stands; BOTH for the middle of both
     * @param toeAlongM where its toe stands
     * @param heelAlongM where its heel stands
     */
    double footAcrossM(int frame, Foot foot, double toeAlongM, double heelAlongM) {
        if (!plane.isMetric()) {
            return Double.NaN;
        }
        Point2 left = foot(frame, Foot.LEFT, toeAlongM, heelAlongM);
        Point2 right = foot(frame, Foot.RIGHT, toeAlongM, heelAlongM);
        if (foot == Foot.BOTH) {
            return (left.x() + right.x()) / 2;
        }
        return left.y() <= right.y() ? left.x() : right.x();
    }

    /** Across, and the height of the lower one of toe and heel. */
    private Point2 foot(int frame, Foot foot, double toeAlongM, double heelAlongM) {
        Point2 toe = plane.place(frame, px(frame, foot.toe()), toeAlongM);
        Point2 heel = plane.place(frame, px(frame, foot.heel()), heelAlongM);
        return new Point2((toe.x() + heel.x()) / 2, Math.min(toe.y(), heel.y()));
    }

    /** Where the points lie along the runway; which frame and which point. */
    @FunctionalInterface
    interface Depth {
        double alongM(int frame, BodyPoint point);
    }
}
