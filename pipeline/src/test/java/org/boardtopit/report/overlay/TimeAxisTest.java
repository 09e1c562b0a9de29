package org.boardtopit.report.overlay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimeAxisTest {

    @ParameterizedTest
    @CsvSource({"0, 10", "1000000, 60", "500000, 35", "4000000, 210", "-5, 10", "4000001, 210"})
    void placesAreProportionalToTimeAndHeldAtTheEnds(long timeUs, double x) {
        assertEquals(x, new TimeAxis(10, 210, 4_000_000).xAt(timeUs), 1e-9);
    }

    @Test
    void refusesAnAxisWithoutTime() {
        assertThrows(IllegalArgumentException.class, () -> new TimeAxis(10, 210, 0));
    }
}
