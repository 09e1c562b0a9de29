package org.boardtopit.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boardtopit.report.tables.IntervalRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DifferenceTest {
    private static IntervalRow row(double value, double half) {
        return new IntervalRow("a.mp4", "attempt", "", "lead_pct", value, value - half, value + half, "");
    }

    /** Right-angled triangles with whole sides: 3, 4, 5 and 5, 12, 13. */
    @ParameterizedTest
    @CsvSource({
        "10, 3, 4, 4, 6, 5, true",
        "10, 3, 5, 4, 5, 5, false",
        "10, 3, 15.5, 4, -5.5, 5, true",
        "7, 5, 7, 12, 0, 13, false"
    })
    void addsTheUncertaintiesAtRightAngles(
            double a, double halfA, double b, double halfB, double value, double pm90, boolean counts) {
        Difference difference = Difference.of(row(a, halfA), row(b, halfB));
        assertEquals(value, difference.value(), 1e-12);
        assertEquals(pm90, difference.pm90(), 1e-12);
        assertEquals(counts, difference.isBeyondUncertainty());
    }

    /** The mean of four numbers of 8 each is known to 4, half as well as one: the rule of the standard error. */
    @Test
    void aMeanIsKnownBetterThanOneNumber() {
        List<IntervalRow> others = List.of(row(1, 8), row(2, 8), row(3, 8), row(4, 8));
        Difference difference = Difference.fromMean(row(8, 3), others);
        assertEquals(5.5, difference.value(), 1e-12);
        assertEquals(5, difference.pm90(), 1e-12);
        assertTrue(difference.isBeyondUncertainty());
    }

    @Test
    void equalNumbersOfNoUncertaintyAreNotDifferent() {
        assertFalse(Difference.of(row(2, 0), row(2, 0)).isBeyondUncertainty());
    }

    @Test
    void needsNumbers() {
        assertThrows(IllegalArgumentException.class, () -> new Difference(Double.NaN, 1));
        assertThrows(IllegalArgumentException.class, () -> new Difference(1, -1));
        assertThrows(IllegalArgumentException.class, () -> new Difference(1, Double.NaN));
    }
}
