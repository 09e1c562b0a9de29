package org.boardtopit.fit;

import java.util.Optional;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.BandedSystem;
import org.boardtopit.signal.Point2;

/**
 * The athlete's motion as {@link WholeClipFit} finds it, in the plane of {@link MotionTrack}, with the variances of what is
 * read from it. Outside the fitted frames, and for points that are not fitted, the repaired points stand.
 */
public final class FittedMotion {
    private final MotionTrack motion;
    private final int first;
    private final int frames;
    private final double[] x;
    private final Optional<BandedSystem> solved;
    private final double[] massWeights;

    FittedMotion(MotionTrack motion, int first, int frames, double[] x, BandedSystem solved, double[] massWeights) {
        this.motion = motion;
        this.first = first;
        this.frames = frames;
        this.x = x;
        this.solved = Optional.ofNullable(solved);
        this.massWeights = massWeights;
    }

    /** The repaired points as they are, without a fit. */
    public static FittedMotion asRepaired(MotionTrack motion) {
        return new FittedMotion(motion, 0, 0, new double[0], null, new double[0]);
    }

    /** What was fitted. */
    public MotionTrack repaired() {
        return motion;
    }

    public int frameCount() {
        return motion.frameCount();
    }

    public double timeS(int frame) {
        return motion.timeS(frame);
    }

    /** How many frames the whole-clip fit reaches; 0 without a fit. */
    public int fittedFrames() {
        return frames;
    }

    /** True where the whole-clip fit reaches. */
    public boolean isFitted(int frame) {
        return frame >= first && frame < first + frames;
    }

    /** True when this point of this frame was fitted. */
    public boolean isFitted(int frame, BodyPoint point) {
        return isFitted(frame) && Unknowns.has(point);
    }

    /** Place of a point. */
    public Point2 place(int frame, BodyPoint point) {
        if (!isFitted(frame, point)) {
            return motion.seen(frame, point);
        }
        int i = Unknowns.of(frame - first, point);
        return new Point2(x[i], x[i + 1]);
    }

    /** The place of a point for curves: fitted, or smoothed where there is no fit. */
    public Point2 smooth(int frame, BodyPoint point) {
        return isFitted(frame, point) ? place(frame, point) : motion.smooth(frame, point);
    }

    /** Centre of mass. */
    public Point2 centreOfMass(int frame) {
        if (!isFitted(frame)) {
            return motion.centreOfMass(frame);
        }
        Point2 sum = new Point2(0, 0);
        for (int p = 0; p < massWeights.length; p++) {
            sum = sum.plus(place(frame, Unknowns.POINTS[p]).times(massWeights[p]));
        }
        return sum;
    }

    /**
     * Standard deviation of a weighted sum of the centres of mass of some frames, such as the slope of a line through them;
     * NaN when one of them is not fitted.
     *
     * @param from first frame of the sum
     * @param weights one a frame
     * @param height true for the height, false for the place along the runway
     */
    public double sdOfCentres(int from, double[] weights, boolean height) {
        if (solved.isEmpty() || !isFitted(from) || !isFitted(from + weights.length - 1)) {
            return Double.NaN;
        }
        int[] unknowns = new int[weights.length * massWeights.length];
        double[] factors = new double[unknowns.length];
        int m = 0;
        for (int f = 0; f < weights.length; f++) {
            for (int p = 0; p < massWeights.length; p++) {
                unknowns[m] = Unknowns.of(from - first + f, Unknowns.POINTS[p]) + (height ? 1 : 0);
                factors[m++] = weights[f] * massWeights[p];
            }
        }
        return Math.sqrt(solved.get().variance(unknowns, factors));
    }

    /** Standard deviation of a fitted point along an axis; that of the network where there is no fit. */
    public double sd(int frame, BodyPoint point, boolean height) {
        if (solved.isEmpty() || !isFitted(frame, point)) {
            return motion.sd(frame, point);
        }
        int i = Unknowns.of(frame - first, point) + (height ? 1 : 0);
        return Math.sqrt(solved.get().variance(new int[] {i}, new double[] {1}));
    }
}
