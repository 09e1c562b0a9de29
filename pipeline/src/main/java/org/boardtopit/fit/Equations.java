package org.boardtopit.fit;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactDetector;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.BandedSystem;
import org.boardtopit.signal.LastingErrors;
import org.boardtopit.signal.Point2;

/**
 * The terms of the fit as linear equations about the present motion. Every weight is an inverse variance; frames count from
 * the first of the window.
 */
final class Equations {
    /** Neighbouring frames err together with this memory; half of the variance does (measured, see contacts). */
    private static final double MEMORY_S = 0.040;

    private static final double STUDENT_DEGREES = 4;
    /** A shoe or a joint has no sharper point than this (measured on our footage). */
    private static final double LEAST_SD_STATURE = 0.006;
    /** Noise and frame rate from which the stiffness of {@link #jerkPower} is reckoned. */
    private static final double TYPICAL_SD_STATURE = 0.0067;

    private static final double TYPICAL_HZ = 60;
    /** A foot strike changes a speed within a frame: that much more jerk than elsewhere (from 100 to a million alike). */
    private static final double STRIKE_FACTOR = 3000;

    private static final double TRUNK_STRIKE_FACTOR = 10;
    private static final double LENGTH_SD_STATURE = 0.006;
    /** The pelvis turns by some 15 degrees to each side: joint centres 0.1 of the height apart, seen from the side. */
    private static final double HIPS_APART_SD_STATURE = 0.03;

    private static final double SLIP_M = 0.003;
    private static final double KNEE_SD_STATURE = 0.004;
    /**
     * White acceleration of the segment model's centre against the body's own, m/s^2 s^0.5; 0.1 to 1 give the same
     * (measured).
     */
    private static final double CENTRE_NOISE = 0.3;

    private static final double GRAVITY_MS2 = 9.81;
    private static final BodyPoint[] TRUNK = {
        BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP, BodyPoint.LEFT_SHOULDER, BodyPoint.RIGHT_SHOULDER
    };

    private final MotionTrack motion;
    private final int first;
    private final int frames;
    private final List<Contact> contacts;
    private final Proportions body;
    private final double[] massWeights;
    private final double[] eventsS;
    private final double lengthSd;
    private BandedSystem system = new BandedSystem(1, 0);
    private double[] x = {};

    Equations(
            MotionTrack motion,
            int first,
            int frames,
            ContactTimeline contacts,
            Proportions body,
            double[] massWeights) {
        this.motion = motion;
        this.first = first;
        this.frames = frames;
        this.contacts = contacts.contacts();
        this.body = body;
        this.massWeights = massWeights;
        List<Double> events = new ArrayList<>();
        for (Contact c : this.contacts) {
            events.add(c.touchdownS());
            events.add(c.toeOffS());
        }
        this.eventsS = events.stream().mapToDouble(e -> e).toArray();
        // An error of length lasts some frames, so each frame tells less.
        this.lengthSd =
                LENGTH_SD_STATURE * motion.statureM() * LastingErrors.whileTheyStay(MEMORY_S, motion.frameStepS());
    }

    /** The system about a motion, from all terms that are assumed. */
    BandedSystem about(double[] present, Assumptions assumptions, boolean robust) {
        system = new BandedSystem(frames * Unknowns.PER_FRAME, 4 * Unknowns.PER_FRAME - 1);
        x = present;
        points(robust);
        smoothness();
        hipsTogether();
        if (assumptions.lengths()) {
            lengths();
        }
        if (assumptions.support()) {
            support();
        }
        if (assumptions.flight()) {
            flight();
        }
        if (assumptions.kneeLimit()) {
            knees();
        }
        return system;
    }

    private double timeS(int frame) {
        return motion.timeS(first + frame);
    }

    private static double square(double v) {
        return v * v;
    }

    /** Standard deviations of a frame's points as they count when neighbours err together. */
    private double correlation() {
        return 0.8 * LastingErrors.asTheyFade(MEMORY_S, motion.frameStepS(), 0.5);
    }

    private void points(boolean robust) {
        double factor = correlation();
        double least = LEAST_SD_STATURE * motion.statureM();
        for (int f = 0; f < frames; f++) {
            for (BodyPoint point : Unknowns.POINTS) {
                Point2 seen = motion.seen(first + f, point);
                if (!seen.isKnown()) {
                    continue;
                }
                boolean hip = point == BodyPoint.LEFT_HIP || point == BodyPoint.RIGHT_HIP;
                Point2 z = hip ? seen.minus(body.hipOffset()) : standingToe(f, point) ? tip(seen) : seen;
                double sd = factor * Math.max(least, motion.sd(first + f, point));
                int i = Unknowns.of(f, point);
                double weight = 1 / (sd * sd);
                if (robust) {
                    double r2 = (square(x[i] - z.x()) + square(x[i + 1] - z.y())) * weight;
                    weight *= Math.min(1, (STUDENT_DEGREES + 2) / (STUDENT_DEGREES + r2));
                }
                system.add(new int[] {i}, new double[] {1}, 1, z.x(), weight);
                system.add(new int[] {i + 1}, new double[] {1}, 1, z.y(), weight);
            }
        }
    }

    /** The network reads the toe of a standing foot short, that of a swinging one hardly. */
    private Point2 tip(Point2 seen) {
        return new Point2(seen.x() + ContactDetector.TOE_SHORT_STATURE * motion.statureM(), seen.y());
    }

    private boolean standingToe(int frame, BodyPoint point) {
        for (Contact c : contacts) {
            boolean toe = point == c.foot().toe() && c.foot() != Foot.BOTH;
            if (toe && timeS(frame) >= c.touchdownS() && timeS(frame) <= c.toeOffS()) {
                return true;
            }
        }
        return false;
    }

    /**
     * Power of the jerk (m^2/s^5) at which a chain of points of usual noise is smoothed like a low-pass of the cutoff does.
     * White jerk is the prior whose best estimate is a smoothing spline of fifth degree (Wahba 1978, J R Stat Soc B
     * 40:364-372, from memory).
     */
    private double jerkPower(BodyPoint point) {
        double cutoffHz =
                switch (point) {
                    case LEFT_KNEE, RIGHT_KNEE -> 14;
                    case LEFT_ANKLE, RIGHT_ANKLE, LEFT_HEEL, RIGHT_HEEL, LEFT_TOE, RIGHT_TOE -> 16;
                    case LEFT_ELBOW, RIGHT_ELBOW -> 9;
                    case LEFT_WRIST, RIGHT_WRIST -> 11;
                    default -> 6;
                };
        double noise = TYPICAL_SD_STATURE * motion.statureM();
        return noise * noise / TYPICAL_HZ * Math.pow(2 * Math.PI * cutoffHz, 6);
    }

    /** Third differences; a strike lies between frames, so every window that spans one is slack. */
    private void smoothness() {
        int[] unknowns = new int[4];
        double[] jerk = new double[4];
        for (int f = 0; f + 3 < frames; f++) {
            double weight = thirdDifference(f, jerk);
            boolean strike = strikeWithin(timeS(f), timeS(f + 3));
            for (BodyPoint point : Unknowns.POINTS) {
                boolean leg = point.index() >= BodyPoint.LEFT_HIP.index();
                double slack = strike ? (leg ? STRIKE_FACTOR : TRUNK_STRIKE_FACTOR) : 1;
                for (int axis = 0; axis < 2; axis++) {
                    for (int k = 0; k < 4; k++) {
                        unknowns[k] = Unknowns.of(f + k, point) + axis;
                    }
                    system.add(unknowns, jerk, 4, 0, weight / (slack * jerkPower(point)));
                }
            }
        }
    }

    /** Fills in the factors of the third derivative over four frames and returns the time one such window stands for. */
    private double thirdDifference(int f, double[] factors) {
        for (int a = 0; a < 4; a++) {
            factors[a] = 6;
            for (int b = 0; b < 4; b++) {
                factors[a] /= a == b ? 1 : timeS(f + a) - timeS(f + b);
            }
        }
        return (timeS(f + 3) - timeS(f)) / 3;
    }

    private boolean strikeWithin(double fromS, double toS) {
        for (double event : eventsS) {
            if (event > fromS && event < toS) {
                return true;
            }
        }
        return false;
    }

    private void hipsTogether() {
        double sd =
                HIPS_APART_SD_STATURE * motion.statureM() * LastingErrors.whileTheyStay(MEMORY_S, motion.frameStepS());
        for (int f = 0; f < frames; f++) {
            for (int axis = 0; axis < 2; axis++) {
                int[] hips = {Unknowns.of(f, BodyPoint.LEFT_HIP) + axis, Unknowns.of(f, BodyPoint.RIGHT_HIP) + axis};
                system.add(hips, new double[] {1, -1}, 2, 0, 1 / (sd * sd));
            }
        }
    }

    private void lengths() {
        for (int f = 0; f < frames; f++) {
            for (Foot side : new Foot[] {Foot.LEFT, Foot.RIGHT}) {
                length(f, side.hip(), side.knee(), body.thigh(), lengthSd);
                length(f, side.knee(), side.ankle(), body.shank(), lengthSd);
                length(f, side.ankle(), side.heel(), body.rearfoot(), lengthSd);
                // A shoe bends behind the toes.
                length(f, side.ankle(), side.toe(), body.forefoot(), 1.5 * lengthSd);
                length(f, side.heel(), side.toe(), body.sole(), 1.5 * lengthSd);
            }
            trunk(f);
        }
    }

    private void length(int frame, BodyPoint from, BodyPoint to, double length, double sd) {
        int i = Unknowns.of(frame, from);
        int j = Unknowns.of(frame, to);
        double dx = x[j] - x[i];
        double dy = x[j + 1] - x[i + 1];
        double now = Math.hypot(dx, dy);
        if (!(now > 1e-6) || !Double.isFinite(length)) {
            return;
        }
        double z = (now - length) / sd;
        double weight = Math.min(1, (STUDENT_DEGREES + 1) / (STUDENT_DEGREES + z * z)) / (sd * sd);
        double[] direction = {-dx / now, -dy / now, dx / now, dy / now};
        system.add(new int[] {i, i + 1, j, j + 1}, direction, 4, length, weight);
    }

    private void trunk(int frame) {
        int[] at = new int[4];
        for (int k = 0; k < 4; k++) {
            at[k] = Unknowns.of(frame, TRUNK[k]);
        }
        double dx = (x[at[2]] + x[at[3]] - x[at[0]] - x[at[1]]) / 2;
        double dy = (x[at[2] + 1] + x[at[3] + 1] - x[at[0] + 1] - x[at[1] + 1]) / 2;
        double now = Math.hypot(dx, dy);
        if (!(now > 1e-6) || !Double.isFinite(body.trunk())) {
            return;
        }
        int[] unknowns = new int[8];
        double[] direction = new double[8];
        for (int k = 0; k < 4; k++) {
            double half = k < 2 ? -0.5 : 0.5;
            unknowns[2 * k] = at[k];
            unknowns[2 * k + 1] = at[k] + 1;
            direction[2 * k] = half * dx / now;
            direction[2 * k + 1] = half * dy / now;
        }
        system.add(unknowns, direction, 8, body.trunk(), 1 / square(1.5 * lengthSd));
    }

    private void support() {
        for (Contact c : contacts) {
            if (c.foot() == Foot.BOTH) {
                continue;
            }
            for (int f = 0; f + 1 < frames; f++) {
                if (timeS(f) >= c.touchdownS() && timeS(f + 1) <= c.toeOffS()) {
                    for (int axis = 0; axis < 2; axis++) {
                        int i = Unknowns.of(f, c.foot().toe()) + axis;
                        int[] pair = {i, i + Unknowns.PER_FRAME};
                        system.add(pair, new double[] {1, -1}, 2, 0, 1 / square(SLIP_M));
                    }
                }
            }
        }
    }

    private void flight() {
        for (int k = 0; k + 1 < contacts.size(); k++) {
            double from = contacts.get(k).toeOffS();
            double to = contacts.get(k + 1).touchdownS();
            for (int f = 0; f + 2 < frames; f++) {
                if (timeS(f) >= from && timeS(f + 2) <= to) {
                    freeFall(f);
                }
            }
        }
    }

    private void freeFall(int f) {
        double t0 = timeS(f);
        double t1 = timeS(f + 1);
        double t2 = timeS(f + 2);
        double[] second = {2 / ((t0 - t1) * (t0 - t2)), 2 / ((t1 - t0) * (t1 - t2)), 2 / ((t2 - t0) * (t2 - t1))};
        double weight = (t2 - t0) / 2 / square(CENTRE_NOISE);
        int[] unknowns = new int[3 * massWeights.length];
        double[] factors = new double[unknowns.length];
        for (int axis = 0; axis < 2; axis++) {
            int m = 0;
            for (int k = 0; k < 3; k++) {
                for (int p = 0; p < massWeights.length; p++) {
                    unknowns[m] = Unknowns.of(f + k, Unknowns.POINTS[p]) + axis;
                    factors[m++] = second[k] * massWeights[p];
                }
            }
            system.add(unknowns, factors, m, axis == 0 ? 0 : -GRAVITY_MS2, weight);
        }
    }

    /** Pulls a knee that lies behind the line from hip to ankle back onto it. */
    private void knees() {
        double weight = 1 / square(KNEE_SD_STATURE * motion.statureM());
        for (int f = 0; f < frames; f++) {
            for (Foot side : new Foot[] {Foot.LEFT, Foot.RIGHT}) {
                int h = Unknowns.of(f, side.hip());
                int k = Unknowns.of(f, side.knee());
                int a = Unknowns.of(f, side.ankle());
                double dx = x[a] - x[h];
                double dy = x[a + 1] - x[h + 1];
                double l = Math.hypot(dx, dy);
                double nx = -dy / l; // forward of a leg that hangs down
                double ny = dx / l;
                double share = ((x[k] - x[h]) * dx + (x[k + 1] - x[h + 1]) * dy) / (l * l);
                double before = (x[k] - x[h]) * nx + (x[k + 1] - x[h + 1]) * ny;
                if (before < 0) {
                    double[] factors = {-(1 - share) * nx, -(1 - share) * ny, nx, ny, -share * nx, -share * ny};
                    system.add(new int[] {h, h + 1, k, k + 1, a, a + 1}, factors, 6, 0, weight);
                }
            }
        }
    }
}
