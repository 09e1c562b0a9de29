package org.boardtopit.contacts;

import java.util.Arrays;
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
    private static final double SHORTEST_S = 0.05;
    private static final double MODEL_SD_S = 0.0025;
    private static final double UNDERGROUND_M = 0.06;
    private static final int PASSES = 3;
    private static final int LEAST_SAMPLES = 5;

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
        Timed timed = null;
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
            if (samples.known(FootSamples.TOE) < LEAST_SAMPLES || samples.known(FootSamples.ANKLE) < LEAST_SAMPLES) {
                return Optional.ofNullable(timed);
            }
            if (weights == null) {
                weights = new double[3][samples.count()];
                for (double[] row : weights) {
                    Arrays.fill(row, 1);
                }
            }
            SupportModel model = new SupportModel(samples, weights, supportMeanS, supportSdS);
            timed = search(model, t1, t3);
            t1 = timed.touchdownS();
            t3 = timed.toeOffS();
            weights = model.weights(samples, t1, timed.heelOffS(), t3);
        }
        return Optional.of(timed);
    }

    private static double onGrid(double v) {
        return Math.round(v / FINE_S) * FINE_S;
    }

    private Timed search(SupportModel model, double around1, double around3) {
        double best = Double.NEGATIVE_INFINITY;
        double b1 = around1;
        double b2 = around3;
        double b3 = around3;
        for (double t1 = onGrid(around1 - REACH_S); t1 <= around1 + REACH_S; t1 += COARSE_S) {
            for (double t3 = onGrid(around3 - REACH_S); t3 <= around3 + REACH_S; t3 += COARSE_S) {
                if (t3 - t1 < SHORTEST_S) {
                    continue;
                }
                double toe = model.toeLog(t1, t3);
                for (double t2 = onGrid(t1 + 0.012); t2 <= t3; t2 += 2 * COARSE_S) {
                    double log = toe + model.rearLog(t1, t2, t3);
                    if (log > best) {
                        best = log;
                        b1 = t1;
                        b2 = t2;
                        b3 = t3;
                    }
                }
            }
        }
        return posterior(model, b1, b2, b3, best);
    }

    private Timed posterior(SupportModel model, double c1, double c2, double c3, double top) {
        double sum = 0;
        double s1 = 0;
        double s11 = 0;
        double s2 = 0;
        double s3 = 0;
        double s33 = 0;
        int n = (int) Math.round(FINE_REACH_S / FINE_S);
        for (int i = -n; i <= n; i++) {
            double t1 = onGrid(c1) + i * FINE_S;
            for (int j = -n; j <= n; j++) {
                double t3 = onGrid(c3) + j * FINE_S;
                if (t3 - t1 < SHORTEST_S) {
                    continue;
                }
                double toe = model.toeLog(t1, t3);
                for (int k = -5; k <= 5; k++) {
                    double t2 = onGrid(c2) + 3 * k * FINE_S;
                    if (t2 < t1 || t2 > t3) {
                        continue;
                    }
                    double w = Math.exp(Math.min(50, toe + model.rearLog(t1, t2, t3) - top));
                    sum += w;
                    s1 += w * t1;
                    s11 += w * (t1 - c1) * (t1 - c1);
                    s2 += w * t2;
                    s3 += w * t3;
                    s33 += w * (t3 - c3) * (t3 - c3);
                }
            }
        }
        double m1 = s1 / sum;
        double m3 = s3 / sum;
        double v1 = Math.max(0, s11 / sum - (m1 - c1) * (m1 - c1));
        double v3 = Math.max(0, s33 / sum - (m3 - c3) * (m3 - c3));
        double[] place = model.toePlace(onGrid(m1), onGrid(m3));
        return new Timed(
                m1,
                Math.hypot(Math.sqrt(v1), MODEL_SD_S),
                s2 / sum,
                m3,
                Math.hypot(Math.sqrt(v3), MODEL_SD_S),
                place[0],
                place[1],
                place[2]);
    }
}
