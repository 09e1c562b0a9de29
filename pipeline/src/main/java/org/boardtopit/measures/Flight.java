package org.boardtopit.measures;

import java.util.Arrays;
import java.util.Optional;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.Point2;
import org.boardtopit.signal.RobustPolynomial;
import org.boardtopit.signal.RobustWeights;

/**
 * The centre of mass in free flight between a toe-off and a touchdown: a straight line along the runway, a parabola up.
 *
 * @param vxMs speed along the runway
 * @param vxSdMs its standard deviation from the noise of the points (the scale's own error is not in it)
 * @param vyTakeoffMs upward speed at toe-off, gravity being 9.81 m/s^2
 * @param vySdMs its standard deviation, likewise
 * @param takeoffHeightM height of the centre of mass at toe-off
 * @param peakM its highest height in the flight
 * @param gravityRatio fitted downward acceleration over 9.81; NaN with too few frames
 * @param gravityRatioSd its standard deviation
 */
record Flight(
        double vxMs,
        double vxSdMs,
        double vyTakeoffMs,
        double vySdMs,
        double takeoffHeightM,
        double peakM,
        double gravityRatio,
        double gravityRatioSd) {

    private static final int LEAST_FRAMES = 5;
    /** The centre of mass errs alike in neighbouring frames; independent samples would look surer by about this. */
    private static final double CORRELATION_FACTOR = 1.8;
    /** Errors that last for a whole flight are not in the fit's noise; without this 78 % of the speeds were within 90 %. */
    private static final double FIT_FACTOR = 1.5;
    /** Upwards they hang on the posture, which changes through every flight: 56 % of 18 with the factor above. */
    private static final double FIT_FACTOR_UP = 2.7;

    /**
     * Fits the frames between the two instants; empty with fewer than five of them. Speeds come from the fitted motion, whose
     * variance they carry; the acceleration from the repaired points, for the fit already takes free fall for known.
     */
    static Optional<Flight> between(FittedMotion motion, double toeOffS, double touchdownS) {
        MotionTrack repaired = motion.repaired();
        int from = repaired.frameAtOrAfter(toeOffS);
        int to = repaired.frameAtOrAfter(touchdownS);
        int n = Math.max(0, to - from);
        double[] t = new double[n];
        double[] x = new double[n];
        double[] raised = new double[n];
        double[] seen = new double[n];
        int known = 0;
        for (int i = 0; i < n; i++) {
            Point2 com = motion.centreOfMass(from + i);
            t[i] = motion.timeS(from + i) - toeOffS;
            x[i] = com.x();
            raised[i] = com.y() + Projectile.GRAVITY_MS2 / 2 * t[i] * t[i];
            seen[i] = repaired.centreOfMass(from + i).y();
            known += com.isKnown() && Double.isFinite(seen[i]) ? 1 : 0;
        }
        if (known < LEAST_FRAMES) {
            return Optional.empty();
        }
        RobustPolynomial along = RobustPolynomial.line(t, x, RobustWeights.TUKEY);
        RobustPolynomial up = RobustPolynomial.line(t, raised, RobustWeights.TUKEY);
        RobustPolynomial free = RobustPolynomial.quadratic(t, seen, RobustWeights.TUKEY);
        double vy = up.slopeAt(0);
        double height = up.valueAt(0);
        double rise = vy > 0 ? vy * vy / (2 * Projectile.GRAVITY_MS2) : 0;
        return Optional.of(new Flight(
                along.slopeAt(0),
                known(slopeSd(motion, from, t, false), CORRELATION_FACTOR * along.slopeSdAt(0)),
                vy,
                known(slopeSd(motion, from, t, true), CORRELATION_FACTOR * up.slopeSdAt(0)),
                height,
                height + rise,
                -2 * free.coefficient(2) / Projectile.GRAVITY_MS2,
                CORRELATION_FACTOR * 2 * Math.sqrt(free.covariance(2, 2)) / Projectile.GRAVITY_MS2));
    }

    /** Speed along the runway. */
    Reading vx() {
        return new Reading(vxMs, vxSdMs);
    }

    /** Upward speed at toe-off. */
    Reading vy() {
        return new Reading(vyTakeoffMs, vySdMs);
    }

    /** Standard deviation of the speed that a line through the fitted centres of mass gives; NaN where nothing was fitted. */
    static double slopeSd(FittedMotion motion, int from, double[] t, boolean height) {
        return (height ? FIT_FACTOR_UP : FIT_FACTOR) * motion.sdOfCentres(from, slopeWeights(t), height);
    }

    private static double known(double value, double otherwise) {
        return Double.isFinite(value) ? value : otherwise;
    }

    /** What each sample counts in the slope of a least-squares line. */
    private static double[] slopeWeights(double[] t) {
        double mean = Arrays.stream(t).average().orElse(0);
        double squares = Arrays.stream(t).map(v -> (v - mean) * (v - mean)).sum();
        return Arrays.stream(t).map(v -> (v - mean) / squares).toArray();
    }
}
