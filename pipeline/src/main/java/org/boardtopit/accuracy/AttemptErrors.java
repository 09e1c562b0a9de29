package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.AttemptQuantity;
import org.boardtopit.measures.BodyAngle;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.PhaseDistances;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.measures.Reading;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.phases.PhaseName;

/**
 * The measures of one attempt against its truth. Every true value gives an error, NaN when it was not measured, so that leaving
 * out what is hard does not look better.
 */
final class AttemptErrors {
    private static final List<ContactKind> SUPPORTS =
            List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING);
    private static final List<PhaseName> PHASES = List.of(PhaseName.HOP, PhaseName.STEP, PhaseName.JUMP);

    /** A contact further away in time is another one: strides are some 0.25 s apart. */
    private static final double SAME_CONTACT_S = 0.06;
    /** The board and the landings are found by kind; that far off, it is not the contact that the kind says. */
    private static final double SAME_SUPPORT_S = 0.10;

    private final AttemptTruth truth;
    private final AttemptMeasures measures;
    private final List<MeasuredError> errors = new ArrayList<>();

    AttemptErrors(AttemptTruth truth, AttemptMeasures measures) {
        this.truth = truth;
        this.measures = measures;
    }

    /** All errors, in the order of time within each measure. */
    List<MeasuredError> list() {
        SUPPORTS.forEach(this::support);
        pit();
        approach();
        distances();
        speeds();
        errors.addAll(new MovementErrors(truth, measures).list());
        return List.copyOf(errors);
    }

    private void add(Measure measure, double measured, double true1, double sd) {
        errors.add(MeasuredError.of(measure, measured, true1, sd));
    }

    private Optional<ContactMeasures> found(ContactKind kind) {
        return measures.contacts().stream()
                .filter(c -> c.contact().kind() == kind)
                .findFirst();
    }

    private void support(ContactKind kind) {
        ContactTruth t = truth.contact(kind);
        Optional<Contact> c = found(kind).map(ContactMeasures::contact);
        times(c, t, Measure.TOUCHDOWN, Measure.TOE_OFF, Measure.SUPPORT);
        if (inMetresFromTheLine()) {
            add(Measure.TOE_PLACE, value(c.map(Contact::toeAlongM)), t.toeAlongM(), value(c.map(Contact::toeAlongSdM)));
        }
        angles(found(kind), t);
    }

    private void times(Optional<Contact> c, ContactTruth t, Measure touchdown, Measure toeOff, Measure support) {
        double downSd = value(c.map(Contact::touchdownSdS));
        double upSd = value(c.map(Contact::toeOffSdS));
        add(touchdown, value(c.map(Contact::touchdownS)), t.touchdownS(), downSd);
        add(toeOff, value(c.map(Contact::toeOffS)), t.toeOffS(), upSd);
        // The tables take the errors of both ends as independent (docs/measures.md).
        double supportS = value(c.map(Contact::supportTimeS));
        add(support, supportS, t.toeOffS() - t.touchdownS(), Math.hypot(downSd, upSd));
    }

    private void angles(Optional<ContactMeasures> found, ContactTruth t) {
        for (BodyAngle angle : Measure.ANGLES) {
            if (angle == BodyAngle.FOOT_AHEAD && !hasMetres()) {
                continue;
            }
            Double down = t.touchdown().readings().get(angle);
            if (down != null) {
                Reading r = found.map(c -> c.atTouchdown(angle)).orElse(Reading.UNKNOWN);
                add(Measure.angle(angle, true), r.value(), down, r.sd());
            }
            Double up = t.toeOff().readings().get(angle);
            if (up != null) {
                Reading r = found.map(c -> c.atToeOff(angle)).orElse(Reading.UNKNOWN);
                add(Measure.angle(angle, false), r.value(), up, r.sd());
            }
        }
    }

    private void pit() {
        Optional<Contact> c = found(ContactKind.PIT).map(ContactMeasures::contact);
        add(
                Measure.PIT_TOUCHDOWN,
                value(c.map(Contact::touchdownS)),
                truth.landingS(),
                value(c.map(Contact::touchdownSdS)));
        if (inMetresFromTheLine()) {
            add(Measure.PIT_MARK, value(c.map(Contact::toeAlongM)), truth.markM(), value(c.map(Contact::toeAlongSdM)));
        }
    }

    private void approach() {
        for (ContactTruth t : seenApproach()) {
            nearest(t).filter(c -> c.foot() == t.foot()).ifPresent(c -> {
                Optional<Contact> one = Optional.of(c);
                times(one, t, Measure.APPROACH_TOUCHDOWN, Measure.APPROACH_TOE_OFF, Measure.APPROACH_SUPPORT);
            });
        }
    }

    private List<ContactTruth> seenApproach() {
        return truth.contacts().stream()
                .filter(t -> t.kind() == ContactKind.APPROACH && truth.isSeen(t))
                .toList();
    }

    private List<Contact> foundApproach() {
        return measures.contacts().stream()
                .map(ContactMeasures::contact)
                .filter(c -> c.kind() == ContactKind.APPROACH)
                .toList();
    }

    private Optional<Contact> nearest(ContactTruth t) {
        return foundApproach().stream()
                .filter(c -> near(c, t))
                .min(java.util.Comparator.comparingDouble(c -> Math.abs(c.touchdownS() - t.touchdownS())));
    }

    private static boolean near(Contact c, ContactTruth t) {
        return Math.abs(c.touchdownS() - t.touchdownS()) < SAME_CONTACT_S;
    }

    private void distances() {
        Optional<PhaseDistances> d = measures.distances();
        for (int i = 0; i < PHASES.size(); i++) {
            Optional<PhaseMeasures> phase = phase(i);
            add(Measure.SHARE, phase.map(PhaseMeasures::sharePct), truth.sharePct(i));
            if (hasMetres()) {
                Reading distance = phase.map(PhaseMeasures::distanceM).orElse(Reading.UNKNOWN);
                add(Measure.DISTANCE, distance.value(), truth.phasesM().get(i), distance.sd());
            }
        }
        double lead = value(d.map(p -> p.effort().leadPct()));
        add(Measure.LEAD, lead, truth.leadPct(), measures.leadSdPct());
        if (hasMetres()) {
            add(Measure.EFFECTIVE, value(d.map(PhaseDistances::effectiveM)), truth.effectiveM(), Double.NaN);
        }
        if (inMetresFromTheLine()) {
            double trueLoss = -truth.contact(ContactKind.BOARD).toeAlongM();
            add(Measure.TOE_TO_BOARD, value(d.map(PhaseDistances::toeToBoardM)), trueLoss, Double.NaN);
        }
    }

    private void speeds() {
        if (!hasMetres()) {
            return;
        }
        for (int i = 0; i < PHASES.size(); i++) {
            Optional<PhaseMeasures> phase = phase(i);
            ContactTruth t = truth.contact(SUPPORTS.get(i));
            add(Measure.VX, phase.map(PhaseMeasures::vxTakeoffMs), t.vxMs());
            add(Measure.VY, phase.map(PhaseMeasures::vyTakeoffMs), t.vyMs());
            if (i > 0) {
                double before = truth.contact(SUPPORTS.get(i - 1)).vxMs();
                add(Measure.SPEED_CHANGE, phase.map(PhaseMeasures::speedChangeMs), t.vxMs() - before);
            }
            double angle = Math.toDegrees(Math.atan2(t.vyMs(), t.vxMs()));
            add(Measure.TAKEOFF_ANGLE, phase.map(PhaseMeasures::takeoffAngleDeg), angle);
            if (inMetresFromTheLine()) {
                add(
                        Measure.COM_HEIGHT,
                        phase.map(PhaseMeasures::comHeightTakeoffM),
                        t.toeOff().comHeightM());
            }
        }
        truth.approachSpeedMs().ifPresent(v -> add(Measure.APPROACH_SPEED, Optional.of(measures.approachSpeedMs()), v));
        strides();
        add(Measure.GRAVITY, measures.gravityRatio(), 1, Double.NaN);
    }

    /** Lengths of the last two strides where they were measured; else they may lie outside the picture. */
    private void strides() {
        List<ContactTruth> all = truth.contacts();
        int board = all.indexOf(truth.contact(ContactKind.BOARD));
        Reading lastStride = measures.of(AttemptQuantity.LAST_STRIDE);
        if (board >= 2 && lastStride.isKnown()) {
            double last = all.get(board).toeAlongM() - all.get(board - 1).toeAlongM();
            double before = all.get(board - 1).toeAlongM() - all.get(board - 2).toeAlongM();
            add(Measure.LAST_STRIDES, Optional.of(lastStride), last);
            add(Measure.LAST_STRIDES, Optional.of(measures.of(AttemptQuantity.PENULTIMATE_STRIDE)), before);
        }
    }

    private void add(Measure measure, Optional<Reading> reading, double true1) {
        Reading r = reading.orElse(Reading.UNKNOWN);
        add(measure, r.value(), true1, r.sd());
    }

    private Optional<PhaseMeasures> phase(int i) {
        return measures.phases().stream()
                .filter(p -> p.phase().name() == PHASES.get(i))
                .findFirst();
    }

    /** Places count from the take-off line only with marks. */
    private boolean inMetresFromTheLine() {
        return measures.scaleSource() == ScaleSource.MARKS;
    }

    private boolean hasMetres() {
        return measures.scaleSource() != ScaleSource.NONE;
    }

    private static double value(Optional<Double> value) {
        return value.orElse(Double.NaN);
    }

    /** Whether the contacts themselves were found, with the right feet. */
    ContactScore contacts() {
        boolean right = found(ContactKind.PIT).isPresent() && SUPPORTS.stream().allMatch(this::isRight);
        int hits = 0;
        int wrongFoot = 0;
        for (ContactTruth t : seenApproach()) {
            Optional<Foot> foot = nearest(t).map(Contact::foot);
            hits += foot.filter(f -> f == t.foot()).isPresent() ? 1 : 0;
            wrongFoot += foot.filter(f -> f != t.foot()).isPresent() ? 1 : 0;
        }
        int invented = (int) foundApproach().stream()
                .filter(c -> Double.isFinite(c.touchdownS()))
                .filter(c -> truth.contacts().stream().noneMatch(t -> near(c, t)))
                .count();
        return new ContactScore(1, right ? 1 : 0, seenApproach().size(), hits, wrongFoot, invented);
    }

    private boolean isRight(ContactKind kind) {
        ContactTruth t = truth.contact(kind);
        return found(kind)
                .map(ContactMeasures::contact)
                .filter(c -> c.foot() == t.foot())
                .filter(c -> Math.abs(c.touchdownS() - t.touchdownS()) < SAME_SUPPORT_S)
                .isPresent();
    }
}
