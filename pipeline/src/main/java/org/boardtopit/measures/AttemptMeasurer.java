package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.FoundCamera;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.phases.Phase;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.phases.PhaseTimeline;
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
    private static final int LEAST_APPROACH_FRAMES = 6;
    /** A stride takes 0.2 to 0.3 s (common practice, no source); longer and a contact between was missed. */
    private static final double LONGEST_STRIDE_S = 0.4;

    private static final double HOLD_DEG = 15;

    /**
     * Without marks perspective stays in the places: a camera that looks 5 degrees past square, or pans, moves shares by 2 to
     * 5 points (measured on our footage with the marks taken away), which is this standard deviation of a place.
     */
    private static final double FLAT_SD_STATURE = 0.15;

    /** Marks give lengths to 0.2 % (13 m to a centimetre, clicks to 2 px: computed, docs/measures.md). */
    private static final double SCALE_SD = 0.002;
    /** A standing height gives lengths in a flat picture to 4 or 5 % (common practice, docs/measures.md). */
    private static final double STATURE_SCALE_SD = 0.045;

    /**
     * What lies between the toe and the take-off line when nobody can see it: 0 and 0.06 m are published for two championship
     * jumps (SEEN, see docs), 0.06 to 0.15 m is usual in clubs (common practice, no source).
     */
    public static final double USUAL_TOE_TO_BOARD_M = 0.08;

    private static final double TOE_TO_BOARD_SD_M = 0.06;

    private static final double LEAST_EVENT_SD_S = 0.004; // of an instant that is well timed

    private static final ContactKind[] SUPPORTS = {
        ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT
    };
    private static final PhaseName[] JUMP_PHASES = {PhaseName.HOP, PhaseName.STEP, PhaseName.JUMP};

    /**
     * What is known of the attempt from outside the picture.
     *
     * @param scaleSource what the metres of the motion rest on
     * @param found the camera, when it was found from the run and not from marks
     * @param officialM distance of the sheet, NaN when there is none
     * @param registeredShare share of the frames whose background was recognised
     * @param registration how well these fit together
     * @param athletePx standing height of the athlete in pixels of the frame, NaN when not known
     * @param warnings what earlier stages had to say, one sentence each
     */
    public record Given(
            ScaleSource scaleSource,
            Optional<FoundCamera> found,
            double officialM,
            double registeredShare,
            RegistrationFacts registration,
            double athletePx,
            List<String> warnings) {
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
        private final CameraDoubt doubts;

        Run(FittedMotion motion, ContactTimeline contacts, PhaseTimeline phases, Given given) {
            this.motion = motion;
            this.contacts = contacts;
            this.phases = phases;
            this.given = given;
            this.metres = given.scaleSource() != ScaleSource.NONE;
            boolean onOfficial = given.scaleSource() == ScaleSource.OFFICIAL;
            this.doubts = new CameraDoubt(given.found(), onOfficial ? TOE_TO_BOARD_SD_M : Double.NaN);
        }

        AttemptMeasures result() {
            List<ContactMeasures> postures =
                    contacts.contacts().stream().map(this::postures).toList();
            List<Optional<Flight>> flights = flights();
            Optional<PhaseDistances> distances = distances();
            double closure = closure();
            double gravity = gravity(flights);
            Reading approach = approachSpeed(scaleSd(distances));
            List<QualityCause> causes = causes(distances, closure, gravity);
            Optional<LastStrides> strides = metres ? lastStrides() : Optional.empty();
            double lead = distances.map(this::leadSd).orElse(Double.NaN);
            return new AttemptMeasures(
                    distances,
                    lead,
                    approach.onlyIf(metres),
                    strides,
                    given.scaleSource(),
                    closure,
                    gravity,
                    QualityCauses.worst(causes),
                    warnings(causes),
                    postures,
                    phaseMeasures(postures, flights, distances, approach),
                    more(strides));
        }

        private static Map<AttemptQuantity, Reading> more(Optional<LastStrides> strides) {
            Map<AttemptQuantity, Reading> more = new EnumMap<>(AttemptQuantity.class);
            strides.ifPresent(s -> {
                more.put(AttemptQuantity.PENULTIMATE_STRIDE, s.penultimateM());
                more.put(AttemptQuantity.LAST_STRIDE, s.lastM());
                more.put(AttemptQuantity.LAST_STRIDE_RATIO, s.ratio());
            });
            return more;
        }

        private List<String> warnings(List<QualityCause> causes) {
            List<String> warnings = new ArrayList<>(given.warnings());
            warnings.addAll(contacts.isPatternMissing() ? List.of() : contacts.remarks());
            causes.forEach(c -> warnings.add(c.sentence()));
            return warnings;
        }

        private ContactMeasures postures(Contact contact) {
            boolean pit = contact.kind() == ContactKind.PIT;
            Foot foot = pit ? lastFoot() : contact.foot();
            Map<BodyAngle, Reading> touchdown =
                    angles(Instant.touchdown(motion, foot, contact.touchdownS(), contact.touchdownSdS()), contact, pit);
            Map<BodyAngle, Reading> toeOff = pit
                    ? Map.of()
                    : angles(Instant.toeOff(motion, foot, contact.toeOffS(), contact.toeOffSdS()), contact, false);
            return new ContactMeasures(contact, withoutLengths(touchdown), withoutLengths(toeOff), Map.of());
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
            Map<BodyAngle, Reading> angles = new EnumMap<>(BodyAngle.class);
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
            return calibrated() || given.found().isPresent()
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
            double ofPlaces = d.leadSdPct(
                    toeSd(ContactKind.BOARD),
                    toeSd(ContactKind.HOP_LANDING),
                    toeSd(ContactKind.STEP_LANDING),
                    markSd());
            return Math.hypot(ofPlaces, doubts.leadSdPct(d));
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

        private Reading approachSpeed(double scaleSd) {
            Optional<Contact> board = contacts.of(ContactKind.BOARD);
            if (board.isEmpty()) {
                return Reading.UNKNOWN;
            }
            int end = motion.repaired().frameAtOrAfter(board.get().touchdownS());
            double last = end > 0 ? motion.centreOfMass(end - 1).x() : Double.NaN;
            int first = end;
            while (first > 0 && last - motion.centreOfMass(first - 1).x() <= APPROACH_M) {
                first--; // ends where the centre of mass is not known, too
            }
            double[] t = new double[end - first];
            double[] x = new double[end - first];
            for (int i = 0; i < t.length; i++) {
                t[i] = motion.timeS(first + i);
                x[i] = motion.centreOfMass(first + i).x();
            }
            if (t.length < LEAST_APPROACH_FRAMES || last - x[0] < LEAST_APPROACH_M) {
                return Reading.UNKNOWN;
            }
            RobustPolynomial line = RobustPolynomial.line(t, x, RobustWeights.TUKEY);
            double speed = line.slopeAt(t[0]);
            double sd = Flight.slopeSd(motion, first, t, false);
            // Not fitted so far back: the points' noise alone.
            double known = Double.isFinite(sd) ? sd : line.slopeSdAt(t[0]);
            return new Reading(speed, Math.hypot(known, scaleSd * speed));
        }

        /** Of the last two contacts before the board; empty when one between them may have been missed. */
        private Optional<LastStrides> lastStrides() {
            List<Contact> strides = contacts.contacts().stream()
                    .filter(c -> c.kind() == ContactKind.APPROACH || c.kind() == ContactKind.BOARD)
                    .toList();
            int n = strides.size();
            if (n < 3 || strides.get(n - 1).kind() != ContactKind.BOARD) {
                return Optional.empty();
            }
            for (int i = n - 3; i < n - 1; i++) {
                boolean alternate =
                        strides.get(i).foot() == strides.get(i + 1).foot().other();
                double step = strides.get(i + 1).touchdownS() - strides.get(i).touchdownS();
                if (!alternate || !(step < LONGEST_STRIDE_S)) {
                    return Optional.empty();
                }
            }
            return Optional.of(
                    LastStrides.of(place(strides.get(n - 3)), place(strides.get(n - 2)), place(strides.get(n - 1))));
        }

        private static Reading place(Contact contact) {
            return new Reading(contact.toeAlongM(), contact.toeAlongSdM());
        }

        private List<PhaseMeasures> phaseMeasures(
                List<ContactMeasures> postures,
                List<Optional<Flight>> flights,
                Optional<PhaseDistances> distances,
                Reading approach) {
            List<PhaseMeasures> result = new ArrayList<>();
            Reading speedBefore = approach;
            for (Phase phase : phases.phases()) {
                int i = contacts.isDrill() ? -1 : List.of(JUMP_PHASES).indexOf(phase.name());
                if (i < 0) {
                    result.add(PhaseMeasures.spanOnly(phase));
                    continue;
                }
                ContactMeasures support = postures.stream()
                        .filter(m -> m.contact().kind() == SUPPORTS[i])
                        .findFirst()
                        .orElseThrow();
                result.add(phase(phase, i, support, flights.get(i), distances, speedBefore));
                speedBefore = flights.get(i).map(Flight::vx).orElse(Reading.UNKNOWN);
            }
            return result;
        }

        private PhaseMeasures phase(
                Phase phase,
                int i,
                ContactMeasures posture,
                Optional<Flight> flight,
                Optional<PhaseDistances> distances,
                Reading speedBefore) {
            Contact support = posture.contact();
            Reading vx = flight.map(Flight::vx).orElse(Reading.UNKNOWN).onlyIf(metres);
            Reading vy = flight.map(Flight::vy).orElse(Reading.UNKNOWN).onlyIf(metres);
            double scaleSd = scaleSd(distances);
            double[] thigh = freeThigh(support, phase.endS());
            return new PhaseMeasures(
                    phase,
                    support.supportTimeS(),
                    new Reading(phase.endS() - support.toeOffS(), Math.hypot(support.toeOffSdS(), endSd(i))),
                    distance(distances, i).onlyIf(metres),
                    distances.map(d -> share(d, i)).orElse(Reading.UNKNOWN),
                    scaled(vx, scaleSd),
                    scaled(vy, scaleSd),
                    takeoffAngle(vx, vy),
                    scaled(
                            new Reading(vx.value() - speedBefore.value(), Math.hypot(vx.sd(), speedBefore.sd())),
                            scaleSd),
                    grounded() ? flight.map(Flight::takeoffHeightM).orElse(Double.NaN) : Double.NaN,
                    grounded() ? flight.map(Flight::peakM).orElse(Double.NaN) : Double.NaN,
                    leastKnee(support),
                    thigh[0],
                    thigh[1],
                    Instant.touchdown(motion, support.foot(), phase.endS(), LEAST_EVENT_SD_S)
                                    .angles()
                                    .get(BodyAngle.TRUNK)
                                    .value()
                            - posture.atToeOff(BodyAngle.TRUNK).value(),
                    ArmAction.NOT_SEEN,
                    Map.of());
        }

        /** Standard deviation of the touchdown that ends a phase. */
        private double endSd(int i) {
            return contacts.of(SUPPORTS[i + 1]).map(Contact::touchdownSdS).orElse(Double.NaN);
        }

        private static Reading scaled(Reading reading, double scaleSd) {
            return new Reading(reading.value(), Math.hypot(reading.sd(), scaleSd * reading.value()));
        }

        /** A wrong scale turns both speeds alike and leaves the angle. */
        private static Reading takeoffAngle(Reading vx, Reading vy) {
            double square = vx.value() * vx.value() + vy.value() * vy.value();
            double sd = Math.hypot(vx.value() * vy.sd(), vy.value() * vx.sd()) / square;
            return new Reading(Math.toDegrees(Math.atan2(vy.value(), vx.value())), Math.toDegrees(sd));
        }

        private Reading share(PhaseDistances d, int i) {
            double[] shares = {d.hopPct(), d.stepPct(), d.jumpPct()};
            double[] sds = d.shareSdsPct(
                    toeSd(ContactKind.BOARD),
                    toeSd(ContactKind.HOP_LANDING),
                    toeSd(ContactKind.STEP_LANDING),
                    markSd());
            // What an unknown camera adds to the lead, the difference of two shares, it adds to each at most.
            return new Reading(shares[i], Math.hypot(sds[i], doubts.leadSdPct(d)));
        }

        private boolean calibrated() {
            return given.scaleSource() == ScaleSource.MARKS;
        }

        /** Standard deviation of the scale over itself. */
        private double scaleSd(Optional<PhaseDistances> distances) {
            if (calibrated()) {
                return SCALE_SD;
            }
            return given.found().isPresent() && distances.isPresent()
                    ? doubts.scaleSd(distances.get())
                    : STATURE_SCALE_SD;
        }

        /** Heights count from the ground when the camera is known, from marks or from the run. */
        private boolean grounded() {
            return calibrated() || (metres && given.found().isPresent());
        }

        private Reading distance(Optional<PhaseDistances> distances, int i) {
            if (distances.isEmpty()) {
                // A missing mark leaves the jump unknown, but not the hop and the step.
                double from = toe(SUPPORTS[i]);
                double to = i == 2 ? mark() : toe(SUPPORTS[i + 1]);
                return new Reading(to - from, Math.hypot(toeSd(SUPPORTS[i]), toeSd(SUPPORTS[i + 1])));
            }
            PhaseDistances d = distances.get();
            double ofPlaces = Math.hypot(toeSd(SUPPORTS[i]), i == 2 ? markSd() : toeSd(SUPPORTS[i + 1]));
            double sd = Math.hypot(ofPlaces, doubts.phaseSdM(d, i));
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

        private List<QualityCause> causes(Optional<PhaseDistances> distances, double closure, double gravity) {
            long loose = contacts.contacts().stream()
                    .filter(c -> c.kind() != ContactKind.APPROACH
                            && (c.touchdownSdS() > ClipFacts.LOOSE_S || c.toeOffSdS() > ClipFacts.LOOSE_S))
                    .count();
            Sharpness sharpness = Sharpness.of(motion.repaired());
            List<QualityCause> causes = new ArrayList<>();
            if (contacts.isPatternMissing()) {
                contacts.remarks().forEach(r -> causes.add(new QualityCause(Quality.POOR, r)));
            }
            causes.addAll(QualityCauses.of(new ClipFacts(
                    given.athletePx(),
                    1 / motion.repaired().frameStepS(),
                    given.registeredShare(),
                    given.registration().residualPx(),
                    given.registration().inliers(),
                    given.registration().driftPx(),
                    sharpness.legSdStature(),
                    sharpness.fastFootRatio(),
                    motion.repaired().repairs().secondModeShare()
                            + motion.repaired().repairs().droppedShare(),
                    motion.repaired().repairs().legsExchangedShare(),
                    contacts.isPatternMissing() || contacts.isComplete(),
                    contacts.isPatternMissing() ? 1 : contacts.sequenceConfidence(),
                    (int) loose,
                    contacts.isDrill() || contacts.isPatternMissing() || distances.isPresent(),
                    calibrated()
                            ? ClipFacts.View.MARKS
                            : given.found().isPresent() ? ClipFacts.View.RUN : ClipFacts.View.FLAT,
                    closure,
                    gravity)));
            return causes;
        }
    }
}
