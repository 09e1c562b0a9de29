package org.boardtopit.motion;

import java.util.Optional;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.signal.Point2;

/** The network's points in the plane of the run (along, height; metres or nominal metres), before anything is repaired. */
final class LandmarkPlane {
    /**
     * The network's errors are larger than its standard deviations say: error over sd has median 1.24 on single frames of
     * our footage against 1.18 of a Gaussian, and a long tail (90th percentile 2.96 against 2.15; measured).
     */
    private static final double SD_FACTOR = 1.2;

    /**
     * Hips nearer than this to the left or right edge, in sides of the network's square, leave a leg outside: 0.23 sides are
     * 0.3 standing heights, as far as the feet of a runner reach before and behind the hips. Measured on clips that the
     * athlete enters: nearer than 0.2 standing heights the legs are off by 20 % of the height, ten of their standard
     * deviations; from 0.3 on by less than 2 %, one standard deviation.
     */
    private static final double EDGE_SQUARES = 0.23;

    private final ClipLandmarks clip;
    private final RunwayView view;
    private final double statureM;
    private final double[] metresPerPixel;

    LandmarkPlane(ClipLandmarks clip, RunwayView view, double statureM) {
        this.clip = clip;
        this.view = view;
        this.statureM = statureM;
        this.metresPerPixel = new double[clip.frameCount()];
        for (int f = 0; f < metresPerPixel.length; f++) {
            int frame = f;
            metresPerPixel[f] = clip.poses()
                    .at(f)
                    .map(p -> new Point2(p.square().centreXPx(), p.square().centreYPx()))
                    .map(centre -> view.metresPerPixel(frame, centre))
                    .orElse(Double.NaN);
        }
    }

    boolean isSeen(int frame) {
        return clip.background().frame(frame).registered()
                && clip.poses().at(frame).filter(this::isWithinThePicture).isPresent();
    }

    /** Half a body at the edge of the picture is no body: the network then draws legs where there are none. */
    private boolean isWithinThePicture(FramePose pose) {
        double x = pose.square().centreXPx();
        double fromEdge = Math.min(x, clip.video().widthPx() - x);
        return fromEdge >= EDGE_SQUARES * pose.square().sidePx();
    }

    /**
     * Place of a mode.
     *
     * @param seenAs the point as the network named it
     * @param meant the point it is taken for, which tells the plane it lies in
     */
    Point2 place(int frame, BodyPoint seenAs, BodyPoint meant, int mode) {
        return view.place(frame, px(frame, seenAs, mode), BodyWidths.acrossM(meant, statureM));
    }

    Point2 px(int frame, BodyPoint seenAs, int mode) {
        Optional<FramePose> pose = isSeen(frame) ? clip.poses().at(frame) : Optional.empty();
        return pose.map(p -> p.place(seenAs, mode)).orElse(Point2.UNKNOWN);
    }

    double mass(int frame, BodyPoint seenAs, int mode) {
        return clip.poses().at(frame).map(p -> p.mass(seenAs, mode)).orElse(0.0);
    }

    /** Standard deviation per axis in metres (or nominal metres). */
    double sd(int frame, BodyPoint seenAs, int mode) {
        FramePose pose = clip.poses().at(frame).orElseThrow();
        return SD_FACTOR * pose.sdPx(seenAs, mode) * metresPerPixel[frame];
    }
}
