package org.boardtopit.contacts;

import org.boardtopit.contacts.WhitenedGroup.Block;
import org.boardtopit.contacts.WhitenedGroup.Blocks;

/**
 * The likelihood of a touchdown, a heel-off and a toe-off, given the toe, heel and ankle of one foot.
 *
 * <p>Shape (times in units of {@value #UNIT_S} s; p = (touchdown - t)+, h = (t - heel-off)+, q = (t - toe-off)+):
 *
 * <pre>
 * toe   = c1 + {p, p^2, q, q^2}
 * heel  = c2 + {p, p^2, h, h^2, h^3, q, q^2}
 * ankle = c3 + the same as the heel + a roll over the planted foot + {h, h^2} of its own
 * </pre>
 *
 * <p>so that the toe stands still from touchdown to toe-off and the heel from touchdown to heel-off; places are continuous,
 * velocities may break. The ankle's own rise is there because the foot turns about its toe, from which the heel is further;
 * the third power because a long rise bends, which two terms can only follow by ending the contact early. All coefficients have Gaussian priors and are integrated out ({@link LinearEvidence}); along and
 * height are independent. Our own method; a throw-away study before this project compared it with thresholds and hinge fits
 * and found errors of 4 ms against 9 to 33 ms at 60 frames a second.
 */
final class SupportModel {
    static final double UNIT_S = 0.05;
    private static final double ROLL_S = 0.06;

    /** Prior means and standard deviations in metres: constant, p, p^2, q, q^2. A foot comes in at 4 +- 4 m/s. */
    private static final double[][] TOE_MEAN = {{0, -0.20, 0, 0, 0}, {0, 0.125, 0, 0.02, 0.20}};

    private static final double[][] TOE_SD = {{0.5, 0.20, 0.20, 0.05, 0.12}, {0.5, 0.10, 0.20, 0.05, 0.12}};
    /** Heel constant, ankle constant, p, p^2, roll, h, h^2, h^3, h and h^2 of the ankle less the heel's, q, q^2. */
    private static final double[][] REAR_MEAN = {
        {0, 0, -0.20, 0, 0.03, 0.03, 0.03, 0, 0, 0, 0, 0}, {0, 0, 0.125, 0, 0, 0.05, 0.05, 0, 0, 0, 0, 0}
    };

    private static final double[][] REAR_SD = {
        {0.5, 0.5, 0.20, 0.20, 0.05, 0.10, 0.15, 0.10, 0.05, 0.05, 0.10, 0.20},
        {0.5, 0.5, 0.10, 0.20, 0.03, 0.10, 0.15, 0.10, 0.05, 0.05, 0.10, 0.20}
    };

    private final double supportMeanS;
    private final double supportSdS;
    private final WhitenedGroup toe;
    private final WhitenedGroup rear;
    private final Block toeConstant;
    private final Block rearConstants;
    private final Blocks toeBefore;
    private final Blocks toeAfter;
    private final Blocks rearBefore;
    private final Blocks rearRise;
    private final Blocks rearAfter;
    private final LinearEvidence[] toeEvidence = new LinearEvidence[2];
    private final LinearEvidence[] rearEvidence = new LinearEvidence[2];

    /**
     * For one foot and one contact.
     *
     * @param weights robust weight of each sample, [point][sample], 1 = fully trusted
     * @param supportMeanS weak prior of the support time
     * @param supportSdS its standard deviation; infinite for none
     */
    SupportModel(FootSamples samples, double[][] weights, double supportMeanS, double supportSdS) {
        this.supportMeanS = supportMeanS;
        this.supportSdS = supportSdS;
        this.toe = new WhitenedGroup(samples, weights, FootSamples.TOE);
        this.rear = new WhitenedGroup(samples, weights, FootSamples.HEEL, FootSamples.ANKLE);
        this.toeConstant = toe.block(toe.column(t -> 1, -1));
        this.rearConstants = rear.block(rear.column(t -> 1, 0), rear.column(t -> 1, 1));
        this.toeBefore = new Blocks(t1 ->
                toe.block(toe.column(t -> units(t1 - t), -1), toe.column(t -> square(units(t1 - t)), -1)));
        this.toeAfter = new Blocks(t3 ->
                toe.block(toe.column(t -> units(t - t3), -1), toe.column(t -> square(units(t - t3)), -1)));
        this.rearBefore = new Blocks(t1 -> rear.block(
                rear.column(t -> units(t1 - t), -1),
                rear.column(t -> square(units(t1 - t)), -1),
                rear.column(t -> roll(t - t1), 1)));
        this.rearRise = new Blocks(t2 -> rear.block(
                rear.column(t -> units(t - t2), -1),
                rear.column(t -> square(units(t - t2)), -1),
                rear.column(t -> cube(units(t - t2)), -1),
                rear.column(t -> units(t - t2), 1),
                rear.column(t -> square(units(t - t2)), 1)));
        this.rearAfter = new Blocks(t3 ->
                rear.block(rear.column(t -> units(t - t3), -1), rear.column(t -> square(units(t - t3)), -1)));
        for (int d = 0; d < 2; d++) {
            toeEvidence[d] = new LinearEvidence(TOE_MEAN[d], TOE_SD[d]);
            rearEvidence[d] = new LinearEvidence(REAR_MEAN[d], REAR_SD[d]);
        }
    }

    private static double units(double seconds) {
        return seconds > 0 ? seconds / UNIT_S : 0;
    }

    private static double roll(double sinceTouchdownS) {
        return Math.min(1, Math.max(0, sinceTouchdownS) / ROLL_S);
    }

    private static double cube(double v) {
        return v * v * v;
    }

    private static double square(double v) {
        return v * v;
    }

    /** Log likelihood of the toe alone with the support prior; independent of the heel-off. */
    double toeLog(double touchdownS, double toeOffS) {
        double log = -0.5 * square((toeOffS - touchdownS - supportMeanS) / supportSdS);
        for (int d = 0; d < 2; d++) {
            log += toe(d, touchdownS, toeOffS);
        }
        return log;
    }

    /** Log likelihood of heel and ankle. */
    double rearLog(double touchdownS, double heelOffS, double toeOffS) {
        return rear(0, touchdownS, heelOffS, toeOffS) + rear(1, touchdownS, heelOffS, toeOffS);
    }

    private double toe(int dimension, double t1, double t3) {
        return toe.evidence(toeEvidence[dimension], dimension, toeConstant, toeBefore.at(t1), toeAfter.at(t3));
    }

    private double rear(int dimension, double t1, double t2, double t3) {
        return rear.evidence(
                rearEvidence[dimension],
                dimension,
                rearConstants,
                rearBefore.at(t1),
                rearRise.at(t2),
                rearAfter.at(t3));
    }

    /** Where the toe stands between touchdown and toe-off: along, its sd, height. */
    double[] toePlace(double touchdownS, double toeOffS) {
        toe(0, touchdownS, toeOffS);
        double along = toe.origin(0, 0) + toeEvidence[0].posteriorMean()[0];
        double sd = toeEvidence[0].posteriorSd(0);
        toe(1, touchdownS, toeOffS);
        return new double[] {along, sd, toe.origin(0, 1) + toeEvidence[1].posteriorMean()[0]};
    }

    /** Where the heel stands after touchdown: along and its sd. */
    double[] heelPlace(double touchdownS, double heelOffS, double toeOffS) {
        rear(0, touchdownS, heelOffS, toeOffS);
        return new double[] {rear.origin(0, 0) + rearEvidence[0].posteriorMean()[0], rearEvidence[0].posteriorSd(0)};
    }

    /** Robust weights of all samples for the best instants: 6 / (4 + r^2), at most 1 (Student, 4 degrees, two axes). */
    double[][] weights(FootSamples samples, double t1, double t2, double t3) {
        double[][] toeCurve = new double[2][];
        double[][] rearCurve = new double[2][];
        for (int d = 0; d < 2; d++) {
            toe(d, t1, t3);
            toeCurve[d] = toeEvidence[d].posteriorMean();
            rear(d, t1, t2, t3);
            rearCurve[d] = rearEvidence[d].posteriorMean();
        }
        double[][] weights = new double[3][samples.count()];
        for (int f = 0; f < samples.count(); f++) {
            double t = samples.timeS(f);
            for (int point = 0; point < 3; point++) {
                double r2 = 0;
                for (int d = 0; d < 2; d++) {
                    double seen = d == 0 ? samples.along(point, f) : samples.height(point, f);
                    double fit = point == FootSamples.TOE
                            ? toe.origin(0, d) + toeAt(toeCurve[d], t, t1, t3)
                            : rear.origin(point - FootSamples.HEEL, d) + rearAt(rearCurve[d], point, t, t1, t2, t3);
                    r2 += square((seen - fit) / samples.sd(point, f));
                }
                weights[point][f] = Double.isNaN(r2) ? 1 : Math.min(1, 6 / (4 + r2));
            }
        }
        return weights;
    }

    private static double toeAt(double[] c, double t, double t1, double t3) {
        double p = units(t1 - t);
        double q = units(t - t3);
        return c[0] + c[1] * p + c[2] * p * p + c[3] * q + c[4] * q * q;
    }

    private static double rearAt(double[] c, int point, double t, double t1, double t2, double t3) {
        double p = units(t1 - t);
        double h = units(t - t2);
        double q = units(t - t3);
        double own = point == FootSamples.HEEL ? c[0] : c[1] + c[4] * roll(t - t1);
        double turn = point == FootSamples.HEEL ? 0 : c[8] * h + c[9] * h * h;
        return own
                + turn
                + c[2] * p
                + c[3] * p * p
                + c[5] * h
                + c[6] * h * h
                + c[7] * h * h * h
                + c[10] * q
                + c[11] * q * q;
    }
}
