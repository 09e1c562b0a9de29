package org.boardtopit.measures;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;

/** What the body does in a flight: free leg, landing leg, trunk and head. */
final class FlightMeasures {
    /** A thigh counts as held while it is this near to its largest angle (common practice, no source). */
    private static final double HOLD_DEG = 15;
    /**
     * The thighs have begun to drop when they are this far below their largest angle. Less is noise: with 5 degrees the instant
     * was early by 15 ms on our footage, with 10 by 3.
     */
    private static final double DROP_DEG = 10;
    /** How far an angle may be off against its own largest one, which decides how long it counts as held. */
    private static final double AGAINST_ITSELF_DEG = 3;
    /** Of the lever per degree of the knee: at 90 degrees one degree is 0.6 points of the leg's length (calculated). */
    private static final double LEVER_PCT_PER_DEG = 0.6;

    /** The nose is read off alike at both ends, by 4 degrees or so, which leaves their difference (measured on our footage). */
    private static final double HEAD_CHANGE_FACTOR = 0.6;

    private final FittedMotion motion;
    private final Bound bound;
    private final ContactMeasures support;
    private final ContactMeasures next;
    private final PostureDoubt doubt;

    /**
     * Of one flight.
     *
     * @param support the measures of the contact it leaves from
     * @param next those of the contact that ends it
     */
    FlightMeasures(FittedMotion motion, Bound bound, ContactMeasures support, ContactMeasures next) {
        this.motion = motion;
        this.bound = bound;
        this.support = support;
        this.next = next;
        this.doubt = new PostureDoubt(motion);
    }

    private Course course(double fromS, ToDoubleFunction<Posture> number) {
        return Course.between(motion, fromS, bound.endS(), f -> number.applyAsDouble(Posture.onCurve(motion, f)));
    }

    private Course inFlight(ToDoubleFunction<Posture> number) {
        return course(bound.toeOffS(), number);
    }

    private interface Doubt {
        double at(double atS);
    }

    private static Reading reading(Course.Extreme extreme, Doubt doubt) {
        return extreme.isKnown()
                ? new Reading(extreme.value(), doubt.at(extreme.atS()), extreme.atS())
                : Reading.UNKNOWN;
    }

    /** Largest angle of the free thigh from the touchdown of the support to the end of the flight. */
    Reading freeThighMaxDeg() {
        return reading(freeThigh().largest(), s -> doubt.thighDeg(bound.free(), s));
    }

    private Course freeThigh() {
        return course(bound.support().touchdownS(), p -> p.thighDeg(bound.free()));
    }

    /** Share of the flight in which it is near that angle. */
    Reading freeThighHoldPct() {
        Course.Extreme largest = freeThigh().largest();
        if (!largest.isKnown()) {
            return Reading.UNKNOWN;
        }
        Course flight = freeThigh().from(bound.toeOffS());
        double level = largest.value() - HOLD_DEG;
        double more = flight.shareAtLeast(level - AGAINST_ITSELF_DEG);
        double less = flight.shareAtLeast(level + AGAINST_ITSELF_DEG);
        Reading time = bound.flightTimeS();
        double sd = Math.hypot((more - less) / 2, time.sd() / time.value());
        return new Reading(100 * flight.shareAtLeast(level), 100 * sd, largest.atS());
    }

    /** Trunk lean at the end of the flight less that at toe-off. */
    Reading trunkChangeDeg() {
        return next.atTouchdown(BodyAngle.TRUNK)
                .minus(support.atToeOff(BodyAngle.TRUNK))
                .at(bound.endS());
    }

    /** Beyond the fixed columns. */
    Map<PhaseQuantity, Reading> more() {
        Map<PhaseQuantity, Reading> more = new EnumMap<>(PhaseQuantity.class);
        Foot free = bound.free();
        more.put(
                PhaseQuantity.FREE_THIGH_MIN,
                reading(inFlight(p -> p.thighDeg(free)).smallest(), s -> doubt.thighDeg(free, s)));
        more.put(
                PhaseQuantity.FREE_KNEE_MIN,
                reading(inFlight(p -> p.kneeDeg(free)).smallest(), s -> doubt.kneeDeg(free, s)));
        more.put(
                PhaseQuantity.FREE_LEVER_MIN,
                reading(inFlight(p -> p.leverPct(free)).smallest(), s -> LEVER_PCT_PER_DEG * doubt.kneeDeg(free, s)));
        more.put(
                PhaseQuantity.THIGH_SEPARATION_MAX,
                reading(
                        inFlight(Posture::thighSeparationDeg).largest(),
                        s -> Math.hypot(doubt.thighDeg(Foot.LEFT, s), doubt.thighDeg(Foot.RIGHT, s))));
        more.put(PhaseQuantity.TRUNK_MAX, reading(inFlight(Posture::trunkDeg).largest(), doubt::trunkDeg));
        more.put(PhaseQuantity.HEAD_CHANGE, headChangeDeg());
        if (bound.intoPit()) {
            more.put(PhaseQuantity.THIGH_DROP_BEFORE, thighDropBeforeS());
        } else if (next.contact().foot() != Foot.BOTH) {
            reach(more, next.contact().foot());
        }
        return more;
    }

    private Reading headChangeDeg() {
        Reading change = next.atTouchdown(BodyAngle.HEAD).minus(support.atToeOff(BodyAngle.HEAD));
        return new Reading(change.value(), HEAD_CHANGE_FACTOR * change.sd(), bound.endS());
    }

    /** The lower leg that lands next: how far it reaches in the second half of the flight, and how far it comes back. */
    private void reach(Map<PhaseQuantity, Reading> more, Foot landing) {
        Course shank = course(bound.middleOfFlightS(), p -> p.shankDeg(landing));
        Reading reach = reading(shank.largest(), s -> doubt.shankDeg(landing, s));
        Reading down = next.atTouchdown(BodyAngle.SHANK);
        more.put(PhaseQuantity.REACH_SHANK_MAX, reach);
        // A shank that reaches until it lands has not come back, whatever the noise of both readings says.
        Reading back = reach.minus(down);
        more.put(PhaseQuantity.PULL_BACK, new Reading(Math.max(0, back.value()), back.sd(), reach.atS()));
    }

    private Reading thighDropBeforeS() {
        Course thighs = course(bound.middleOfFlightS(), Posture::meanThighDeg);
        Course.Extreme largest = thighs.largest();
        double from = thighs.lastAtLeast(largest.value() - DROP_DEG);
        if (!Double.isFinite(from)) {
            return Reading.UNKNOWN;
        }
        double early = thighs.lastAtLeast(largest.value() - DROP_DEG + AGAINST_ITSELF_DEG);
        double late = thighs.lastAtLeast(largest.value() - DROP_DEG - AGAINST_ITSELF_DEG);
        double sd = Math.hypot((late - early) / 2, next.contact().touchdownSdS());
        return new Reading(bound.endS() - from, sd, from);
    }
}
