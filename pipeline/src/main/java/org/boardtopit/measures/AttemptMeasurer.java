package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.FoundCamera;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.phases.Phase;
import org.boardtopit.phases.PhaseTimeline;

/**
 * Measures an attempt: distances and shares, flights, postures, the checks that tell a wrong scale, and the quality.
 *
 * <p>Definitions are in {@code docs/measures.md}. Lengths and speeds are given only when the scale rests on something.
 */
public final class AttemptMeasurer {
    /**
     * What lies between the toe and the take-off line when nobody can see it: 0 and 0.06 m are published for two championship
     * jumps (SEEN, see docs), 0.06 to 0.15 m is usual in clubs (common practice, no source).
     */
    public static final double USUAL_TOE_TO_BOARD_M = 0.08;

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
        return new Run(motion, contacts, phases.phases(), given).result();
    }

    private static final class Run {
        private final FittedMotion motion;
        private final ContactTimeline contacts;
        private final List<Phase> phases;
        private final Given given;
        private final MetreScale scale;
        private final JumpPlaces places;

        Run(FittedMotion motion, ContactTimeline contacts, List<Phase> phases, Given given) {
            this.motion = motion;
            this.contacts = contacts;
            this.phases = phases;
            this.given = given;
            this.scale = new MetreScale(
                    given.scaleSource(), given.found(), motion.repaired().statureM());
            this.places = new JumpPlaces(contacts, given.officialM(), scale);
        }

        AttemptMeasures result() {
            List<ContactMeasures> postures = new ContactPostures(motion, contacts.contacts(), scale).all();
            PhaseMeasurer phaseMeasurer = new PhaseMeasurer(motion, contacts, postures, scale, places);
            ApproachMeasures approach = new ApproachMeasures(motion, contacts, scale.relativeSd(places.distances()));
            double closure = places.closure();
            double gravity = gravity(phaseMeasurer.flights(phases));
            List<QualityCause> causes = causes(closure, gravity);
            Optional<LastStrides> strides = scale.inMetres() ? approach.lastStrides() : Optional.empty();
            List<PhaseMeasures> measured = phaseMeasurer.measure(phases, approach.speed());
            return new AttemptMeasures(
                    places.distances(),
                    places.leadSdPct(),
                    approach.speed().onlyIf(scale.inMetres()),
                    given.scaleSource(),
                    closure,
                    gravity,
                    QualityCauses.worst(causes),
                    warnings(causes),
                    postures,
                    measured,
                    more(approach, strides, measured));
        }

        private Map<AttemptQuantity, Reading> more(
                ApproachMeasures approach, Optional<LastStrides> strides, List<PhaseMeasures> measured) {
            Map<AttemptQuantity, Reading> more = new EnumMap<>(AttemptQuantity.class);
            if (scale.inMetres()) {
                more.putAll(approach.more());
            }
            strides.ifPresent(s -> {
                more.put(AttemptQuantity.PENULTIMATE_STRIDE, s.penultimateM());
                more.put(AttemptQuantity.LAST_STRIDE, s.lastM());
                more.put(AttemptQuantity.LAST_STRIDE_RATIO, s.ratio());
            });
            more.put(AttemptQuantity.SIT_BACK, places.sitBackM());
            if (!contacts.isDrill()) {
                Rhythm.of(measured).ifPresent(rhythm -> more.put(AttemptQuantity.RHYTHM_EVENNESS, rhythm));
            }
            return more;
        }

        private List<String> warnings(List<QualityCause> causes) {
            List<String> warnings = new ArrayList<>(given.warnings());
            warnings.addAll(contacts.isPatternMissing() ? List.of() : contacts.remarks());
            causes.forEach(c -> warnings.add(c.sentence()));
            return warnings;
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
            return scale.inMetres() && weights > 0 ? sum / weights : Double.NaN;
        }

        private List<QualityCause> causes(double closure, double gravity) {
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
                    given.registration().referencePoints(),
                    given.registration().driftPx(),
                    sharpness.legSdStature(),
                    sharpness.fastFootRatio(),
                    motion.repaired().repairs().secondModeShare()
                            + motion.repaired().repairs().droppedShare(),
                    motion.repaired().repairs().legsExchangedShare(),
                    contacts.isPatternMissing() || contacts.isComplete(),
                    contacts.isPatternMissing() ? 1 : contacts.sequenceConfidence(),
                    (int) loose,
                    contacts.isDrill()
                            || contacts.isPatternMissing()
                            || places.distances().isPresent(),
                    scale.view(),
                    closure,
                    gravity)));
            return causes;
        }
    }
}
