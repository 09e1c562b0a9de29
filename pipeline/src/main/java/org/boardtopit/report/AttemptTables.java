package org.boardtopit.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.DoubleToIntFunction;
import java.util.stream.Collectors;
import org.boardtopit.clips.AttemptEntry;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.BodyAngle;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.ContactQuantity;
import org.boardtopit.measures.Effort;
import org.boardtopit.measures.PhaseDistances;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.measures.Reading;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.Direction;
import org.boardtopit.report.tables.InstantAngles;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.PhaseRow;

/** Puts one attempt's measures into the rows of the tables: units, plus-minus as two standard deviations, empty cells. */
public final class AttemptTables {
    private static final double PM = 2;

    private final Clip clip;
    private final MeetSheet meet;
    private final AttemptMeasures measures;
    private final DoubleToIntFunction nearestFrame;
    private final boolean metres;

    /** For one measured clip. */
    public AttemptTables(Clip clip, MeetSheet meet, AttemptMeasures measures, MotionTrack motion) {
        this(clip, meet, measures, motion::nearestFrame);
    }

    /**
     * The same where there is no motion in the plane of the run.
     *
     * @param nearestFrame the frame nearest to a time in seconds
     */
    public AttemptTables(Clip clip, MeetSheet meet, AttemptMeasures measures, DoubleToIntFunction nearestFrame) {
        this.clip = clip;
        this.meet = meet;
        this.measures = measures;
        this.nearestFrame = nearestFrame;
        this.metres = measures.scaleSource() != ScaleSource.NONE;
    }

    /**
     * The row of attempts.csv.
     *
     * @param leftToRight true when the athlete runs to the right in the picture
     * @param fps frames captured a second
     */
    public AttemptRow attempt(boolean leftToRight, double fps) {
        Optional<AttemptEntry> entry = clip.entry();
        Optional<PhaseDistances> d = measures.distances();
        Optional<PhaseDistances> m = metres ? d : Optional.empty();
        Optional<Effort> effort = d.map(PhaseDistances::effort);
        OptionalInt number = entry.map(AttemptEntry::attempt).orElse(OptionalInt.empty());
        boolean fromBoard = measures.scaleSource() == ScaleSource.MARKS;
        return new AttemptRow(
                clip.fileName(),
                meet.competition(),
                entry.map(AttemptEntry::event).orElse(""),
                entry.map(AttemptEntry::bib).orElse(""),
                entry.map(AttemptEntry::athlete).orElse(""),
                number.isPresent() ? number.getAsInt() : null,
                entry.flatMap(AttemptEntry::result).orElse(null),
                known(entry.map(AttemptEntry::officialM).orElse(Double.NaN)),
                known(entry.map(AttemptEntry::windMs).orElse(Double.NaN)),
                board().map(Contact::foot).orElse(null),
                leftToRight ? Direction.LEFT_TO_RIGHT : Direction.RIGHT_TO_LEFT,
                known(fps),
                m.map(PhaseDistances::effectiveM).orElse(null),
                fromBoard ? board().map(b -> known(-b.toeAlongM())).orElse(null) : null,
                m.map(PhaseDistances::hopM).orElse(null),
                m.map(PhaseDistances::stepM).orElse(null),
                m.map(PhaseDistances::jumpM).orElse(null),
                d.map(PhaseDistances::hopPct).orElse(null),
                d.map(PhaseDistances::stepPct).orElse(null),
                d.map(PhaseDistances::jumpPct).orElse(null),
                effort.map(Effort::leadPct).orElse(null),
                known(PM * measures.leadSdPct()),
                effort.map(Effort::kind).orElse(null),
                known(measures.approachSpeedMs().value()),
                measures.scaleSource(),
                known(measures.closureRatio()),
                known(measures.gravityRatio()),
                measures.quality(),
                measures.warnings(),
                values(measures.more()));
    }

    private Optional<Contact> board() {
        return measures.contacts().stream()
                .map(ContactMeasures::contact)
                .filter(c -> c.kind() == ContactKind.BOARD)
                .findFirst();
    }

    /** The rows of phases.csv. */
    public List<PhaseRow> phases() {
        List<PhaseRow> rows = new ArrayList<>();
        for (PhaseMeasures p : measures.phases()) {
            rows.add(new PhaseRow(
                    clip.fileName(),
                    p.phase(),
                    p.phase().startS(),
                    p.phase().endS(),
                    known(p.supportTimeS().value()),
                    known(p.flightTimeS().value()),
                    known(p.distanceM().value()),
                    known(PM * p.distanceM().sd()),
                    known(p.sharePct().value()),
                    known(p.vxTakeoffMs().value()),
                    known(p.vyTakeoffMs().value()),
                    known(p.takeoffAngleDeg().value()),
                    known(p.speedChangeMs().value()),
                    known(p.comHeightTakeoffM().value()),
                    known(p.comPeakM().value()),
                    known(p.kneeMinDeg().value()),
                    known(p.freeThighMaxDeg().value()),
                    known(p.freeThighHoldPct().value()),
                    known(p.trunkChangeDeg().value()),
                    p.flightTimeS().isKnown() ? p.arms() : null,
                    values(p.more())));
        }
        return rows;
    }

    /** The rows of contacts.csv. */
    public List<ContactRow> contacts() {
        List<ContactRow> rows = new ArrayList<>();
        boolean placed = measures.scaleSource().tellsTakeoffLine();
        for (ContactMeasures m : measures.contacts()) {
            Contact c = m.contact();
            boolean timed = Double.isFinite(c.toeOffS());
            rows.add(new ContactRow(
                    clip.fileName(),
                    rows.size(),
                    c.kind(),
                    c.foot(),
                    known(c.touchdownS()),
                    known(PM * c.touchdownSdS()),
                    known(c.toeOffS()),
                    known(PM * c.toeOffSdS()),
                    known(c.supportTimeS()),
                    known(PM * m.supportTimeS().sd()),
                    Double.isFinite(c.touchdownS()) ? nearestFrame.applyAsInt(c.touchdownS()) : null,
                    timed ? nearestFrame.applyAsInt(c.toeOffS()) : null,
                    placed ? known(c.toeAlongM()) : null,
                    placed ? known(PM * c.toeAlongSdM()) : null,
                    c.confidence(),
                    c.corrected(),
                    angles(m, true),
                    angles(m, false),
                    values(m.more())));
        }
        return rows;
    }

    /** The rows of intervals.csv. */
    public List<IntervalRow> intervals() {
        return new AttemptIntervals(clip.fileName(), measures).rows();
    }

    private static InstantAngles angles(ContactMeasures m, boolean touchdown) {
        return new InstantAngles(
                angle(m, touchdown, BodyAngle.KNEE),
                angle(m, touchdown, BodyAngle.HIP),
                angle(m, touchdown, BodyAngle.ANKLE),
                angle(m, touchdown, BodyAngle.TRUNK),
                angle(m, touchdown, BodyAngle.SHANK),
                angle(m, touchdown, BodyAngle.THIGH),
                angle(m, touchdown, BodyAngle.FREE_KNEE),
                angle(m, touchdown, BodyAngle.FREE_THIGH),
                angle(m, touchdown, BodyAngle.LEG_PLANT),
                angle(m, touchdown, BodyAngle.FOOT_AHEAD),
                known(m.of(touchdown ? ContactQuantity.SHOULDER_TILT_TOUCHDOWN : ContactQuantity.SHOULDER_TILT_TOE_OFF)
                        .value()),
                angle(m, touchdown, BodyAngle.HEAD),
                angle(m, touchdown, BodyAngle.ELBOW_L),
                angle(m, touchdown, BodyAngle.ELBOW_R));
    }

    private static Double angle(ContactMeasures m, boolean touchdown, BodyAngle angle) {
        Reading reading = touchdown ? m.atTouchdown(angle) : m.atToeOff(angle);
        return known(reading.value());
    }

    private static <K> Map<K, Double> values(Map<K, Reading> readings) {
        return readings.entrySet().stream()
                .filter(e -> e.getValue().isKnown())
                .collect(Collectors.toMap(Map.Entry::getKey, e -> e.getValue().value()));
    }

    private static Double known(double value) {
        return Double.isFinite(value) ? value : null;
    }
}
