package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EffortTest {

    // Hay's two-point rule (MEM-H for the wording): at least two points above the next largest.
    @ParameterizedTest
    @CsvSource({
        "37, 28, 35, HOP_DOMINATED, 2",
        "36.999, 28.002, 34.999, HOP_DOMINATED, 2",
        "36.99, 28.02, 34.99, HOP_DOMINATED, 2",
        "36.9899, 28.0201, 34.99, BALANCED, 1.9999",
        "35, 28, 37, JUMP_DOMINATED, 2",
        "35.5, 28, 36.5, BALANCED, 1",
        "36, 28, 36, BALANCED, 0",
        "30, 40, 30, STEP_LARGEST, 10",
        "33, 34, 33, BALANCED, 1",
        "33, 35, 32, STEP_LARGEST, 2"
    })
    void classifiesByTwoPoints(double hop, double step, double jump, EffortClass kind, double lead) {
        Effort effort = Effort.of(hop, step, jump);

        assertEquals(kind, effort.kind());
        assertEquals(lead, effort.leadPct(), 1e-9);
    }

    /** Exactly two points on paper: 6.12 and 5.78 of 17.00 m are 36 and 34 %, their difference in binary is not 2. */
    @Test
    void countsExactlyTwoPointsAsTwo() {
        Effort effort = new PhaseDistances(0, 6.12, 6.12 + 5.10, 17.00).effort();

        assertEquals(EffortClass.HOP_DOMINATED, effort.kind());
    }

    /** Printed alike, classed apart: 36.0 / 34.0 may be 1.95 or 2.05 points apart. */
    @Test
    void looksAtUnroundedShares() {
        assertEquals(EffortClass.BALANCED, Effort.of(35.97, 30.01, 34.02).kind());
        assertEquals(EffortClass.HOP_DOMINATED, Effort.of(36.03, 29.99, 33.98).kind());
    }

    // CALC: with an sd of .6 point on the lead the class is certain only beyond 1.2 points from the limit.
    @Test
    void isCertainOnlyAwayFromTheLimit() {
        assertFalse(new Effort(EffortClass.HOP_DOMINATED, 3.1).isCertain(0.6));
        assertTrue(new Effort(EffortClass.HOP_DOMINATED, 3.3).isCertain(0.6));
        assertFalse(new Effort(EffortClass.BALANCED, 0.9).isCertain(0.6));
        assertTrue(new Effort(EffortClass.BALANCED, 0.7).isCertain(0.6));
    }

    @Test
    void writesTheNamesOfTheTable() {
        assertEquals("hop_dominated", EffortClass.HOP_DOMINATED.label());
        assertEquals("balanced", EffortClass.BALANCED.label());
        assertEquals("jump_dominated", EffortClass.JUMP_DOMINATED.label());
        assertEquals("step_largest", EffortClass.STEP_LARGEST.label());
    }

    @Test
    void refusesUnknownShares() {
        assertThrows(IllegalArgumentException.class, () -> Effort.of(Double.NaN, 30, 35));
        assertThrows(IllegalArgumentException.class, () -> new Effort(EffortClass.BALANCED, -1));
    }
}
