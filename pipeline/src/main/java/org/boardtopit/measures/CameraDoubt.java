package org.boardtopit.measures;

import java.util.Optional;
import org.boardtopit.ground.FoundCamera;

/**
 * How far distances and shares are off when the camera was found from the run: each of its independent doubts moves all four
 * places of the jump together, and the squares of the changes add up (first order).
 *
 * <p>When the whole jump was scaled to the official distance the common scale drops out; what stays in doubt of it is where
 * the toe stood on the board. Without a found camera everything is 0.
 */
final class CameraDoubt {
    private final Optional<FoundCamera> found;
    private final double effectiveSdM;

    /**
     * For one attempt.
     *
     * @param effectiveSdM standard deviation of the effective distance when the jump was scaled to it; NaN when it was not
     */
    CameraDoubt(Optional<FoundCamera> found, double effectiveSdM) {
        this.found = found;
        this.effectiveSdM = effectiveSdM;
    }

    /** Standard deviation of a phase's distance: 0 hop, 1 step, 2 jump. */
    double phaseSdM(PhaseDistances d, int phase) {
        boolean scaled = Double.isFinite(effectiveSdM);
        double nominal = phases(places(d))[phase];
        double variance = 0;
        for (double[] doubtful : doubtful(d)) {
            double[] phases = phases(doubtful);
            double factor = scaled ? d.effectiveM() / (phases[0] + phases[1] + phases[2]) : 1;
            variance += square(factor * phases[phase] - nominal);
        }
        double ofScale = scaled ? effectiveSdM * nominal / d.effectiveM() : 0;
        return Math.sqrt(variance + square(ofScale));
    }

    /** Standard deviation of the whole jump's length over itself. */
    double scaleSd(PhaseDistances d) {
        if (Double.isFinite(effectiveSdM)) {
            return effectiveSdM / d.effectiveM();
        }
        double variance = 0;
        for (double[] doubtful : doubtful(d)) {
            variance += square((doubtful[3] - doubtful[0]) / d.effectiveM() - 1);
        }
        return Math.sqrt(variance);
    }

    /** Standard deviation of the lead of the largest share over the next, in points. */
    double leadSdPct(PhaseDistances d) {
        double[] nominal = phases(places(d));
        int first = largestBut(nominal, -1);
        int second = largestBut(nominal, first);
        double lead = leadPct(nominal, first, second);
        double variance = 0;
        for (double[] doubtful : doubtful(d)) {
            variance += square(leadPct(phases(doubtful), first, second) - lead);
        }
        return Math.sqrt(variance);
    }

    private double[][] doubtful(PhaseDistances d) {
        return found.map(f -> f.doubtfulAlongM(places(d))).orElse(new double[0][]);
    }

    private static double[] places(PhaseDistances d) {
        return new double[] {d.boardToeM(), d.hopToeM(), d.stepToeM(), d.markM()};
    }

    private static double[] phases(double[] places) {
        return new double[] {places[1] - places[0], places[2] - places[1], places[3] - places[2]};
    }

    private static int largestBut(double[] values, int not) {
        int largest = -1;
        for (int i = 0; i < values.length; i++) {
            largest = i != not && (largest < 0 || values[i] > values[largest]) ? i : largest;
        }
        return largest;
    }

    private static double leadPct(double[] phases, int first, int second) {
        return 100 * (phases[first] - phases[second]) / (phases[0] + phases[1] + phases[2]);
    }

    private static double square(double v) {
        return v * v;
    }
}
