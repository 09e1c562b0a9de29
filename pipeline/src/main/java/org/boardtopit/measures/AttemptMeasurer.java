package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.phases.Phase;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.phases.PhaseTimeline;
import org.boardtopit.signal.Point2;
import org.boardtopit.signal.RobustPolynomial;
import org.boardtopit.signal.RobustWeights;

/**
 * Measures an attempt: distances and shares, flights, postures, the checks that tell a wrong scale, and the quality.
 *
 * <p>Definitions are in {@code docs/measures.md}. Lengths and speeds are given only when the scale rests on something.
 */
public final class AttemptMeasurer {
    private static final double APPROACH_M = 5;
    private static final double LEAST_APPROACH_M = 2;
    private static final double HOLD_DEG = 15;
    private static final double LOW_RATIO = 0.97;
    private static final double HIGH_RATIO = 1.03;
    private static final double LOW_GRAVITY = 0.90;
    private static final double HIGH_GRAVITY = 1.10;
    /** From this confidence of the order on an attempt may be good (a first guess, not tuned). */
    private static final double SURE = 0.9;

    /**
     * Without marks perspective stays in the places: a camera that looks 5 degrees past square, or pans, moves shares by 2 to
     * 5 points (measured on our footage with the marks taken away), which is this standard deviation of a place.
     */
    private static final double FLAT_SD_STATURE = 0.15;

    /** Marks give lengths to 0.2 % (13 m to a centimetre, clicks to 2 px: computed, docs/measures.md). */
    private static final double SCALE_SD = 0.002;

    private static final double LEAST_EVENT_SD_S = 0.004; // of an instant that is well timed
    private static final double LEAST_REGISTERED = 0.9;

    private static final ContactKind[] SUPPORTS = {
        ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT
    };
    private static final PhaseName[] JUMP_PHASES = {PhaseName.HOP, PhaseName.STEP, PhaseName.JUMP};

    /**
     * What is known of the attempt from outside the picture.
     *
     * @param scaleSource what the metres of the motion rest on
     * @param officialM distance of the sheet, NaN when there is none
     * @param registeredShare share of the frames whose background was recognised
     * @param warnings what earlier stages had to say, one sentence each
     */
    public record Given(ScaleSource scaleSource, double officialM, double registeredShare, List<String> warnings) {
        public Given {
            warnings = List.copyOf(warnings);
        }
    }

    /** The measures; the same input gives the same output. */
    public AttemptMeasures measure(FittedMotion motion, ContactTimeline contacts, PhaseTimeline phases, Given given) {
        return new Run(motion, contacts, phases, given).result();
    }

    private static final class Run {
        private final FittedMotion motion;
        private final ContactTimeline contacts;
        private final PhaseTimeline phases;
        private final Given given;
        private final boolean metres;
        private final List<String> warnings = new ArrayList<>();

        Run(FittedMotion motion, ContactTimeline contacts, PhaseTimeline phases, Given given) {
            this.motion = motion;
            this.contacts = contacts;
            this.phases = phases;
            this.given = given;
            this.metres = given.scaleSource() != ScaleSource.NONE;
        }

        AttemptMeasures result() {
            List<ContactMeasures> postures =
                    contacts.contacts().stream().map(this::postures).toList();
            List<Optional<Flight>> flights = flights();
            Optional<PhaseDistances> distances = distances();
            double closure = closure();
            double gravity = gravity(flights);
            double approach = approachSpeed();
            Quality quality = quality(distances, closure, gravity);
            double lead = distances.map(this::leadSd).orElse(Double.NaN);
            return new AttemptMeasures(
                    distances,
                    lead,
                    metres ? approach : Double.NaN,
                    given.scaleSource(),
                    closure,
                    gravity,
                    quality,
                    warnings,
                    postures,
                    phaseMeasures(postures, flights, distances, approach));
        }

        private ContactMeasures postures(Contact contact) {
            boolean pit = contact.kind() == ContactKind.PIT;
            Foot foot = pit ? lastFoot() : contact.foot();
            Map<BodyAngle, Reading> touchdown =
                    angles(Instant.touchdown(motion, foot, contact.touchdownS(), contact.touchdownSdS()), contact, pit);
            Map<BodyAngle, Reading> toeOff = pit
                    ? Map.of()
                    : angles(Instant.toeOff(motion, foot, contact.toeOffS(), contact.toeOffSdS()), contact, false);
            return new ContactMeasures(contact, withoutLengths(touchdown), withoutLengths(toeOff));
        }

        private static Map<BodyAngle, Reading> angles(Instant instant, Contact contact, boolean pit) {
            Map<BodyAngle, Reading> angles = instant.angles();
            if (!pit && Double.isFinite(contact.toeAlongM())) {
                angles.put(BodyAngle.FOOT_AHEAD, instant.ahead(contact.toeAlongM(), contact.toeAlongSdM()));
            }
            return angles;
        }

        /** In the pit both legs are on the ground; the leg of the step landing stands for both. */
        private Foot lastFoot() {
            return contacts.of(ContactKind.STEP_LANDING).map(Contact::foot).orElse(Foot.LEFT);
        }

        private Map<BodyAngle, Reading> withoutLengths(Map<BodyAngle, Reading> readings) {
            if (metres) {
                return readings;
            }
            Map<BodyAngle, Reading> angles = new java.util.EnumMap<>(BodyAngle.class);
            angles.putAll(readings);
            angles.remove(BodyAngle.FOOT_AHEAD);
            return angles;
        }

        /** Flights after board, hop landing and step landing. */
        private List<Optional<Flight>> flights() {
            List<Optional<Flight>> flights = new ArrayList<>();
            for (int i = 0; i < 3; i++) {
                Optional<Contact> from = contacts.of(SUPPORTS[i]);
                Optional<Contact> to = contacts.of(SUPPORTS[i + 1]);
                flights.add(
                        from.isPresent() && to.isPresent()
                                ? Flight.between(
                                        motion, from.get().toeOffS(), to.get().touchdownS())
                                : Optional.empty());
            }
            return flights;
        }

        private double toe(ContactKind kind) {
            return contacts.of(kind).map(Contact::toeAlongM).orElse(Double.NaN);
        }

        private double toeSd(ContactKind kind) {
            double own = contacts.of(kind).map(Contact::toeAlongSdM).orElse(Double.NaN);
            return calibrated()
                    ? own
                    : Math.hypot(own, FLAT_SD_STATURE * motion.repaired().statureM());
        }

        /** The official distance is the mark when places count from the take-off line; else the rear heel is. */
        private double mark() {
            boolean official = given.scaleSource() == ScaleSource.MARKS && Double.isFinite(given.officialM());
            return official ? given.officialM() : toe(ContactKind.PIT);
        }

        private double markSd() {
            boolean official = given.scaleSource() == ScaleSource.MARKS && Double.isFinite(given.officialM());
            return official ? 0.01 : toeSd(ContactKind.PIT);
        }

        private Optional<PhaseDistances> distances() {
            double b = toe(ContactKind.BOARD);
            double h = toe(ContactKind.HOP_LANDING);
            double s = toe(ContactKind.STEP_LANDING);
            double m = mark();
            if (!(b < h && h < s && s < m)) {
                return Optional.empty();
            }
            return Optional.of(new PhaseDistances(b, h, s, m));
        }

        private double leadSd(PhaseDistances d) {
            return d.leadSdPct(
                    toeSd(ContactKind.BOARD),
                    toeSd(ContactKind.HOP_LANDING),
                    toeSd(ContactKind.STEP_LANDING),
                    markSd());
        }

        private double closure() {
            boolean checks = given.scaleSource() == ScaleSource.MARKS || given.scaleSource() == ScaleSource.STATURE;
            double measured = given.scaleSource() == ScaleSource.MARKS
                    ? toe(ContactKind.PIT)
                    : toe(ContactKind.PIT) - toe(ContactKind.BOARD);
            return checks ? given.officialM() / measured : Double.NaN;
        }

        private double gravity(List<Optional<Flight>> flights) {
            double sum = 0;
            double weights = 0;
            for (Optional<Flight> flight : flights) {
                if (flight.isPresent() && Double.isFinite(flight.get().gravityRatio())) {
                    double sd = Math.max(0.005, flight.get().gravityRatioSd());
                    sum += flight.get().gravityRatio() / (sd * sd);
                    weights += 1 / (sd * sd);
                }
            }
            return metres && weights > 0 ? sum / weights : Double.NaN;
        }

        private double approachSpeed() {
            Optional<Contact> board = contacts.of(ContactKind.BOARD);
            if (board.isEmpty()) {
                return Double.NaN;
            }
            int end = motion.repaired().frameAtOrAfter(board.get().touchdownS());
            List<double[]> seen = new ArrayList<>();
            double last = Double.NaN;
            for (int f = end - 1; f >= 0; f--) {
                Point2 com = motion.centreOfMass(f);
                if (com.isKnown()) {
                    last = Double.isNaN(last) ? com.x() : last;
                    if (last - com.x() > APPROACH_M) {
                        break;
                    }
                    seen.add(0, new double[] {motion.timeS(f), com.x()});
                }
            }
            if (seen.size() < 6 || last - seen.get(0)[1] < LEAST_APPROACH_M) {
                return Double.NaN;
            }
            return RobustPolynomial.line(
                            seen.stream().mapToDouble(s -> s[0]).toArray(),
                            seen.stream().mapToDouble(s -> s[1]).toArray(),
                            RobustWeights.TUKEY)
                    .slopeAt(seen.get(0)[0]);
        }

        private List<PhaseMeasures> phaseMeasures(
                List<ContactMeasures> postures,
                List<Optional<Flight>> flights,
                Optional<PhaseDistances> distances,
                double approachMs) {
            List<PhaseMeasures> result = new ArrayList<>();
            double speedBefore = approachMs;
            for (Phase phase : phases.phases()) {
                int i = List.of(JUMP_PHASES).indexOf(phase.name());
                if (i < 0) {
                    result.add(PhaseMeasures.spanOnly(phase));
                    continue;
                }
                ContactMeasures support = postures.stream()
                        .filter(m -> m.contact().kind() == SUPPORTS[i])
                        .findFirst()
                        .orElseThrow();
                result.add(phase(phase, i, support, flights.get(i), distances, speedBefore));
                speedBefore = flights.get(i).map(Flight::vxMs).orElse(Double.NaN);
            }
            return result;
        }

        private PhaseMeasures phase(
                Phase phase,
                int i,
                ContactMeasures posture,
                Optional<Flight> flight,
                Optional<PhaseDistances> distances,
                double speedBefore) {
            Contact support = posture.contact();
            double vx = flight.map(Flight::vxMs).orElse(Double.NaN);
            double vy = flight.map(Flight::vyTakeoffMs).orElse(Double.NaN);
            double toeOff = support.toeOffS();
            double[] thigh = freeThigh(support, phase.endS());
            return new PhaseMeasures(
                    phase,
                    support.supportTimeS(),
                    phase.endS() - toeOff,
                    metres ? distance(distances, i) : Reading.UNKNOWN,
                    distances
                            .map(d -> new double[] {d.hopPct(), d.stepPct(), d.jumpPct()}[i])
                            .orElse(Double.NaN),
                    metres
                            ? new Reading(
                                    vx, Math.hypot(flight.map(Flight::vxSdMs).orElse(Double.NaN), SCALE_SD * vx))
                            : Reading.UNKNOWN,
                    metres ? vy : Double.NaN,
                    metres ? Math.toDegrees(Math.atan2(vy, vx)) : Double.NaN,
                    metres ? vx - speedBefore : Double.NaN,
                    calibrated() ? flight.map(Flight::takeoffHeightM).orElse(Double.NaN) : Double.NaN,
                    calibrated() ? flight.map(Flight::peakM).orElse(Double.NaN) : Double.NaN,
                    leastKnee(support),
                    thigh[0],
                    thigh[1],
                    Instant.touchdown(motion, support.foot(), phase.endS(), LEAST_EVENT_SD_S)
                                    .angles()
                                    .get(BodyAngle.TRUNK)
                                    .value()
                            - posture.atToeOff(BodyAngle.TRUNK).value());
        }

        /** Heights count from the ground only with marks. */
        private boolean calibrated() {
            return given.scaleSource() == ScaleSource.MARKS;
        }

        private Reading distance(Optional<PhaseDistances> distances, int i) {
            if (distances.isEmpty()) {
                // A missing mark leaves the jump unknown, but not the hop and the step.
                double from = toe(SUPPORTS[i]);
                double to = i == 2 ? mark() : toe(SUPPORTS[i + 1]);
                return new Reading(to - from, Math.hypot(toeSd(SUPPORTS[i]), toeSd(SUPPORTS[i + 1])));
            }
            PhaseDistances d = distances.get();
            double sd = Math.hypot(toeSd(SUPPORTS[i]), i == 2 ? markSd() : toeSd(SUPPORTS[i + 1]));
            return new Reading(new double[] {d.hopM(), d.stepM(), d.jumpM()}[i], sd);
        }

        private double leastKnee(Contact support) {
            double least = Double.NaN;
            for (int f = motion.repaired().frameAtOrAfter(support.touchdownS());
                    f < motion.frameCount() && motion.timeS(f) <= support.toeOffS();
                    f++) {
                double knee = JointAngles.kneeDeg(
                        motion.smooth(f, support.foot().hip()),
                        motion.smooth(f, support.foot().knee()),
                        motion.smooth(f, support.foot().ankle()));
                least = Double.isFinite(knee) && !(knee >= least) ? knee : least;
            }
            return least;
        }

        /** Largest angle of the free thigh up to the end of the flight, and the share of the flight it is held. */
        private double[] freeThigh(Contact support, double endS) {
            Foot free = support.foot().other();
            double largest = Double.NaN;
            int flightFrames = 0;
            List<Double> inFlight = new ArrayList<>();
            for (int f = motion.repaired().frameAtOrAfter(support.touchdownS());
                    f < motion.frameCount() && motion.timeS(f) <= endS;
                    f++) {
                BodyPoint hip = free.hip();
                double thigh = JointAngles.thighDeg(motion.smooth(f, hip), motion.smooth(f, free.knee()));
                largest = Double.isFinite(thigh) && !(thigh <= largest) ? thigh : largest;
                if (motion.timeS(f) >= support.toeOffS()) {
                    flightFrames++;
                    inFlight.add(thigh);
                }
            }
            double top = largest;
            long held = inFlight.stream().filter(v -> v >= top - HOLD_DEG).count();
            return new double[] {largest, flightFrames == 0 ? Double.NaN : 100.0 * held / flightFrames};
        }

        private Quality quality(Optional<PhaseDistances> distances, double closure, double gravity) {
            warnings.addAll(given.warnings());
            warnings.addAll(contacts.remarks());
            boolean complete = contacts.isComplete();
            boolean sure = complete && contacts.sequenceConfidence() >= SURE;
            boolean checks = true;
            if (complete && !sure) {
                warnings.add(String.format(
                        Locale.ROOT, "the order of contacts is not sure (%.2f)", contacts.sequenceConfidence()));
            }
            if (closure < LOW_RATIO || closure > HIGH_RATIO) {
                warnings.add(String.format(
                        Locale.ROOT, "official over measured distance is %.3f, expected 0.97 to 1.03", closure));
                checks = false;
            }
            if (gravity < LOW_GRAVITY || gravity > HIGH_GRAVITY) {
                warnings.add(String.format(
                        Locale.ROOT, "the fall in flight is %.2f of gravity, expected 0.90 to 1.10", gravity));
                checks = false;
            }
            if (!calibrated() && complete) {
                warnings.add("no marks: distances and shares are as seen in the picture, perspective is not taken out");
                checks = false;
            }
            if (given.registeredShare() < LEAST_REGISTERED) {
                warnings.add(String.format(
                        Locale.ROOT,
                        "the background was recognised in %.0f %% of the frames",
                        100 * given.registeredShare()));
                checks = false;
            }
            if (contacts.contacts().stream().anyMatch(c -> c.kind() != ContactKind.APPROACH && c.frameLimited())) {
                warnings.add("a contact is timed to the nearest frame only");
                checks = false;
            }
            if (complete && distances.isEmpty()) {
                warnings.add("the places of the contacts do not follow one another along the runway");
                checks = false;
            }
            if (!complete || contacts.sequenceConfidence() < 0.5) {
                return Quality.POOR;
            }
            return sure && checks ? Quality.GOOD : Quality.USABLE;
        }
    }
}
