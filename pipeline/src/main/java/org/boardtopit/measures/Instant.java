package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.signal.LocalHinge;

/**
 * Reads angles at an instant between frames.
 *
 * <p>At a touchdown and a toe-off the joints' speeds jump, so a filter that looks across the instant rounds the very thing that
 * is asked for. {@link LocalHinge} is
 * fitted to the frames around a toe-off and read there. At a touchdown the knee gives way at once, by more than it turned in
 * all of the last stride's end, so only the frames before it count: the angle is that of the last instant of flight. Noise and priors
 * are those of a fast jump seen at 100 to 200 px (measured on our footage; the network alone is off by 3 to 4 degrees).
 */
final class Instant {
    private static final double HALF_SPAN_S = 0.06;
    /**
     * Prior of an angle's speed, as a multiple of its noise: limbs turn by up to a thousand degrees a second; only the knee
     * that is about to land is nearly held (both measured on our footage).
     */
    private static final double SLOPE_SDS_PER_S = 200;

    private static final double HELD_SLOPE_SDS_PER_S = 100;
    private static final double CURVATURE_SDS_PER_S2 = 1000;
    private static final double BEFORE_S = 0.075;
    /** Neighbouring frames err together: independent samples would make the interval too narrow by about this. */
    private static final double CORRELATION_FACTOR = 1.2;

    private static final double LEAST_TOUCHDOWN_SD_S = 0.006;

    private Instant() {}

    /**
     * Angles at the last instant before a touchdown, {@code foot} being the one that touches.
     *
     * @param sdS standard deviation of the instant: a frame that may already lie behind it counts less
     */
    static Map<BodyAngle, Reading> atTouchdown(FittedMotion motion, Foot foot, double atS, double sdS) {
        double before = Math.max(BEFORE_S, 3.2 * motion.repaired().frameStepS());
        double spread = Math.hypot(sdS, LEAST_TOUCHDOWN_SD_S);
        return angles(motion, foot, atS, before, 0, t -> before(-t / spread), true);
    }

    /** Angles at the last instant of a support. */
    static Map<BodyAngle, Reading> atToeOff(FittedMotion motion, Foot foot, double atS) {
        double half = Math.max(HALF_SPAN_S, 2.2 * motion.repaired().frameStepS());
        return angles(motion, foot, atS, half, half, t -> 1, false);
    }

    /** Weight of a frame that lies z standard deviations before the instant: a third at it, all from two on. */
    private static double before(double z) {
        return 1 / (1 + 2 * Math.exp(-2 * z));
    }

    private static Map<BodyAngle, Reading> angles(
            FittedMotion motion,
            Foot foot,
            double atS,
            double before,
            double after,
            DoubleUnaryOperator trust,
            boolean landing) {
        List<Double> times = new ArrayList<>();
        List<Map<BodyAngle, Double>> seen = new ArrayList<>();
        for (int f = motion.repaired().frameAtOrAfter(atS - before);
                f < motion.frameCount() && motion.timeS(f) <= atS + after;
                f++) {
            times.add(motion.timeS(f) - atS);
            seen.add(new Posture(motion, f).angles(foot));
        }
        double[] t = times.stream().mapToDouble(v -> v).toArray();
        double[] weights = Arrays.stream(t).map(trust).toArray();
        Map<BodyAngle, Reading> readings = new EnumMap<>(BodyAngle.class);
        for (BodyAngle angle : BodyAngle.values()) {
            double[] y = seen.stream().mapToDouble(m -> m.get(angle)).toArray();
            boolean held = landing && angle == BodyAngle.KNEE;
            readings.put(angle, read(t, y, weights, angle.noise(), held ? HELD_SLOPE_SDS_PER_S : SLOPE_SDS_PER_S));
        }
        return readings;
    }

    private static Reading read(double[] t, double[] y, double[] weights, double noise, double slopeSds) {
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < t.length; i++) {
            nearest = Double.isFinite(y[i]) ? Math.min(nearest, Math.abs(t[i])) : nearest;
        }
        if (nearest > HALF_SPAN_S / 1.5) {
            return Reading.UNKNOWN;
        }
        return LocalHinge.fit(t, y, weights, noise, slopeSds * noise, CURVATURE_SDS_PER_S2 * noise)
                .map(fit -> new Reading(fit.value(), CORRELATION_FACTOR * fit.sd()))
                .orElse(Reading.UNKNOWN);
    }
}
