package org.boardtopit.motion;

import java.util.Arrays;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * The athlete's motion through the clip, repaired: 33 points and the centre of mass per frame.
 *
 * <p>Places are in the plane of the run (along, height) of {@link org.boardtopit.ground.RunwayView}: metres with marks,
 * nominal metres without. Left and right are the athlete's own, after repair. Unknown is {@link Point2#UNKNOWN}.
 */
public final class MotionTrack {
    private final long[] timesUs;
    private final Series[] points;
    private final double[] comX;
    private final double[] comY;
    private final double statureM;
    private final Repairs repairs;

    /**
     * What had to be done to the network's points.
     *
     * @param legsExchangedShare share of the frames in which the legs' sides were exchanged, 0 to 1
     * @param secondModeShare share of the leg points that were taken from the second mode
     * @param droppedShare share of the leg points that were dropped as outliers
     */
    public record Repairs(double legsExchangedShare, double secondModeShare, double droppedShare) {}

    /** One point over the clip; arrays by frame, NaN where unknown. */
    static final class Series {
        final double[] x;
        final double[] y;
        final double[] sd;
        final double[] pxX;
        final double[] pxY;
        double[] smoothX;
        double[] smoothY;

        Series(int frames) {
            x = unknown(frames);
            y = unknown(frames);
            sd = unknown(frames);
            pxX = unknown(frames);
            pxY = unknown(frames);
            smoothX = unknown(frames);
            smoothY = unknown(frames);
        }

        private static double[] unknown(int n) {
            double[] a = new double[n];
            Arrays.fill(a, Double.NaN);
            return a;
        }
    }

    MotionTrack(long[] timesUs, Series[] points, double[] comX, double[] comY, double statureM, Repairs repairs) {
        this.timesUs = timesUs;
        this.points = points;
        this.comX = comX;
        this.comY = comY;
        this.statureM = statureM;
        this.repairs = repairs;
    }

    public int frameCount() {
        return timesUs.length;
    }

    public double timeS(int frame) {
        return timesUs[frame] / 1e6;
    }

    public long timeUs(int frame) {
        return timesUs[frame];
    }

    /** Standing height used for widths and gates, in the unit of the plane. */
    public double statureM() {
        return statureM;
    }

    public Repairs repairs() {
        return repairs;
    }

    /** The point as seen, repaired but not smoothed. */
    public Point2 seen(int frame, BodyPoint point) {
        Series s = points[point.index()];
        return new Point2(s.x[frame], s.y[frame]);
    }

    /** Standard deviation per axis of {@link #seen}; NaN where unknown. */
    public double sd(int frame, BodyPoint point) {
        return points[point.index()].sd[frame];
    }

    /** The point after gap filling and the zero-lag low-pass; unknown in long gaps. */
    public Point2 smooth(int frame, BodyPoint point) {
        Series s = points[point.index()];
        return new Point2(s.smoothX[frame], s.smoothY[frame]);
    }

    /** The point as seen, in pixels of the frame. */
    public Point2 px(int frame, BodyPoint point) {
        Series s = points[point.index()];
        return new Point2(s.pxX[frame], s.pxY[frame]);
    }

    /** Centre of mass of the points as seen (short gaps filled), not smoothed. */
    public Point2 centreOfMass(int frame) {
        return new Point2(comX[frame], comY[frame]);
    }

    /** How far to the athlete's left of the middle plane a point is taken to lie, in the unit of the plane. */
    public double acrossM(BodyPoint point) {
        return BodyWidths.acrossM(point, statureM);
    }

    /** Median time between frames in seconds. */
    public double frameStepS() {
        double[] steps = new double[Math.max(0, timesUs.length - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = (timesUs[i + 1] - timesUs[i]) / 1e6;
        }
        return steps.length == 0 ? Double.NaN : OrderStatistics.median(steps);
    }

    /** First frame at or after a time, or the frame count when there is none. */
    public int frameAtOrAfter(double timeS) {
        int i = Arrays.binarySearch(timesUs, Math.round(timeS * 1e6));
        return i >= 0 ? i : -i - 1;
    }

    /** The frame nearest to a time. */
    public int nearestFrame(double timeS) {
        int i = Math.min(frameCount() - 1, frameAtOrAfter(timeS));
        return i > 0 && timeS - timeS(i - 1) < timeS(i) - timeS ? i - 1 : i;
    }
}
