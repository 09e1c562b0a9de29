package org.boardtopit.contacts;

import java.util.Arrays;
import java.util.Optional;
import org.boardtopit.motion.MotionTrack;

/**
 * Times the landing in the pit: both feet come in, touch the sand together and stay.
 *
 * <p>The same model as {@link SupportModel} without heel-off and toe-off, over toe, heel and ankle of both feet that were
 * seen. Sand gives way, so the feet are not as still as on the runway; robust weights take care of what slides later.
 */
final class PitFit {
    private static final double BEFORE_S = 0.070;
    private static final double AFTER_S = 0.060;
    private static final double COARSE_S = 0.006;
    private static final double FINE_S = 0.002;
    private static final double REACH_S = 0.060;
    private static final double FINE_REACH_S = 0.020;
    private static final double NEVER_S = 1000;
    private static final int PASSES = 3;
    private static final int LEAST_SAMPLES = 4;
    private static final double MODEL_SD_S = 0.004; // a first guess: twice that of a contact on the runway

    /**
     * A timed landing.
     *
     * @param heelAlong place of the heel that is nearer to the board, as the network sees it
     */
    record Timed(double touchdownS, double touchdownSdS, double heelAlong, double heelAlongSd) {}

    private record Side(FootSamples samples, SupportModel model) {}

    Optional<Timed> fit(MotionTrack motion, double touchdownS) {
        // At 30 frames a second the spans must hold three frames before the landing and two after it.
        double before = Math.max(BEFORE_S, 3.2 * motion.frameStepS());
        double after = Math.max(AFTER_S, 2.6 * motion.frameStepS());
        double centre = touchdownS;
        double[][][] weights = new double[2][][];
        Timed timed = null;
        double from = Double.NaN;
        for (int pass = 0; pass < PASSES; pass++) {
            if (!(Math.abs(centre - before - from) <= 0.012)) {
                from = centre - before;
                weights = new double[2][][];
            }
            Side[] sides = new Side[2];
            for (int i = 0; i < 2; i++) {
                Foot foot = i == 0 ? Foot.LEFT : Foot.RIGHT;
                FootSamples samples = FootSamples.of(motion, foot, from, from + before + after);
                if (samples.known(FootSamples.HEEL) >= LEAST_SAMPLES
                        && samples.known(FootSamples.TOE) >= LEAST_SAMPLES
                        && samples.known(FootSamples.ANKLE) >= LEAST_SAMPLES) {
                    if (weights[i] == null) {
                        weights[i] = new double[3][samples.count()];
                        for (double[] row : weights[i]) {
                            Arrays.fill(row, 1);
                        }
                    }
                    sides[i] = new Side(samples, new SupportModel(samples, weights[i], 0, Double.POSITIVE_INFINITY));
                }
            }
            if (sides[0] == null && sides[1] == null) {
                return Optional.ofNullable(timed);
            }
            timed = search(sides, centre, motion.statureM());
            centre = timed.touchdownS();
            for (int i = 0; i < 2; i++) {
                weights[i] = sides[i] == null
                        ? null
                        : sides[i].model().weights(sides[i].samples(), centre, NEVER_S, NEVER_S);
            }
        }
        return Optional.of(timed);
    }

    private static double log(Side[] sides, double t) {
        double log = 0;
        for (Side side : sides) {
            if (side != null) {
                log += side.model().toeLog(t, NEVER_S) + side.model().rearLog(t, NEVER_S, NEVER_S);
            }
        }
        return log;
    }

    private static Timed search(Side[] sides, double centre, double statureM) {
        double top = Double.NEGATIVE_INFINITY;
        double best = centre;
        for (double t = centre - REACH_S; t <= centre + REACH_S; t += COARSE_S) {
            double log = log(sides, t);
            if (log > top) {
                top = log;
                best = t;
            }
        }
        double sum = 0;
        double first = 0;
        double second = 0;
        for (double d = -FINE_REACH_S; d <= FINE_REACH_S; d += FINE_S) {
            double w = Math.exp(Math.min(50, log(sides, best + d) - top));
            sum += w;
            first += w * d;
            second += w * d * d;
        }
        double mean = first / sum;
        double variance = Math.max(0, second / sum - mean * mean);
        double at = best + mean;
        double[] heel = rearHeel(sides, at, statureM);
        return new Timed(at, Math.hypot(Math.sqrt(variance), MODEL_SD_S), heel[0], heel[1]);
    }

    /** Place and standard deviation of the heel that is nearer to the board. */
    private static double[] rearHeel(Side[] sides, double at, double statureM) {
        if (sides[0] == null || sides[1] == null) {
            return (sides[0] == null ? sides[1] : sides[0]).model().heelPlace(at, NEVER_S, NEVER_S);
        }
        double[] left = sides[0].model().heelPlace(at, NEVER_S, NEVER_S);
        double[] right = sides[1].model().heelPlace(at, NEVER_S, NEVER_S);
        RearHeel heel = RearHeel.of(left[0], left[1], right[0], right[1], statureM);
        return new double[] {heel.place(), heel.sd()};
    }
}
