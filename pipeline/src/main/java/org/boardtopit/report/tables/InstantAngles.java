package org.boardtopit.report.tables;

import java.util.List;
import java.util.function.Function;

/**
 * The posture at one instant of a contact, its touchdown or its toe-off. Null where an angle is not measurable.
 *
 * <p>{@code docs/measures.md} defines the angles. The leg without "free" is the one on the ground.
 *
 * @param kneeDeg inner angle, like those of hip, ankle and elbows: 180 when straight
 * @param trunkDeg from the vertical, forward positive
 * @param shankDeg from the vertical, positive with the ankle ahead of the knee
 * @param thighDeg from hanging down, forward positive, like freeThighDeg
 * @param legPlantDeg of the leg on the ground, from the horizontal; 90 with the foot under the body
 * @param footAheadM from the centre of mass to the foot on the ground, along the runway
 */
public record InstantAngles(
        Double kneeDeg,
        Double hipDeg,
        Double ankleDeg,
        Double trunkDeg,
        Double shankDeg,
        Double thighDeg,
        Double freeKneeDeg,
        Double freeThighDeg,
        Double legPlantDeg,
        Double footAheadM,
        Double shoulderTiltDeg,
        Double headDeg,
        Double elbowLDeg,
        Double elbowRDeg) {

    /** Nothing is measurable. */
    public static final InstantAngles NONE =
            new InstantAngles(null, null, null, null, null, null, null, null, null, null, null, null, null, null);

    /**
     * The columns of one instant.
     *
     * @param instant touchdown or toe_off, a part of the columns' names
     * @param of the instant of a row
     */
    static <R> List<Column<R>> columns(String instant, Function<R, InstantAngles> of) {
        return List.of(
                column("knee", "deg", 1, instant, of, InstantAngles::kneeDeg),
                column("hip", "deg", 1, instant, of, InstantAngles::hipDeg),
                column("ankle", "deg", 1, instant, of, InstantAngles::ankleDeg),
                column("trunk", "deg", 1, instant, of, InstantAngles::trunkDeg),
                column("shank", "deg", 1, instant, of, InstantAngles::shankDeg),
                column("thigh", "deg", 1, instant, of, InstantAngles::thighDeg),
                column("free_knee", "deg", 1, instant, of, InstantAngles::freeKneeDeg),
                column("free_thigh", "deg", 1, instant, of, InstantAngles::freeThighDeg),
                column("leg_plant", "deg", 1, instant, of, InstantAngles::legPlantDeg),
                column("foot_ahead", "m", 3, instant, of, InstantAngles::footAheadM),
                column("shoulder_tilt", "deg", 1, instant, of, InstantAngles::shoulderTiltDeg),
                column("head", "deg", 1, instant, of, InstantAngles::headDeg),
                column("elbow_l", "deg", 1, instant, of, InstantAngles::elbowLDeg),
                column("elbow_r", "deg", 1, instant, of, InstantAngles::elbowRDeg));
    }

    private static <R> Column<R> column(
            String name,
            String unit,
            int decimals,
            String instant,
            Function<R, InstantAngles> of,
            Function<InstantAngles, Double> value) {
        return Column.number(name + "_" + instant + "_" + unit, decimals, of.andThen(value));
    }
}
