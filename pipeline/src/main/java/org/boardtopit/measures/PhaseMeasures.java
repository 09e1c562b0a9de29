package org.boardtopit.measures;

import java.util.LinkedHashMap;
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

    /** Every reading by its column in phases.csv, always all of them in the same order; unknown where it was not made. */
    public Map<String, Reading> byColumn() {
        Map<String, Reading> readings = new LinkedHashMap<>();
        readings.put("distance_m", distanceM);
        readings.put("share_pct", sharePct);
        readings.put("support_time_s", supportTimeS);
        readings.put("flight_time_s", flightTimeS);
        readings.put("vx_takeoff_ms", vxTakeoffMs);
        readings.put("vy_takeoff_ms", vyTakeoffMs);
        readings.put("takeoff_angle_deg", takeoffAngleDeg);
        readings.put("speed_change_ms", speedChangeMs);
        readings.put("com_height_takeoff_m", comHeightTakeoffM);
        readings.put("com_peak_m", comPeakM);
        readings.put("knee_min_deg", kneeMinDeg);
        readings.put("free_thigh_max_deg", freeThighMaxDeg);
        readings.put("free_thigh_hold_pct", freeThighHoldPct);
        readings.put("trunk_change_deg", trunkChangeDeg);
        for (PhaseQuantity quantity : PhaseQuantity.values()) {
            readings.put(quantity.column(), of(quantity));
        }
        return readings;
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

    /** The same with another change of speed. */
    PhaseMeasures withSpeedChange(Reading change) {
        return new PhaseMeasures(
                phase,
                supportTimeS,
                flightTimeS,
                distanceM,
                sharePct,
                vxTakeoffMs,
                vyTakeoffMs,
                takeoffAngleDeg,
                change,
                comHeightTakeoffM,
                comPeakM,
                kneeMinDeg,
                freeThighMaxDeg,
                freeThighHoldPct,
                trunkChangeDeg,
                arms,
                more);
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
