package org.boardtopit.measures;

/** What is measured of the whole attempt beyond its fixed columns; {@code docs/measures.md} defines each. */
public enum AttemptQuantity {
    /** Speed over the last 5 m before the board less that of the 5 m before. */
    APPROACH_SPEED_CHANGE("approach_speed_change_ms", 2),
    /** Length of the stride before the last. */
    PENULTIMATE_STRIDE("penultimate_stride_m", 2),
    /** Length of the stride onto the board. */
    LAST_STRIDE("last_stride_m", 2),
    /** Last over penultimate. */
    LAST_STRIDE_RATIO("last_stride_ratio", 3),
    /** Interval of the step over that of the hop. */
    RHYTHM_EVENNESS("rhythm_evenness_pct", 1),
    /** First contact of the heels less the official mark. */
    SIT_BACK("sit_back_m", 3);

    private final String column;
    private final int decimals;

    AttemptQuantity(String column, int decimals) {
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
