package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.AttemptQuantity;
import org.boardtopit.measures.ContactQuantity;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.measures.PhaseQuantity;
import org.boardtopit.measures.Reading;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.phases.PhaseName;

/**
 * What the body does in supports, flights and the landing against the truth, by the definitions of docs/measures.md and formulas of
 * its own. Only where the truth has places of the points in metres.
 */
final class MovementErrors {
    private static final double GRAVITY_MS2 = 9.81;
    private static final double HOLD_DEG = 15;
    private static final double DROP_DEG = 10;
    private static final double FOOT_SPEED_S = 0.03;
    /** Some frames before and after an instant, at 30 a second, too. */
    private static final double AROUND_S = 0.1;

    private final AttemptTruth truth;
    private final AttemptMeasures measures;
    private final List<MeasuredError> errors = new ArrayList<>();

    MovementErrors(AttemptTruth truth, AttemptMeasures measures) {
        this.truth = truth;
        this.measures = measures;
    }

    List<MeasuredError> list() {
        if (!truth.knowsPlaces()) {
            return List.of();
        }
        ContactTruth board = truth.contact(ContactKind.BOARD);
        ContactTruth hop = truth.contact(ContactKind.HOP_LANDING);
        ContactTruth step = truth.contact(ContactKind.STEP_LANDING);
        new Bound(PhaseName.HOP, board, hop.touchdownS(), Optional.of(hop)).compare();
        new Bound(PhaseName.STEP, hop, step.touchdownS(), Optional.of(step)).compare();
        new Bound(PhaseName.JUMP, step, truth.landingS(), Optional.empty()).compare();
        for (ContactTruth contact : List.of(board, hop, step)) {
            contact(contact);
        }
        pit();
        double first = hop.touchdownS() - board.touchdownS();
        double second = step.touchdownS() - hop.touchdownS();
        add(Measure.RHYTHM, measures.of(AttemptQuantity.RHYTHM_EVENNESS), 100 * second / first);
        return List.copyOf(errors);
    }

    private void add(Measure measure, Reading reading, double true1) {
        if (Double.isFinite(true1)) {
            errors.add(MeasuredError.of(measure, reading.value(), true1, reading.sd()));
        }
    }

    private TrueCourse course(double fromS, double toS, ToDoubleFunction<TrueBody> number) {
        return TrueCourse.between(truth.frames(), fromS, toS, f -> number.applyAsDouble(new TrueBody(f)));
    }

    private boolean hasMetres() {
        return measures.scaleSource() != ScaleSource.NONE;
    }

    private Reading of(ContactKind kind, ContactQuantity quantity) {
        return measures.contacts().stream()
                .filter(c -> c.contact().kind() == kind)
                .map(c -> c.of(quantity))
                .findFirst()
                .orElse(Reading.UNKNOWN);
    }

    private void contact(ContactTruth t) {
        for (boolean left : new boolean[] {true, false}) {
            ContactQuantity down = left ? ContactQuantity.ARM_L_TOUCHDOWN : ContactQuantity.ARM_R_TOUCHDOWN;
            ContactQuantity up = left ? ContactQuantity.ARM_L_TOE_OFF : ContactQuantity.ARM_R_TOE_OFF;
            add(
                    Measure.ARM_TOUCHDOWN,
                    of(t.kind(), down),
                    before(t.touchdownS(), b -> b.arm(left)).last());
            TrueCourse around = course(t.toeOffS() - AROUND_S, t.toeOffS() + AROUND_S, b -> b.arm(left));
            add(Measure.ARM_TOE_OFF, of(t.kind(), up), around.at(t.toeOffS()));
        }
        if (hasMetres()) {
            double foot = speed(t.touchdownS(), b -> b.footAlong(t.foot()));
            double body = speed(t.touchdownS(), b -> b.frame().comAlongM());
            add(Measure.FOOT_SPEED, of(t.kind(), ContactQuantity.FOOT_SPEED_TOUCHDOWN), foot);
            add(Measure.FOOT_SPEED_RELATIVE, of(t.kind(), ContactQuantity.FOOT_SPEED_RELATIVE_TOUCHDOWN), foot - body);
        }
    }

    private TrueCourse before(double timeS, ToDoubleFunction<TrueBody> number) {
        return course(timeS - AROUND_S, timeS, number);
    }

    private double speed(double touchdownS, ToDoubleFunction<TrueBody> along) {
        TrueCourse course = before(touchdownS, along);
        return (course.last() - course.at(touchdownS - FOOT_SPEED_S)) / FOOT_SPEED_S;
    }

    private void pit() {
        if (!hasMetres()) {
            return;
        }
        double s = truth.landingS();
        double left = before(s, b -> b.heelAheadOfHips(Foot.LEFT)).last();
        double right = before(s, b -> b.heelAheadOfHips(Foot.RIGHT)).last();
        add(Measure.HEEL_AHEAD, of(ContactKind.PIT, ContactQuantity.HEEL_AHEAD_TOUCHDOWN), Math.min(left, right));
        double wrists = before(s, TrueBody::wristsBehindHips).last();
        add(Measure.WRISTS_BEHIND, of(ContactKind.PIT, ContactQuantity.WRISTS_BEHIND_TOUCHDOWN), wrists);
    }

    /** One of hop, step and jump. */
    private final class Bound {
        private final Optional<PhaseMeasures> measured;
        private final ContactTruth support;
        private final double endS;
        private final Optional<ContactTruth> landing;
        private final Foot free;

        Bound(PhaseName name, ContactTruth support, double endS, Optional<ContactTruth> landing) {
            this.measured = measures.phases().stream()
                    .filter(p -> p.phase().name() == name)
                    .findFirst();
            this.support = support;
            this.endS = endS;
            this.landing = landing;
            this.free = support.foot().other();
        }

        private Reading read(Function<PhaseMeasures, Reading> of) {
            return measured.map(of).orElse(Reading.UNKNOWN);
        }

        private Reading read(PhaseQuantity quantity) {
            return read(p -> p.of(quantity));
        }

        private TrueCourse flight(ToDoubleFunction<TrueBody> number) {
            return course(support.toeOffS(), endS, number);
        }

        private TrueCourse late(ToDoubleFunction<TrueBody> number) {
            return course((support.toeOffS() + endS) / 2, endS, number);
        }

        void compare() {
            support();
            freeLeg();
            trunkAndHead();
            if (landing.isPresent()) {
                reach(landing.get().foot());
            } else {
                TrueCourse thighs = late(TrueBody::meanThigh);
                double drop = thighs.endLessLastAtLeast(thighs.largest() - DROP_DEG);
                add(Measure.THIGH_DROP, read(PhaseQuantity.THIGH_DROP_BEFORE), drop);
            }
            if (hasMetres()) {
                double rise = support.vyMs() * support.vyMs() / (2 * GRAVITY_MS2);
                double peak = support.toeOff().comHeightM() + rise;
                add(Measure.COM_PEAK, read(PhaseMeasures::comPeakM), peak);
            }
        }

        private void support() {
            double from = support.touchdownS();
            double to = support.toeOffS();
            TrueCourse knee = course(from, to, b -> b.knee(support.foot()));
            add(Measure.KNEE_MIN, read(PhaseMeasures::kneeMinDeg), knee.smallest());
            double yield = before(from, b -> b.knee(support.foot())).last() - knee.smallest();
            add(Measure.KNEE_YIELD, read(PhaseQuantity.KNEE_YIELD), yield);
            double passing = course(from, to, b -> b.pastAnkle(support.foot())).firstPositive();
            add(Measure.BEFORE_MID_SUPPORT, read(PhaseQuantity.BEFORE_MID_SUPPORT), 100 * passing / (to - from));
            add(Measure.INTERVAL, read(PhaseQuantity.INTERVAL), endS - from);
            add(Measure.SUPPORT_SHARE, read(PhaseQuantity.SUPPORT_SHARE), 100 * (to - from) / (endS - from));
        }

        private void freeLeg() {
            TrueCourse whole = course(support.touchdownS(), endS, b -> b.thigh(free));
            add(Measure.FREE_THIGH_MAX, read(PhaseMeasures::freeThighMaxDeg), whole.largest());
            double hold = 100 * whole.shareAtLeast(whole.largest() - HOLD_DEG, support.toeOffS());
            add(Measure.FREE_THIGH_HOLD, read(PhaseMeasures::freeThighHoldPct), hold);
            double least = flight(b -> b.thigh(free)).smallest();
            add(Measure.FREE_THIGH_MIN, read(PhaseQuantity.FREE_THIGH_MIN), least);
            double knee = flight(b -> b.knee(free)).smallest();
            add(Measure.FREE_KNEE_MIN, read(PhaseQuantity.FREE_KNEE_MIN), knee);
            double lever = flight(b -> b.leverPct(free)).smallest();
            add(Measure.FREE_LEVER_MIN, read(PhaseQuantity.FREE_LEVER_MIN), lever);
            double apart = flight(TrueBody::separation).largest();
            add(Measure.THIGH_SEPARATION, read(PhaseQuantity.THIGH_SEPARATION_MAX), apart);
        }

        private void trunkAndHead() {
            TrueCourse trunk = flight(TrueBody::trunk);
            add(Measure.TRUNK_MAX, read(PhaseQuantity.TRUNK_MAX), trunk.largest());
            double change = trunk.last() - trunk.at(support.toeOffS());
            add(Measure.TRUNK_CHANGE, read(PhaseMeasures::trunkChangeDeg), change);
            TrueCourse head = flight(TrueBody::head);
            double nod = head.last() - head.at(support.toeOffS());
            add(Measure.HEAD_CHANGE, read(PhaseQuantity.HEAD_CHANGE), nod);
        }

        private void reach(Foot leg) {
            TrueCourse shank = late(b -> b.shank(leg));
            add(Measure.REACH_SHANK, read(PhaseQuantity.REACH_SHANK_MAX), shank.largest());
            add(Measure.PULL_BACK, read(PhaseQuantity.PULL_BACK), shank.largest() - shank.last());
        }
    }
}
