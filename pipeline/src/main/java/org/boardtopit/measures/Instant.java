package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
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

    private static final double HELD_SLOPE_SDS_PER_S = 60;
    private static final double CURVATURE_SDS_PER_S2 = 1000;
    private static final double BEFORE_S = 0.075;
    /** Neighbouring frames err together: independent samples would make the interval too narrow by about this. */
    private static final double CORRELATION_FACTOR = 1.2;

    private static final double LEAST_TOUCHDOWN_SD_S = 0.010;
    /** Of the fitted centre of mass in one frame (measured on our footage: 0.75 cm median). */
    private static final double CENTRE_NOISE_M = 0.01;

    private static final double CENTRE_SPEED_SD_MS = 15;
    /** Of an arm's direction in one frame (measured on our footage); a wrist swings as fast as a leg. */
    private static final double ARM_NOISE_DEG = 4;
    /** Of a fitted place on a limb in one frame (measured on our footage). */
    private static final double LIMB_NOISE_M = 0.01;
    /** A foot that comes down is braked by 40 to 90 m/s^2 over the ground (measured on our footage). */
    private static final double FOOT_BRAKING_SD_MS2 = 70;
    /** Braking is not even, so frames count less the longer they lie before the touchdown. */
    private static final double SPEED_REACH_S = 0.04;

    private final FittedMotion motion;
    private final Foot foot;
    private final double sdS;
    private final boolean landing;
    private final int firstFrame;
    private final double[] t;
    private final double[] weights;

    private Instant(FittedMotion motion, Foot foot, double atS, double sdS, boolean landing) {
        this.motion = motion;
        this.foot = foot;
        this.sdS = Double.isFinite(sdS) ? sdS : motion.repaired().frameStepS();
        this.landing = landing;
        double step = motion.repaired().frameStepS();
        double before = landing ? Math.max(BEFORE_S, 3.2 * step) : Math.max(HALF_SPAN_S, 2.2 * step);
        double after = landing ? 0 : before;
        this.firstFrame = motion.repaired().frameAtOrAfter(atS - before);
        int end = firstFrame;
        while (end < motion.frameCount() && motion.timeS(end) <= atS + after) {
            end++;
        }
        this.t = new double[end - firstFrame];
        this.weights = new double[t.length];
        double spread = Math.hypot(this.sdS, LEAST_TOUCHDOWN_SD_S);
        for (int i = 0; i < t.length; i++) {
            t[i] = motion.timeS(firstFrame + i) - atS;
            weights[i] = landing ? surelyBefore(-t[i] / spread) : 1;
        }
    }

    /**
     * The last instant before a touchdown.
     *
     * @param foot the one that touches
     * @param sdS standard deviation of the instant: a frame that may already lie behind it counts less
     */
    static Instant touchdown(FittedMotion motion, Foot foot, double atS, double sdS) {
        return new Instant(motion, foot, atS, sdS, true);
    }

    /** The last instant of a support. */
    static Instant toeOff(FittedMotion motion, Foot foot, double atS, double sdS) {
        return new Instant(motion, foot, atS, sdS, false);
    }

    /** Weight of a frame that lies z standard deviations before the instant: a third at it, all from two on. */
    private static double surelyBefore(double z) {
        return 1 / (1 + 2 * Math.exp(-2 * z));
    }

    /** All angles. */
    Map<BodyAngle, Reading> angles() {
        List<Map<BodyAngle, Double>> seen = new ArrayList<>();
        for (int i = 0; i < t.length; i++) {
            seen.add(posture(i).angles(foot));
        }
        Map<BodyAngle, Reading> readings = new EnumMap<>(BodyAngle.class);
        for (BodyAngle angle : BodyAngle.values()) {
            double[] y = seen.stream().mapToDouble(m -> m.get(angle)).toArray();
            boolean held = landing && angle == BodyAngle.KNEE;
            readings.put(angle, read(y, angle.noise(), held ? HELD_SLOPE_SDS_PER_S : SLOPE_SDS_PER_S));
        }
        return readings;
    }

    /**
     * The foot ahead of the centre of mass, for a foot whose place on the ground is known from all of its support: better than
     * from the toe as it is seen in a few frames.
     */
    Reading ahead(double toeAlongM, double toeAlongSdM) {
        double[] behind = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            behind[i] = toeAlongM - motion.centreOfMass(firstFrame + i).x();
        }
        // The body moves over the foot at running speed.
        Reading reading = read(behind, CENTRE_NOISE_M, CENTRE_SPEED_SD_MS / CENTRE_NOISE_M);
        return new Reading(reading.value(), Math.hypot(reading.sd(), toeAlongSdM));
    }

    private Posture posture(int i) {
        return Posture.at(motion, firstFrame + i);
    }

    private double[] each(ToDoubleFunction<Posture> number) {
        return IntStream.range(0, t.length)
                .mapToDouble(i -> number.applyAsDouble(posture(i)))
                .toArray();
    }

    /** A distance along the runway between points of the body. */
    Reading length(ToDoubleFunction<Posture> along) {
        return fit(each(along), weights, LIMB_NOISE_M, CENTRE_SPEED_SD_MS, FOOT_BRAKING_SD_MS2)
                .map(this::reading)
                .orElse(Reading.UNKNOWN);
    }

    /** Direction of an arm, as {@link Posture#armDeg}, followed through the frames before it is read. */
    Reading armDeg(Foot side) {
        double[] arm = each(p -> p.armDeg(side));
        for (int i = 1; i < arm.length; i++) {
            arm[i] -= 360 * Math.rint((arm[i] - arm[i - 1]) / 360);
        }
        Reading reading = read(arm, ARM_NOISE_DEG, SLOPE_SDS_PER_S);
        return new Reading(Posture.inTurn(reading.value()), reading.sd());
    }

    /** Mean speed along the runway over the last {@code spanS} seconds before the instant, of a place of the body. */
    Reading speedBefore(ToDoubleFunction<Posture> along, double spanS) {
        double[] near = new double[t.length];
        double reachS = Math.max(SPEED_REACH_S, 1.5 * motion.repaired().frameStepS());
        for (int i = 0; i < near.length; i++) {
            near[i] = weights[i] * Math.exp(-t[i] * t[i] / (2 * reachS * reachS));
        }
        return fit(each(along), near, LIMB_NOISE_M, CENTRE_SPEED_SD_MS, FOOT_BRAKING_SD_MS2)
                .map(fit -> {
                    double ofNoise = CORRELATION_FACTOR * fit.meanSlopeBeforeSd(spanS);
                    return new Reading(fit.meanSlopeBefore(spanS), Math.hypot(ofNoise, sdS * FOOT_BRAKING_SD_MS2));
                })
                .orElse(Reading.UNKNOWN);
    }

    /** The value at the instant; its interval holds the noise of the points and what an error of the instant would change. */
    private Reading read(double[] y, double noise, double slopeSds) {
        return fit(y, weights, noise, slopeSds * noise, CURVATURE_SDS_PER_S2 * noise)
                .map(this::reading)
                .orElse(Reading.UNKNOWN);
    }

    private Reading reading(LocalHinge fit) {
        return new Reading(fit.value(), Math.hypot(CORRELATION_FACTOR * fit.sd(), sdS * fit.slopeBefore()));
    }

    /** Empty when no frame near the instant tells. */
    private Optional<LocalHinge> fit(double[] y, double[] trust, double noise, double slopeSd, double curvatureSd) {
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < t.length; i++) {
            nearest = Double.isFinite(y[i]) ? Math.min(nearest, Math.abs(t[i])) : nearest;
        }
        return nearest > HALF_SPAN_S / 1.5
                ? Optional.empty()
                : LocalHinge.fit(t, y, trust, noise, slopeSd, curvatureSd);
    }
}
