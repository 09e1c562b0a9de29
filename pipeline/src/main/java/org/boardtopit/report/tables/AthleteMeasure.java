package org.boardtopit.report.tables;

/**
 * What is followed of an athlete over attempts and competitions: a number of every attempt that says how the distance is made and
 * is the same thing from one camera to the next. {@code docs/season.md} says why these.
 */
public enum AthleteMeasure {
    /** Measured with a tape, of valid attempts. */
    OFFICIAL("official", "m", 3),
    EFFECTIVE("effective", "m", 3),
    APPROACH_SPEED("approach_speed", "ms", 3),
    HOP_SHARE("hop", "pct", 2),
    STEP_SHARE("step", "pct", 2),
    JUMP_SHARE("jump", "pct", 2),
    SUPPORT_TIME_BOARD("support_time_board", "s", 4),
    SUPPORT_TIME_HOP_LANDING("support_time_hop_landing", "s", 4),
    SUPPORT_TIME_STEP_LANDING("support_time_step_landing", "s", 4),
    LEG_PLANT_BOARD("leg_plant_board", "deg", 1),
    LEG_PLANT_HOP_LANDING("leg_plant_hop_landing", "deg", 1),
    LEG_PLANT_STEP_LANDING("leg_plant_step_landing", "deg", 1),
    FOOT_AHEAD_BOARD("foot_ahead_board", "m", 3),
    FOOT_AHEAD_HOP_LANDING("foot_ahead_hop_landing", "m", 3),
    FOOT_AHEAD_STEP_LANDING("foot_ahead_step_landing", "m", 3);

    private final String stem;
    private final String unit;
    private final int decimals;

    AthleteMeasure(String stem, String unit, int decimals) {
        this.stem = stem;
        this.unit = unit;
        this.decimals = decimals;
    }

    /** As the season's tables name it; ends with the unit. */
    public String key() {
        return stem + "_" + unit;
    }

    /** Of the season's means and changes. */
    public int decimals() {
        return decimals;
    }

    /** The end of the key. */
    public String unitName() {
        return unit;
    }

    /** Symbol of its unit, such as m/s. */
    public String unitSymbol() {
        return Unit.of(key()).orElseThrow().symbol();
    }

    /**
     * A column of athletes.csv.
     *
     * @param of what of the measure: mean, sd, change or change_pm
     */
    String column(String of) {
        return stem + "_" + of + "_" + unit;
    }
}
