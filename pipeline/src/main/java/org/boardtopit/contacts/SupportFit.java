package org.boardtopit.contacts;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.boardtopit.motion.MotionTrack;

/**
 * Times one contact: the posterior of touchdown and toe-off under {@link SupportModel}, on a grid that is refined to 2 ms.
 *
 * <p>Three passes with robust weights. The heel-off is summed out. The interval is that of the posterior with 2.5 ms added in
 * quadrature, because the bare one was found too narrow (90 % intervals held 67 to 92 %, measured before this project).
 */
final class SupportFit {
    private static final double MARGIN_S = 0.060;
    private static final double COARSE_S = 0.006;
    private static final double FINE_S = 0.002;
    private static final double REACH_S = 0.054;
    private static final double FINE_REACH_S = 0.014;
    private static final double COARSE_HEEL_S = 0.012;
    private static final double FINE_HEEL_S = 0.006;
    private static final int FINE_HEEL_STEPS = 5;
    private static final double SHORTEST_S = 0.05;
    private static final double MODEL_SD_S = 0.0025;
    private static final double UNDERGROUND_M = 0.06;
    private static final int PASSES = 3;
    /** So many samples must be known; where the frames are few a third of them, of which the priors make an answer. */
    private static final int LEAST_SAMPLES = 5;

    private static final int LEAST_OF_FEW = 3;

    /**
     * A timed contact; times and standard deviations in seconds, places in the unit of the motion.
     *
     * @param toeAlong where the toe tip, as the network sees it, stands
     */
    record Timed(
            double touchdownS,
            double touchdownSdS,
            double heelOffS,
            double toeOffS,
            double toeOffSdS,
            double toeAlong,
            double toeAlongSd,
            double toeHeight) {}

    private final double supportMeanS;
    private final double supportSdS;

    SupportFit(double supportMeanS, double supportSdS) {
        this.supportMeanS = supportMeanS;
        this.supportSdS = supportSdS;
    }

    /**
     * Times a contact that is known to about 50 ms.
     *
     * @param groundHeight height of the ground there; NaN when unknown
     */
    Optional<Timed> fit(MotionTrack motion, Foot foot, double touchdownS, double toeOffS, double groundHeight) {
        double t1 = touchdownS;
        double t3 = toeOffS;
        double[][] weights = null;
        double from = Double.NaN;
        double to = Double.NaN;
        for (int pass = 0; pass < PASSES; pass++) {
            boolean moved = Math.abs(t1 - MARGIN_S - from) > 0.012 || Math.abs(t3 + MARGIN_S - to) > 0.012;
            if (pass == 0 || moved) {
                from = t1 - MARGIN_S;
                to = t3 + MARGIN_S;
                weights = null;
            }
            FootSamples samples = FootSamples.of(motion, foot, from, to);
            if (!Double.isNaN(groundHeight)) {
                samples.dropBelow(groundHeight - UNDERGROUND_M);
            }
            int least = Math.max(LEAST_OF_FEW, Math.min(LEAST_SAMPLES, (samples.count() + 2) / 3));
            if (samples.known(FootSamples.TOE) < least || samples.known(FootSamples.ANKLE) < least) {
                return Optional.empty();
            }
            if (weights == null) {
                weights = new double[3][samples.count()];
                for (double[] row : weights) {
                    Arrays.fill(row, 1);
                }
            }
            SupportModel model = new SupportModel(samples, weights, supportMeanS, supportSdS);
            List<double[]> coarse = coarse(model, t1, t3);
            double[] best = best(coarse, t1, t3);
            if (pass == PASSES - 1) {
                return Optional.of(posterior(model, coarse, best));
            }
            t1 = best[0];
            t3 = best[2];
            weights = model.weights(samples, t1, best[1], t3);
        }
        return Optional.empty();
    }

    private static double onGrid(double v) {
        return Math.round(v / FINE_S) * FINE_S;
    }

    /** Touchdown, heel-off, toe-off and log posterior on the coarse grid. */
    private static List<double[]> coarse(SupportModel model, double around1, double around3) {
        List<double[]> coarse = new ArrayList<>();
        for (double t1 = onGrid(around1 - REACH_S); t1 <= around1 + REACH_S; t1 += COARSE_S) {
            for (double t3 = onGrid(around3 - REACH_S); t3 <= around3 + REACH_S; t3 += COARSE_S) {
                if (t3 - t1 < SHORTEST_S) {
                    continue;
                }
                double toe = model.toeLog(t1, t3);
                for (double t2 = onGrid(t1 + 0.012); t2 <= t3; t2 += COARSE_HEEL_S) {
                    coarse.add(new double[] {t1, t2, t3, toe + model.rearLog(t1, t2, t3)});
                }
            }
        }
        return coarse;
    }

    private static double[] best(List<double[]> coarse, double around1, double around3) {
        double[] best = {around1, around3, around3, Double.NEGATIVE_INFINITY};
        for (double[] at : coarse) {
            best = at[3] > best[3] ? at : best;
        }
        return best;
    }

    /** Sums the posterior over the fine grid around the best instants and over the coarse one outside of it. */
    private static Timed posterior(SupportModel model, List<double[]> coarse, double[] best) {
        Moments moments = new Moments(best);
        double c1 = onGrid(best[0]);
        double c2 = onGrid(best[1]);
        double c3 = onGrid(best[2]);
        int n = (int) Math.round(FINE_REACH_S / FINE_S);
        for (int i = -n; i <= n; i++) {
            double t1 = c1 + i * FINE_S;
            for (int j = -n; j <= n; j++) {
                double t3 = c3 + j * FINE_S;
                if (t3 - t1 < SHORTEST_S) {
                    continue;
                }
                double toe = model.toeLog(t1, t3);
                for (int k = -FINE_HEEL_STEPS; k <= FINE_HEEL_STEPS; k++) {
                    double t2 = c2 + k * FINE_HEEL_S;
                    if (t2 >= t1 && t2 <= t3) {
                        moments.add(t1, t2, t3, toe + model.rearLog(t1, t2, t3), FINE_S * FINE_S * FINE_HEEL_S);
                    }
                }
            }
        }
        for (double[] at : coarse) {
            boolean inside = Math.abs(at[0] - c1) < FINE_REACH_S + FINE_S
                    && Math.abs(at[2] - c3) < FINE_REACH_S + FINE_S
                    && Math.abs(at[1] - c2) < (FINE_HEEL_STEPS + 0.5) * FINE_HEEL_S;
            if (!inside) {
                moments.add(at[0], at[1], at[2], at[3], COARSE_S * COARSE_S * COARSE_HEEL_S);
            }
        }
        double[] place = model.toePlace(onGrid(moments.mean(0)), onGrid(moments.mean(2)));
        return new Timed(
                moments.mean(0),
                Math.hypot(moments.sd(0), MODEL_SD_S),
                moments.mean(1),
                moments.mean(2),
                Math.hypot(moments.sd(2), MODEL_SD_S),
                place[0],
                place[1],
                place[2]);
    }

    /** Means and variances of the three instants, counted from the best ones. */
    private static final class Moments {
        private final double[] origin;
        private final double[] first = new double[3];
        private final double[] second = new double[3];
        private double sum;

        /** Around the best touchdown, heel-off, toe-off and its log posterior. */
        Moments(double[] best) {
            this.origin = best;
        }

        void add(double t1, double t2, double t3, double log, double cell) {
            double w = cell * Math.exp(Math.min(50, log - origin[3]));
            double[] t = {t1, t2, t3};
            sum += w;
            for (int i = 0; i < 3; i++) {
                double d = t[i] - origin[i];
                first[i] += w * d;
                second[i] += w * d * d;
            }
        }

        double mean(int instant) {
            return origin[instant] + first[instant] / sum;
        }

        double sd(int instant) {
            double m = first[instant] / sum;
            return Math.sqrt(Math.max(0, second[instant] / sum - m * m));
        }
    }
}
