package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PlausibleQuantityTest {

    // Published values SEEN, which the remembered ranges (MEM-M) must not call implausible:
    // Panoutsakopoulos and Kollias 2008, ten elite women, shares 36.5 / 29.3 / 34.2 %;
    // Perttunen et al. 2000, supports .139 / .157 / .177 s of national men and women; a 2017 winner, 17.68 m, .150 and
    // .184 s;
    // approach-phase speed of 8.38 m/s in the hop of a 14.20 m jump (picture-series commentary).
    @ParameterizedTest
    @CsvSource({
        "HOP_SHARE_PCT, ELITE_WOMAN, 36.5",
        "STEP_SHARE_PCT, ELITE_WOMAN, 29.3",
        "JUMP_SHARE_PCT, ELITE_WOMAN, 34.2",
        "BOARD_SUPPORT_S, CLUB, .139",
        "HOP_LANDING_SUPPORT_S, CLUB, .157",
        "STEP_LANDING_SUPPORT_S, CLUB, .177",
        "HOP_LANDING_SUPPORT_S, ELITE_MAN, .150",
        "STEP_LANDING_SUPPORT_S, ELITE_MAN, .184",
        "HOP_VX_TAKEOFF_MS, ELITE_WOMAN, 8.38"
    })
    void acceptsPublishedValues(PlausibleQuantity quantity, Level level, double value) {
        assertFalse(quantity.isImplausible(value, level));
    }

    // SYN: the worked attempts of a senior man, a senior woman and a U17 girl, take-off speeds.
    @ParameterizedTest
    @CsvSource({
        "HOP_VX_TAKEOFF_MS, ELITE_MAN, 9.55",
        "STEP_VX_TAKEOFF_MS, ELITE_MAN, 8.55",
        "JUMP_VX_TAKEOFF_MS, ELITE_MAN, 7.30",
        "HOP_VY_TAKEOFF_MS, ELITE_WOMAN, 2.10",
        "STEP_VY_TAKEOFF_MS, ELITE_WOMAN, 1.55",
        "JUMP_TAKEOFF_ANGLE_DEG, CLUB, 18.4",
        "STEP_FLIGHT_S, CLUB, .263"
    })
    void acceptsTheWorkedAttempts(PlausibleQuantity quantity, Level level, double value) {
        assertFalse(quantity.isImplausible(value, level));
    }

    // Coaches' rule, SEEN: no phase above 40 % (club limit), step not below 27 %: for elite jumpers.
    @Test
    void warnsOutsideTheRange() {
        assertTrue(PlausibleQuantity.STEP_SHARE_PCT.isImplausible(26.9, Level.ELITE_WOMAN));
        assertTrue(PlausibleQuantity.HOP_SHARE_PCT.isImplausible(40.1, Level.UNSTATED));
        assertFalse(PlausibleQuantity.HOP_SHARE_PCT.isImplausible(40, Level.UNSTATED));
    }

    @ParameterizedTest
    @EnumSource(PlausibleQuantity.class)
    void holdsEveryLevelWhenNoneIsStated(PlausibleQuantity quantity) {
        PlausibleRange any = quantity.at(Level.UNSTATED);

        for (Level level : new Level[] {Level.ELITE_MAN, Level.ELITE_WOMAN, Level.CLUB}) {
            assertTrue(any.contains(quantity.at(level).low()));
            assertTrue(any.contains(quantity.at(level).high()));
        }
        assertTrue(any.low() == quantity.at(Level.CLUB).low()
                || any.low() == quantity.at(Level.ELITE_MAN).low()
                || any.low() == quantity.at(Level.ELITE_WOMAN).low());
    }

    @Test
    void doesNotWarnOfWhatWasNotMeasured() {
        assertFalse(PlausibleQuantity.HOP_FLIGHT_S.isImplausible(Double.NaN, Level.CLUB));
        assertFalse(new PlausibleRange(1, 2).contains(Double.NaN));
    }

    @Test
    void refusesARangeTheWrongWayRound() {
        assertThrows(IllegalArgumentException.class, () -> new PlausibleRange(2, 1));
        assertEquals(1, new PlausibleRange(1, 1).low());
    }
}
