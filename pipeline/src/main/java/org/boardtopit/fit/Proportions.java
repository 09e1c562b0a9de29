package org.boardtopit.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.boardtopit.contacts.Foot;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.LeastSquares;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * The athlete's segment lengths in the plane of the run, and by how much the network reads the hips off their place.
 *
 * <p>A hip that is read too far forward makes a thigh that points forward look short and one that points back look long.
 * So the offset follows from the thigh's length being the same in all frames:
 *
 * <pre>| knee - (hip - offset) | = thigh   over all frames and both legs, robust, with priors</pre>
 *
 * <p>On our footage the hips are read 0 to 2.5 cm forward, by an amount that differs between clips, and this finds it to
 * about 0.7 cm; the height of the hips is hardly told, so its prior is tight. Prior of the thigh: 0.238 of the standing height
 * (rendered athletes of our footage; 0.245 in Winter's table after Drillis and Contini, from memory) within 4 %.
 *
 * @param hipOffset place the network gives less the true one
 * @param forefoot ankle to toe, {@code rearfoot} ankle to heel, {@code sole} heel to toe
 */
record Proportions(
        Point2 hipOffset, double thigh, double shank, double trunk, double forefoot, double rearfoot, double sole) {
    private static final double THIGH_STATURE = 0.238;
    private static final double THIGH_SD = 0.04;
    private static final double OFFSET_ALONG_SD_STATURE = 0.008;
    private static final double OFFSET_UP_SD_STATURE = 0.003;
    /** Noise of one frame's thigh length. */
    private static final double LENGTH_SD_STATURE = 0.02;

    /** Measures them over the frames from {@code first} to {@code last}. */
    static Proportions of(MotionTrack motion, int first, int last, boolean withHipOffset) {
        double h = motion.statureM();
        List<Point2> thighs = spans(motion, first, last, Foot::hip, Foot::knee);
        LeastSquares.Fit fit = LeastSquares.minimise(
                p -> thighResiduals(p, thighs, h, withHipOffset),
                new double[] {0, 0, THIGH_STATURE * h},
                new double[] {0.1, 0.1, 0.5});
        double[] p = fit.parameters();
        Point2 offset = withHipOffset ? new Point2(p[0], p[1]) : new Point2(0, 0);
        List<Point2> trunks = new ArrayList<>();
        for (int f = first; f <= last; f++) {
            Point2 hips = middle(motion, f, BodyPoint.LEFT_HIP).minus(offset);
            Point2 trunk = middle(motion, f, BodyPoint.LEFT_SHOULDER).minus(hips);
            if (trunk.isKnown()) {
                trunks.add(trunk);
            }
        }
        return new Proportions(
                offset,
                p[2],
                median(spans(motion, first, last, Foot::knee, Foot::ankle)),
                median(trunks),
                median(spans(motion, first, last, Foot::ankle, Foot::toe)),
                median(spans(motion, first, last, Foot::ankle, Foot::heel)),
                median(spans(motion, first, last, Foot::heel, Foot::toe)));
    }

    private static double[] thighResiduals(double[] p, List<Point2> thighs, double h, boolean withHipOffset) {
        double[] r = new double[thighs.size() + 3];
        double x = withHipOffset ? p[0] : 0;
        double y = withHipOffset ? p[1] : 0;
        for (int i = 0; i < thighs.size(); i++) {
            Point2 t = thighs.get(i);
            r[i] = student((Math.hypot(t.x() + x, t.y() + y) - p[2]) / (LENGTH_SD_STATURE * h));
        }
        r[thighs.size()] = p[0] / (OFFSET_ALONG_SD_STATURE * h);
        r[thighs.size() + 1] = p[1] / (OFFSET_UP_SD_STATURE * h);
        r[thighs.size() + 2] = (p[2] / (THIGH_STATURE * h) - 1) / THIGH_SD;
        return r;
    }

    /** A residual whose square grows like that of a Student distribution of four degrees. */
    private static double student(double z) {
        return Math.signum(z) * Math.sqrt(4 * Math.log(1 + z * z / 4));
    }

    private static Point2 middle(MotionTrack motion, int frame, BodyPoint left) {
        return motion.seen(frame, left)
                .plus(motion.seen(frame, left.otherSide()))
                .times(0.5);
    }

    private static List<Point2> spans(
            MotionTrack motion, int first, int last, Function<Foot, BodyPoint> from, Function<Foot, BodyPoint> to) {
        List<Point2> spans = new ArrayList<>();
        for (int f = first; f <= last; f++) {
            for (Foot side : new Foot[] {Foot.LEFT, Foot.RIGHT}) {
                Point2 span = motion.seen(f, to.apply(side)).minus(motion.seen(f, from.apply(side)));
                if (span.isKnown()) {
                    spans.add(span);
                }
            }
        }
        return spans;
    }

    private static double median(List<Point2> spans) {
        return OrderStatistics.median(
                spans.stream().mapToDouble(s -> Math.hypot(s.x(), s.y())).toArray());
    }
}
