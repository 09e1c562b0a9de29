package org.boardtopit.report.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.boardtopit.clips.Label;
import org.boardtopit.measures.ArmAction;
import org.boardtopit.measures.PhaseQuantity;
import org.boardtopit.phases.PhaseName;

/**
 * One phase of an attempt: a row of phases.csv. Null where something is not known or not measurable.
 *
 * @param phase its name, of a drill after the pattern: a {@link org.boardtopit.phases.Phase} or the name alone
 * @param startS seconds after the first frame of the clip
 * @param supportTimeS of the contact the phase begins with
 * @param flightTimeS of the flight after it
 * @param sharePct of the effective distance
 * @param speedChangeMs horizontal speed at toe-off less that at touchdown of the contact the phase begins with
 * @param comPeakM greatest height of the centre of mass in the phase
 */
public record PhaseRow(
        String clip,
        Label phase,
        Double startS,
        Double endS,
        Double supportTimeS,
        Double flightTimeS,
        Double distanceM,
        Double distancePmM,
        Double sharePct,
        Double vxTakeoffMs,
        Double vyTakeoffMs,
        Double takeoffAngleDeg,
        Double speedChangeMs,
        Double comHeightTakeoffM,
        Double comPeakM,
        Double kneeMinDeg,
        Double freeThighMaxDeg,
        Double freeThighHoldPct,
        Double trunkChangeDeg,
        ArmAction armAction,
        Map<PhaseQuantity, Double> more) {

    /** A number follows where a drill has several of a name. */
    private static final String NAMES = "(" + Column.oneOf(PhaseName.values()) + ")(_[1-9][0-9]*)?";

    /** The columns of phases.csv. */
    public static final Table<PhaseRow> TABLE = new Table<>("phases.csv", columns());

    public PhaseRow {
        Objects.requireNonNull(clip, "clip");
        Objects.requireNonNull(phase, "phase");
        more = Map.copyOf(more);
    }

    private static List<Column<PhaseRow>> columns() {
        List<Column<PhaseRow>> columns = new ArrayList<>(List.of(
                Column.text("clip", PhaseRow::clip),
                Column.label("phase", NAMES, PhaseRow::phase),
                Column.number("start_s", 4, PhaseRow::startS),
                Column.number("end_s", 4, PhaseRow::endS),
                Column.number("support_time_s", 4, PhaseRow::supportTimeS),
                Column.number("flight_time_s", 4, PhaseRow::flightTimeS),
                Column.number("distance_m", 3, PhaseRow::distanceM),
                Column.number("distance_pm_m", 3, PhaseRow::distancePmM),
                Column.number("share_pct", 2, PhaseRow::sharePct),
                Column.number("vx_takeoff_ms", 2, PhaseRow::vxTakeoffMs),
                Column.number("vy_takeoff_ms", 2, PhaseRow::vyTakeoffMs),
                Column.number("takeoff_angle_deg", 1, PhaseRow::takeoffAngleDeg),
                Column.number("speed_change_ms", 2, PhaseRow::speedChangeMs),
                Column.number("com_height_takeoff_m", 3, PhaseRow::comHeightTakeoffM),
                Column.number("com_peak_m", 3, PhaseRow::comPeakM),
                Column.number("knee_min_deg", 1, PhaseRow::kneeMinDeg),
                Column.number("free_thigh_max_deg", 1, PhaseRow::freeThighMaxDeg),
                Column.number("free_thigh_hold_pct", 1, PhaseRow::freeThighHoldPct),
                Column.number("trunk_change_deg", 1, PhaseRow::trunkChangeDeg)));
        columns.add(Column.label("arm_action", Column.oneOf(ArmAction.values()), PhaseRow::armAction));
        for (PhaseQuantity quantity : PhaseQuantity.values()) {
            columns.add(Column.number(
                    quantity.column(), quantity.decimals(), row -> row.more().get(quantity)));
        }
        return columns;
    }
}
