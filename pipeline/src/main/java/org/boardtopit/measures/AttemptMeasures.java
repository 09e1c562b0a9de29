package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.ContactKind;

/**
 * All numbers of one attempt.
 *
 * @param distances places of the toes and the mark; empty when one of them is missing or there are no metres
 * @param leadSdPct standard deviation of the lead of the largest share, NaN when unknown
 * @param approachSpeedMs mean speed of the centre of mass over the last 5 m before the board, unknown when too little of it is seen
 * @param closureRatio official distance over the measured one, NaN when either is unknown
 * @param gravityRatio of the flights, NaN when unknown
 * @param warnings one sentence each
 * @param more what is not in it was not measured
 */
public record AttemptMeasures(
        Optional<PhaseDistances> distances,
        double leadSdPct,
        Reading approachSpeedMs,
        ScaleSource scaleSource,
        double closureRatio,
        double gravityRatio,
        Quality quality,
        List<String> warnings,
        List<ContactMeasures> contacts,
        List<PhaseMeasures> phases,
        Map<AttemptQuantity, Reading> more) {

    public AttemptMeasures {
        warnings = List.copyOf(warnings);
        contacts = List.copyOf(contacts);
        phases = List.copyOf(phases);
        more = Map.copyOf(more);
    }

    /** True when the contacts are those of a drill's pattern and not of a triple jump. */
    public boolean isDrill() {
        return contacts.stream().anyMatch(m -> m.contact().kind() == ContactKind.DRILL);
    }

    /** A reading, unknown when it was not made. */
    public Reading of(AttemptQuantity quantity) {
        return more.getOrDefault(quantity, Reading.UNKNOWN);
    }

    /** The same with other contacts and phases. */
    public AttemptMeasures with(List<ContactMeasures> otherContacts, List<PhaseMeasures> otherPhases) {
        return new AttemptMeasures(
                distances,
                leadSdPct,
                approachSpeedMs,
                scaleSource,
                closureRatio,
                gravityRatio,
                quality,
                warnings,
                otherContacts,
                otherPhases,
                more);
    }

    /** The same with one more warning. */
    public AttemptMeasures withWarning(String warning) {
        List<String> all = new ArrayList<>(warnings);
        all.add(warning);
        return new AttemptMeasures(
                distances,
                leadSdPct,
                approachSpeedMs,
                scaleSource,
                closureRatio,
                gravityRatio,
                quality,
                all,
                contacts,
                phases,
                more);
    }
}
