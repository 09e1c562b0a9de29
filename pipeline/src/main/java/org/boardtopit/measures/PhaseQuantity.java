package org.boardtopit.measures;

/** What is measured of a phase beyond its fixed columns; {@code docs/measures.md} defines each. */
public enum PhaseQuantity {
    /** Inner knee angle at touchdown less the least one of the support. */
    KNEE_YIELD("knee_yield_deg", 1),
    /** Share of the support until the centre of mass passes over the ankle. */
    BEFORE_MID_SUPPORT("before_mid_support_pct", 1),
    /** Lowest angle of the free thigh in the flight. */
    FREE_THIGH_MIN("free_thigh_min_deg", 1),
    /** Least inner angle of the free knee in the flight. */
    FREE_KNEE_MIN("free_knee_min_deg", 1),
    /** Least distance from hip to ankle of the free leg over the length of the leg. */
    FREE_LEVER_MIN("free_lever_min_pct", 1),
    /** Largest angle between the thighs in the flight. */
    THIGH_SEPARATION_MAX("thigh_separation_max_deg", 1),
    /** Furthest reach of the landing shank before touchdown. */
    REACH_SHANK_MAX("reach_shank_max_deg", 1),
    /** By how much that shank comes back until touchdown. */
    PULL_BACK("pull_back_deg", 1),
    /** Largest forward lean of the trunk in the flight. */
    TRUNK_MAX("trunk_max_deg", 1),
    /** Head angle at the end of the flight less that at toe-off. */
    HEAD_CHANGE("head_change_deg", 1),
    /** How long before the heels touch the sand the thighs begin to drop. */
    THIGH_DROP_BEFORE("thigh_drop_before_s", 3),
    /** From the touchdown of the support to the next touchdown. */
    INTERVAL("interval_s", 4),
    /** Support time over that interval. */
    SUPPORT_SHARE("support_share_pct", 1),
    /** Largest lean of the trunk to the athlete's left in the flight, from a front or rear camera. */
    SWING_LEFT("swing_left_deg", 1),
    /** The same to the right. */
    SWING_RIGHT("swing_right_deg", 1);

    private final String column;
    private final int decimals;

    PhaseQuantity(String column, int decimals) {
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
