package org.boardtopit.fit;

import org.boardtopit.body.SegmentTable;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.BandedSystem;
import org.boardtopit.signal.Point2;

/**
 * Finds the motion that best explains all frames of the jump together with what is known of a jumper ({@link Assumptions}).
 *
 * <p>Method: sparse non-linear least squares (Gauss-Newton) over the places of 19 points in every frame. Terms: the network's
 * points with their standard deviations and Student weights; white jerk, slack where a foot strikes or leaves; constant
 * segment lengths; a toe in support stands still; the centre of mass falls freely in flight; knees do not bend forwards. Left
 * and right and the modes were chosen before ({@link org.boardtopit.motion.MotionRepair}). The unknowns lie along time, so the
 * normal equations are a band ({@link BandedSystem}) and their inverse gives the variance of whatever is read from the
 * motion. Our own formulation.
 *
 * <p>Only the frames from {@value #BEFORE_BOARD_S} s before the board to shortly after the landing are fitted, at most
 * {@value #MOST_FRAMES} of them, so memory (some 20 MB for 460 frames) does not grow with the clip; elsewhere the points stay
 * as repaired. Without contacts nothing is fitted.
 */
public final class WholeClipFit {
    private static final double BEFORE_BOARD_S = 3;
    private static final double AFTER_LANDING_S = 0.4;
    private static final int MOST_FRAMES = 1500;
    private static final int LEAST_FRAMES = 8;
    private static final int STEPS = 8;
    /** A step that moves no point by more than this ends the fit. */
    private static final double STILL_M = 5e-4;

    private final SegmentTable segments;
    private final Assumptions assumptions;

    /**
     * For one athlete.
     *
     * @param segments masses of the athlete's sex
     * @param assumptions what may be taken for known; free fall only where the unit of the motion is the metre
     */
    public WholeClipFit(SegmentTable segments, Assumptions assumptions) {
        this.segments = segments;
        this.assumptions = assumptions;
    }

    /** The fitted motion; the same input gives the same output. */
    public FittedMotion fit(MotionTrack motion, ContactTimeline contacts) {
        int first = firstFrame(motion, contacts);
        int frames = Math.min(MOST_FRAMES, lastFrame(motion, contacts) - first + 1);
        if (!assumptions.wholeClip() || contacts.contacts().isEmpty() || frames < LEAST_FRAMES) {
            return FittedMotion.asRepaired(motion);
        }
        double[] masses = Unknowns.massWeights(segments);
        Proportions body = Proportions.of(motion, first, first + frames - 1, assumptions.hipOffset());
        Equations equations = new Equations(motion, first, frames, contacts, body, masses);
        double[] x = start(motion, first, frames);
        BandedSystem solved = null;
        for (int step = 0; step < STEPS; step++) {
            BandedSystem system = equations.about(x, assumptions, step > 0);
            try {
                system.factor();
            } catch (ArithmeticException e) {
                return FittedMotion.asRepaired(motion); // a point that is never seen: nothing holds it
            }
            double[] next = system.solve();
            double moved = largestMove(x, next);
            x = next;
            solved = system;
            if (step > 1 && moved < STILL_M) {
                break;
            }
        }
        return new FittedMotion(motion, first, frames, x, solved, masses);
    }

    private static double largestMove(double[] from, double[] to) {
        double largest = 0;
        for (int i = 0; i < from.length; i++) {
            largest = Math.max(largest, Math.abs(to[i] - from[i]));
        }
        return largest;
    }

    private static int firstFrame(MotionTrack motion, ContactTimeline contacts) {
        double jump = contacts.contacts().stream()
                .filter(c -> c.kind() != ContactKind.APPROACH)
                .mapToDouble(Contact::touchdownS)
                .filter(Double::isFinite)
                .min()
                .orElse(0);
        int f = motion.frameAtOrAfter(Math.max(0, jump - BEFORE_BOARD_S));
        while (f < motion.frameCount() && !motion.seen(f, BodyPoint.LEFT_HIP).isKnown()) {
            f++;
        }
        return f;
    }

    private static int lastFrame(MotionTrack motion, ContactTimeline contacts) {
        double end = contacts.contacts().stream()
                .mapToDouble(c -> Double.isFinite(c.toeOffS()) ? c.toeOffS() : c.touchdownS())
                .max()
                .orElse(0);
        int f = Math.min(motion.frameCount() - 1, motion.frameAtOrAfter(end + AFTER_LANDING_S));
        while (f > 0 && !motion.seen(f, BodyPoint.LEFT_HIP).isKnown()) {
            f--;
        }
        return f;
    }

    /** The repaired and smoothed points; where one is missing, its last place. */
    private static double[] start(MotionTrack motion, int first, int frames) {
        double[] x = new double[frames * Unknowns.PER_FRAME];
        for (int f = 0; f < frames; f++) {
            for (BodyPoint point : Unknowns.POINTS) {
                Point2 at = motion.smooth(first + f, point);
                at = at.isKnown() ? at : motion.seen(first + f, point);
                int i = Unknowns.of(f, point);
                int earlier = f > 0 ? i - Unknowns.PER_FRAME : -1;
                Point2 last =
                        earlier < 0 ? motion.seen(first, BodyPoint.LEFT_HIP) : new Point2(x[earlier], x[earlier + 1]);
                at = at.isKnown() ? at : last;
                x[i] = at.x();
                x[i + 1] = at.y();
            }
        }
        return x;
    }
}
