package org.boardtopit.motion;

import java.util.Random;
import java.util.function.DoubleFunction;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/** A motion written down by formulas, as if repaired; for tests of what comes after. */
public final class DrawnMotion {
    private static final double MEMORY_S = 0.040;

    private DrawnMotion() {}

    /** Place of a point (along, height) at a time in seconds. */
    public interface Formula {
        Point2 at(BodyPoint point, double timeS);
    }

    /**
     * A motion at an even frame rate.
     *
     * @param sdM standard deviation that every sample claims; the errors are half of it from frame to frame and half of it
     *     with a memory of 40 ms, as {@code Whitener} assumes. With 0 the points are exact and claim 1 mm
     */
    public static MotionTrack of(
            double fps, double durationS, double statureM, double sdM, Random random, Formula formula) {
        return of(fps, durationS, statureM, sdM, random, formula, timeS -> new Point2(0, 0));
    }

    /** The same with a centre of mass that has a path of its own. */
    public static MotionTrack of(
            double fps,
            double durationS,
            double statureM,
            double sdM,
            Random random,
            Formula formula,
            DoubleFunction<Point2> centreOfMass) {
        int n = (int) Math.round(fps * durationS);
        long[] times = new long[n];
        for (int f = 0; f < n; f++) {
            times[f] = Math.round(f * 1e6 / fps);
        }
        MotionTrack.Series[] points = new MotionTrack.Series[BodyPoint.COUNT];
        double keep = Math.exp(-1 / fps / MEMORY_S);
        for (int i = 0; i < points.length; i++) {
            MotionTrack.Series s = new MotionTrack.Series(n);
            double[] drift = {random.nextGaussian(), random.nextGaussian()};
            for (int f = 0; f < n; f++) {
                Point2 p = formula.at(BodyPoint.at(i), times[f] / 1e6);
                for (int d = 0; d < 2 && f > 0; d++) {
                    drift[d] = keep * drift[d] + Math.sqrt(1 - keep * keep) * random.nextGaussian();
                }
                s.x[f] = p.x() + 0.5 * sdM * (drift[0] + random.nextGaussian());
                s.y[f] = p.y() + 0.5 * sdM * (drift[1] + random.nextGaussian());
                s.smoothX[f] = p.x();
                s.smoothY[f] = p.y();
                s.sd[f] = p.isKnown() ? Math.max(sdM, 0.001) : Double.NaN;
            }
            points[i] = s;
        }
        double[] comX = new double[n];
        double[] comY = new double[n];
        for (int f = 0; f < n; f++) {
            comX[f] = centreOfMass.apply(times[f] / 1e6).x();
            comY[f] = centreOfMass.apply(times[f] / 1e6).y();
        }
        return new MotionTrack(times, points, comX, comY, statureM, new MotionTrack.Repairs(0, 0, 0));
    }
}
