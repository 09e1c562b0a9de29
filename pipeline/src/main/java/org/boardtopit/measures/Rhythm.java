package org.boardtopit.measures;

import java.util.List;
import java.util.Optional;
import org.boardtopit.phases.PhaseName;

/**
 * How even the three ground contacts follow one another: the interval from hop landing to step landing over that from board to
 * hop landing. The third interval ends with both feet in the sand, after a flight that is meant to be longer, and does not count.
 */
final class Rhythm {
    private Rhythm() {}

    /** In per cent, 100 even, less when the step is the shorter; seen at the landing of the step. */
    static Optional<Reading> of(List<PhaseMeasures> phases) {
        Optional<PhaseMeasures> hop = named(phases, PhaseName.HOP);
        Optional<PhaseMeasures> step = named(phases, PhaseName.STEP);
        if (hop.isEmpty() || step.isEmpty()) {
            return Optional.empty();
        }
        Reading first = hop.get().of(PhaseQuantity.INTERVAL);
        Reading second = step.get().of(PhaseQuantity.INTERVAL);
        double ratio = second.value() / first.value();
        // Both hold the landing of the hop, so adding their errors as if they were independent says too little; their
        // sum does not.
        double sd = (second.sd() + ratio * first.sd()) / first.value();
        return Optional.of(new Reading(100 * ratio, 100 * sd, step.get().phase().endS()));
    }

    private static Optional<PhaseMeasures> named(List<PhaseMeasures> phases, PhaseName name) {
        return phases.stream()
                .filter(p ->
                        p.phase().name() == name && p.of(PhaseQuantity.INTERVAL).isKnown())
                .findFirst();
    }
}
