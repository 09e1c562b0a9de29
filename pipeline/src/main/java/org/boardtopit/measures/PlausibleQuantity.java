package org.boardtopit.measures;

/**
 * Quantities whose values are checked against what has been reported. A value outside is a reason to look at the clip, not
 * an error, and the ranges are no targets.
 *
 * <p>Source: put together from memory, medium sure (MEM-M), of Hay 1992, Hay and Miller 1985 and championship reports of 1997
 * to 2018; no single table holds them. No kinematics of masters have been published that we know of: they are held against
 * the club values.
 */
public enum PlausibleQuantity {
    APPROACH_SPEED_MS(9.9, 10.7, 8.9, 9.6, 6.8, 9.2),
    HOP_VX_TAKEOFF_MS(9.2, 9.9, 8.1, 8.8, 6.5, 8.5),
    STEP_VX_TAKEOFF_MS(8.2, 8.9, 7.3, 7.9, 5.8, 7.7),
    JUMP_VX_TAKEOFF_MS(6.9, 7.8, 6.2, 6.9, 5.0, 6.8),
    HOP_VY_TAKEOFF_MS(2.1, 2.6, 2.0, 2.4, 1.5, 2.2),
    STEP_VY_TAKEOFF_MS(1.6, 2.2, 1.3, 1.9, 0.9, 1.7),
    JUMP_VY_TAKEOFF_MS(2.2, 2.8, 2.0, 2.5, 1.5, 2.3),
    HOP_TAKEOFF_ANGLE_DEG(12, 16, 12, 16, 11, 17),
    STEP_TAKEOFF_ANGLE_DEG(10, 14, 9, 14, 7, 14),
    JUMP_TAKEOFF_ANGLE_DEG(17, 22, 17, 21, 15, 22),
    BOARD_SUPPORT_S(.11, .13, .11, .13, .12, .16),
    HOP_LANDING_SUPPORT_S(.14, .17, .14, .17, .15, .20),
    STEP_LANDING_SUPPORT_S(.16, .19, .16, .19, .17, .23),
    HOP_FLIGHT_S(.48, .56, .44, .52, .35, .50),
    STEP_FLIGHT_S(.38, .48, .32, .42, .22, .40),
    JUMP_FLIGHT_S(.60, .72, .54, .64, .42, .60),
    BOARD_SPEED_LOSS_MS(0.4, 0.9, 0.4, 0.9, 0.3, 1.1),
    HOP_LANDING_SPEED_LOSS_MS(0.8, 1.2, 0.7, 1.1, 0.5, 1.2),
    STEP_LANDING_SPEED_LOSS_MS(1.0, 1.5, 0.9, 1.3, 0.6, 1.4),
    HOP_SHARE_PCT(34, 38, 35, 38, 33, 40),
    STEP_SHARE_PCT(28, 31, 27, 30, 24, 30),
    JUMP_SHARE_PCT(32, 38, 33, 36, 32, 40);

    // Plain numbers, for a constant should hold nothing but what is plainly immutable.
    private final double manLow;
    private final double manHigh;
    private final double womanLow;
    private final double womanHigh;
    private final double clubLow;
    private final double clubHigh;

    PlausibleQuantity(
            double manLow, double manHigh, double womanLow, double womanHigh, double clubLow, double clubHigh) {
        this.manLow = manLow;
        this.manHigh = manHigh;
        this.womanLow = womanLow;
        this.womanHigh = womanHigh;
        this.clubLow = clubLow;
        this.clubHigh = clubHigh;
    }

    /** What has been reported at a level; the range over all levels when it is not stated. */
    public PlausibleRange at(Level level) {
        return switch (level) {
            case ELITE_MAN -> new PlausibleRange(manLow, manHigh);
            case ELITE_WOMAN -> new PlausibleRange(womanLow, womanHigh);
            case CLUB -> new PlausibleRange(clubLow, clubHigh);
            case UNSTATED -> at(Level.ELITE_MAN).joined(at(Level.ELITE_WOMAN)).joined(at(Level.CLUB));
        };
    }

    /** True when a value was measured and lies outside the range: worth a warning. An unknown value (NaN) is not. */
    public boolean isImplausible(double value, Level level) {
        return !Double.isNaN(value) && !at(level).contains(value);
    }
}
