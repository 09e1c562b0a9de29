package org.boardtopit.measures;

import java.util.Map;
import org.boardtopit.phases.Phase;

/**
 * What is measured of one phase; unknown where it was not, lengths are in metres only when the attempt has a scale.
 *
 * @param comHeightTakeoffM height of the centre of mass at toe-off
 * @param comPeakM its largest height in the flight
 * @param kneeMinDeg least inner knee angle of the supporting leg during support
 * @param freeThighMaxDeg largest angle of the free thigh from touchdown to the end of the flight
 * @param freeThighHoldPct share of the flight with that thigh within 15 degrees of its largest angle
 * @param trunkChangeDeg trunk lean at the end of the flight less that at toe-off
 * @param arms how the arms go with the support and the flight
 * @param more what is not in it was not measured
 */
public record PhaseMeasures(
        Phase phase,
        Reading supportTimeS,
        Reading flightTimeS,
        Reading distanceM,
        Reading sharePct,
        Reading vxTakeoffMs,
        Reading vyTakeoffMs,
        Reading takeoffAngleDeg,
        Reading speedChangeMs,
        Reading comHeightTakeoffM,
        Reading comPeakM,
        Reading kneeMinDeg,
        Reading freeThighMaxDeg,
        Reading freeThighHoldPct,
        Reading trunkChangeDeg,
        ArmAction arms,
        Map<PhaseQuantity, Reading> more) {

    public PhaseMeasures {
        more = Map.copyOf(more);
    }

    /** A reading, unknown when it was not made. */
    public Reading of(PhaseQuantity quantity) {
        return more.getOrDefault(quantity, Reading.UNKNOWN);
    }

    /** The same with other further quantities. */
    public PhaseMeasures with(Map<PhaseQuantity, Reading> others) {
        return new PhaseMeasures(
                phase,
                supportTimeS,
                flightTimeS,
                distanceM,
                sharePct,
                vxTakeoffMs,
                vyTakeoffMs,
                takeoffAngleDeg,
                speedChangeMs,
                comHeightTakeoffM,
                comPeakM,
                kneeMinDeg,
                freeThighMaxDeg,
                freeThighHoldPct,
                trunkChangeDeg,
                arms,
                others);
    }

    /** A phase of which only its span is said (approach without speed, landing). */
    static PhaseMeasures spanOnly(Phase phase) {
        Reading unknown = Reading.UNKNOWN;
        return new PhaseMeasures(
                phase,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                unknown,
                ArmAction.NOT_SEEN,
                Map.of());
    }
}
