package org.boardtopit.measures;

import java.util.EnumMap;
import java.util.Map;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;

/** What the body does while a foot is down: how far the knee gives way, and when the body passes over the foot. */
final class SupportMeasures {
    /** The knee turns back within some frames, which the fit rounds: it reads 3 degrees too straight, more at 30 frames a second. */
    private static final double ROUNDED_DEG = 3.5;
    /** Of the centre of mass over the ankle (measured on our footage). */
    private static final double PASSING_SD_M_STATURE = 0.012;

    private final FittedMotion motion;
    private final PostureDoubt doubt;

    SupportMeasures(FittedMotion motion) {
        this.motion = motion;
        this.doubt = new PostureDoubt(motion);
    }

    /** Least inner knee angle of the supporting leg. */
    Reading leastKneeDeg(Contact support) {
        Foot leg = support.foot();
        Course.Extreme least = Course.between(
                        motion,
                        support.touchdownS(),
                        support.toeOffS(),
                        f -> Posture.onCurve(motion, f).kneeDeg(leg))
                .smallest();
        if (!least.isKnown()) {
            return Reading.UNKNOWN;
        }
        double sd = Math.hypot(doubt.kneeDeg(leg, least.atS()), ROUNDED_DEG);
        return new Reading(least.value(), sd, least.atS());
    }

    /** Beyond the fixed columns. */
    Map<PhaseQuantity, Reading> more(Bound bound, Reading kneeAtTouchdown, Reading leastKnee) {
        Map<PhaseQuantity, Reading> more = new EnumMap<>(PhaseQuantity.class);
        Reading yield = kneeAtTouchdown.minus(leastKnee).at(leastKnee.atS());
        more.put(PhaseQuantity.KNEE_YIELD, yield);
        more.put(PhaseQuantity.BEFORE_MID_SUPPORT, beforeMidSupportPct(bound.support()));
        more.put(PhaseQuantity.INTERVAL, bound.intervalS());
        more.put(PhaseQuantity.SUPPORT_SHARE, bound.supportSharePct());
        return more;
    }

    private Reading beforeMidSupportPct(Contact support) {
        double passing = Course.between(
                        motion,
                        support.touchdownS(),
                        support.toeOffS(),
                        f -> Posture.onCurve(motion, f).pastAnkle(support.foot()))
                .firstRiseThroughZero();
        if (!Double.isFinite(passing)) {
            return Reading.UNKNOWN;
        }
        double p = (passing - support.touchdownS()) / support.supportTimeS();
        double ofPlaceS = PASSING_SD_M_STATURE * motion.repaired().statureM() / speed(support);
        double ofInstantsS = Math.hypot((1 - p) * support.touchdownSdS(), p * support.toeOffSdS());
        return new Reading(100 * p, 100 * Math.hypot(ofPlaceS, ofInstantsS) / support.supportTimeS(), passing);
    }

    /** Mean speed of the centre of mass over a support, in the unit of the motion. */
    private double speed(Contact support) {
        int from = motion.repaired().nearestFrame(support.touchdownS());
        int to = motion.repaired().nearestFrame(support.toeOffS());
        double way = motion.centreOfMass(to).x() - motion.centreOfMass(from).x();
        return way / (motion.timeS(to) - motion.timeS(from));
    }
}
