package org.boardtopit.measures;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.signal.OrderStatistics;

/**
 * How the arms go with a take-off: by the correlation, over the support and a tenth of a second before and after it, of how far
 * each wrist is ahead of its own shoulder.
 *
 * <p>The usual guide is above +0.6 for both together and below -0.4 for one against the other (common practice, no source). A
 * board take-off that gathers both arms out of the running action reaches no more than +0.6 (measured on our footage), so the
 * upper bound is +0.4 here.
 */
final class ArmSwing {
    private static final double AROUND_S = 0.1;
    private static final int LEAST_FRAMES = 5;
    private static final double TOGETHER = 0.4;
    private static final double AGAINST = -0.4;
    /**
     * Range of the wrists, the surer one counting more, as a share of the standing height, from which on arms that go against
     * each other do more than run. A first guess: strides of our footage swing 0.18 to 0.20 and read a little less, take-offs 0.21 to 0.27.
     */
    private static final double RUNNING_STATURE = 0.18;
    /** A wrist whose place is less sure than this was not seen; a far arm that was followed has 0.015 to 0.025. */
    private static final double UNSURE_STATURE = 0.035;

    private final FittedMotion motion;
    private final int from;
    private final int end;

    private ArmSwing(FittedMotion motion, Contact support) {
        this.motion = motion;
        this.from = motion.repaired().frameAtOrAfter(support.touchdownS() - AROUND_S);
        this.end = motion.repaired().frameAtOrAfter(support.toeOffS() + AROUND_S);
    }

    /** The arms around a support. */
    static ArmAction around(FittedMotion motion, Contact support) {
        return new ArmSwing(motion, support).action();
    }

    private ArmAction action() {
        double[] left = ahead(Foot.LEFT);
        double[] right = ahead(Foot.RIGHT);
        double sdLeft = sd(Foot.LEFT);
        double sdRight = sd(Foot.RIGHT);
        double statureM = motion.repaired().statureM();
        if (left.length < LEAST_FRAMES || !(Math.max(sdLeft, sdRight) < UNSURE_STATURE * statureM)) {
            return ArmAction.NOT_SEEN;
        }
        double ofLeft = sdRight * sdRight / (sdLeft * sdLeft + sdRight * sdRight);
        double swing = ofLeft * range(left) + (1 - ofLeft) * range(right);
        return of(correlation(left, right), swing / statureM);
    }

    /**
     * From how both go together and how far they swing.
     *
     * @param together correlation, -1 to 1
     * @param swing range of a wrist over the standing height
     */
    static ArmAction of(double together, double swing) {
        if (together > TOGETHER) {
            return ArmAction.DOUBLE;
        }
        if (together < AGAINST) {
            return swing < RUNNING_STATURE ? ArmAction.RUNNING : ArmAction.SINGLE;
        }
        return Double.isFinite(together) ? ArmAction.MIXED : ArmAction.NOT_SEEN;
    }

    private double[] ahead(Foot side) {
        return overFrames()
                .mapToDouble(f -> Posture.onCurve(motion, f).wristAhead(side))
                .toArray();
    }

    private double sd(Foot side) {
        return OrderStatistics.median(overFrames()
                .mapToDouble(f -> motion.sd(f, Posture.wrist(side), false))
                .toArray());
    }

    private IntStream overFrames() {
        return IntStream.range(from, end);
    }

    private static double range(double[] values) {
        return Arrays.stream(values).max().orElse(Double.NaN)
                - Arrays.stream(values).min().orElse(Double.NaN);
    }

    /** Of Pearson; NaN when a value is unknown or nothing moves. */
    static double correlation(double[] a, double[] b) {
        double meanA = Arrays.stream(a).average().orElse(Double.NaN);
        double meanB = Arrays.stream(b).average().orElse(Double.NaN);
        double ab = 0;
        double aa = 0;
        double bb = 0;
        for (int i = 0; i < a.length; i++) {
            ab += (a[i] - meanA) * (b[i] - meanB);
            aa += (a[i] - meanA) * (a[i] - meanA);
            bb += (b[i] - meanB) * (b[i] - meanB);
        }
        return ab / Math.sqrt(aa * bb);
    }
}
