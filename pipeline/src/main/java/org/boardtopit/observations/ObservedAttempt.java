package org.boardtopit.observations;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.clips.Athlete.Sex;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.measures.ArmAction;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.Evidence;
import org.boardtopit.measures.EvidenceTable;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.measures.Quality;
import org.boardtopit.phases.PhaseName;

/**
 * What is held against the rules.
 *
 * @param quality of the clip's numbers
 * @param contacts confidence of each contact of the jump that was found, 0 to 1; none for a drill
 * @param arms action of the arms by phase
 * @param level of the athlete
 * @param sex where known
 */
public record ObservedAttempt(
        EvidenceTable evidence,
        Quality quality,
        Map<ContactKind, Double> contacts,
        Map<PhaseName, ArmAction> arms,
        AthleteLevel level,
        Optional<Sex> sex) {

    private static final Set<ContactKind> JUMP =
            EnumSet.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT);

    public ObservedAttempt {
        contacts = Map.copyOf(contacts);
        arms = Map.copyOf(arms);
    }

    /** Of a measured attempt. */
    public static ObservedAttempt of(AttemptMeasures measures, AthleteLevel level, Optional<Sex> sex) {
        Map<ContactKind, Double> contacts = new EnumMap<>(ContactKind.class);
        for (ContactMeasures m : measures.contacts()) {
            if (JUMP.contains(m.contact().kind())) {
                contacts.merge(m.contact().kind(), m.contact().confidence(), Math::min);
            }
        }
        Map<PhaseName, ArmAction> arms = new EnumMap<>(PhaseName.class);
        for (PhaseMeasures p : measures.phases()) {
            arms.put(p.phase().name(), p.arms());
        }
        return new ObservedAttempt(EvidenceTable.of(measures), measures.quality(), contacts, arms, level, sex);
    }

    /** Least confidence of the contacts that bound a part: those before and after a flight, all for the attempt. */
    double contactConfidence(String part) {
        return contacts.entrySet().stream()
                .filter(e -> bounds(part, e.getKey()))
                .mapToDouble(Map.Entry::getValue)
                .min()
                .orElse(1);
    }

    private static boolean bounds(String part, ContactKind kind) {
        return switch (part) {
            case "hop" -> kind == ContactKind.BOARD || kind == ContactKind.HOP_LANDING;
            case "step" -> kind == ContactKind.HOP_LANDING || kind == ContactKind.STEP_LANDING;
            case "jump" -> kind == ContactKind.STEP_LANDING || kind == ContactKind.PIT;
            case "approach" -> kind == ContactKind.BOARD;
            case "landing" -> kind == ContactKind.PIT;
            case Evidence.ATTEMPT -> true;
            default -> part.equals(kind.label());
        };
    }
}
