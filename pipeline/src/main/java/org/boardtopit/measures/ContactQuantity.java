package org.boardtopit.measures;

/** What is measured of a contact beyond its angles; {@code docs/measures.md} defines each. */
public enum ContactQuantity {
    /** Speed of the foot over the ground just before touchdown, + towards the pit. */
    FOOT_SPEED_TOUCHDOWN("foot_speed_touchdown_ms", 2),
    /** The same against the centre of mass, negative backwards. */
    FOOT_SPEED_RELATIVE_TOUCHDOWN("foot_speed_relative_touchdown_ms", 2),
    /** Left wrist from the shoulder, 0 hanging, + ahead. */
    ARM_L_TOUCHDOWN("arm_l_touchdown_deg", 1),
    /** Right wrist from the shoulder, 0 hanging, + ahead. */
    ARM_R_TOUCHDOWN("arm_r_touchdown_deg", 1),
    /** Left wrist from the shoulder, 0 hanging, + ahead. */
    ARM_L_TOE_OFF("arm_l_toe_off_deg", 1),
    /** Right wrist from the shoulder, 0 hanging, + ahead. */
    ARM_R_TOE_OFF("arm_r_toe_off_deg", 1),
    /** In the pit: the rear heel ahead of the hips. */
    HEEL_AHEAD_TOUCHDOWN("heel_ahead_touchdown_m", 3),
    /** In the pit: the wrists behind the hips. */
    WRISTS_BEHIND_TOUCHDOWN("wrists_behind_touchdown_m", 3),
    /** Shoulder line against the horizontal from a front or rear camera, + left shoulder high. */
    SHOULDER_TILT_TOUCHDOWN("shoulder_tilt_touchdown_deg", 1),
    /** The same at toe-off. */
    SHOULDER_TILT_TOE_OFF("shoulder_tilt_toe_off_deg", 1),
    /** Hip line against the horizontal from a front or rear camera, + left hip high. */
    HIP_TILT_TOUCHDOWN("hip_tilt_touchdown_deg", 1),
    /** The same at toe-off. */
    HIP_TILT_TOE_OFF("hip_tilt_toe_off_deg", 1),
    /** Trunk from the vertical from a front or rear camera, + to the athlete's left. */
    SIDE_LEAN_TOUCHDOWN("side_lean_touchdown_deg", 1),
    /** The same at toe-off. */
    SIDE_LEAN_TOE_OFF("side_lean_toe_off_deg", 1),
    /** Middle of the standing foot from the middle of the runway, + to the athlete's left. */
    FOOT_ACROSS("foot_across_m", 3);

    private final String column;
    private final int decimals;

    ContactQuantity(String column, int decimals) {
        this.column = column;
        this.decimals = decimals;
    }

    /** Its column in the table, which ends with the unit. */
    public String column() {
        return column;
    }

    /** Decimals of its cells. */
    public int decimals() {
        return decimals;
    }
}
