package org.boardtopit.contacts;

import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.Point2;

/**
 * Toe, heel and ankle of one foot over a span of frames: what a contact is timed from.
 *
 * <p>Places are (along, height) in metres or nominal metres, as seen, never smoothed; NaN where unknown.
 */
final class FootSamples {
    static final int TOE = 0;
    static final int HEEL = 1;
    static final int ANKLE = 2;

    /** The network's standard deviation does not go below this: a shoe has no sharper point (measured). */
    private static final double LEAST_SD_M = 0.012;

    private final double[] timesS;
    private final double[][] along = new double[3][];
    private final double[][] height = new double[3][];
    private final double[][] sd = new double[3][];

    private FootSamples(double[] timesS) {
        this.timesS = timesS;
    }

    static FootSamples of(MotionTrack motion, Foot foot, double fromS, double toS) {
        int from = motion.frameAtOrAfter(fromS);
        int to = from;
        while (to < motion.frameCount() && motion.timeS(to) <= toS) {
            to++;
        }
        double[] times = new double[to - from];
        for (int i = 0; i < times.length; i++) {
            times[i] = motion.timeS(from + i);
        }
        FootSamples samples = new FootSamples(times);
        BodyPoint[] points = {foot.toe(), foot.heel(), foot.ankle()};
        for (int k = 0; k < 3; k++) {
            samples.along[k] = new double[times.length];
            samples.height[k] = new double[times.length];
            samples.sd[k] = new double[times.length];
            for (int i = 0; i < times.length; i++) {
                Point2 p = motion.seen(from + i, points[k]);
                samples.along[k][i] = p.x();
                samples.height[k][i] = p.y();
                samples.sd[k][i] = Math.max(LEAST_SD_M, motion.sd(from + i, points[k]));
            }
        }
        return samples;
    }

    int count() {
        return timesS.length;
    }

    double timeS(int i) {
        return timesS[i];
    }

    boolean isKnown(int point, int i) {
        return Double.isFinite(along[point][i]);
    }

    double along(int point, int i) {
        return along[point][i];
    }

    double height(int point, int i) {
        return height[point][i];
    }

    double sd(int point, int i) {
        return sd[point][i];
    }

    /** Forgets what lies further under a height than any shoe can: a point that the network put into the ground. */
    void dropBelow(double heightM) {
        for (int k = 0; k < 3; k++) {
            for (int i = 0; i < timesS.length; i++) {
                if (height[k][i] < heightM) {
                    along[k][i] = Double.NaN;
                    height[k][i] = Double.NaN;
                }
            }
        }
    }

    int known(int point) {
        int n = 0;
        for (int i = 0; i < timesS.length; i++) {
            n += isKnown(point, i) ? 1 : 0;
        }
        return n;
    }
}
