package org.boardtopit.measures;

import java.util.Optional;
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
 * @param takeoffHeightM height of the centre of mass at toe-off
 * @param peakM its highest height in the flight
 * @param gravityRatio fitted downward acceleration over 9.81; NaN with too few frames
 * @param gravityRatioSd its standard deviation
 */
record Flight(
        double vxMs,
        double vxSdMs,
        double vyTakeoffMs,
        double takeoffHeightM,
        double peakM,
        double gravityRatio,
        double gravityRatioSd) {

    private static final int LEAST_FRAMES = 5;
    /** The centre of mass errs alike in neighbouring frames; independent samples would look surer by about this. */
    private static final double CORRELATION_FACTOR = 1.8;

    /** Fits the frames between the two instants; empty with fewer than five of them. */
    static Optional<Flight> between(MotionTrack motion, double toeOffS, double touchdownS) {
        int from = motion.frameAtOrAfter(toeOffS);
        int to = motion.frameAtOrAfter(touchdownS);
        int n = Math.max(0, to - from);
        double[] t = new double[n];
        double[] x = new double[n];
        double[] y = new double[n];
        double[] raised = new double[n];
        int known = 0;
        for (int i = 0; i < n; i++) {
            Point2 com = motion.centreOfMass(from + i);
            t[i] = motion.timeS(from + i) - toeOffS;
            x[i] = com.x();
            y[i] = com.y();
            raised[i] = y[i] + Projectile.GRAVITY_MS2 / 2 * t[i] * t[i];
            known += com.isKnown() ? 1 : 0;
        }
        if (known < LEAST_FRAMES) {
            return Optional.empty();
        }
        RobustPolynomial along = RobustPolynomial.line(t, x, RobustWeights.TUKEY);
        RobustPolynomial up = RobustPolynomial.line(t, raised, RobustWeights.TUKEY);
        RobustPolynomial free = RobustPolynomial.quadratic(t, y, RobustWeights.TUKEY);
        double vy = up.slopeAt(0);
        double height = up.valueAt(0);
        double rise = vy > 0 ? vy * vy / (2 * Projectile.GRAVITY_MS2) : 0;
        return Optional.of(new Flight(
                along.slopeAt(0),
                CORRELATION_FACTOR * along.slopeSdAt(0),
                vy,
                height,
                height + rise,
                -2 * free.coefficient(2) / Projectile.GRAVITY_MS2,
                CORRELATION_FACTOR * 2 * Math.sqrt(free.covariance(2, 2)) / Projectile.GRAVITY_MS2));
    }
}
