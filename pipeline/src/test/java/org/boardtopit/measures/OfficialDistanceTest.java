package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class OfficialDistanceTest {

    // Rule TR29 (MEM-H): to the nearest 0.01 m below the distance, never up.
    @ParameterizedTest
    @CsvSource({
        "16.49, 16.49",
        "16.499, 16.49",
        "16.4999, 16.49",
        "16.495, 16.49",
        "13.2099, 13.20",
        "9.27, 9.27",
        "0, 0",
        "-0.005, -0.01"
    })
    void cutsToTheCentimetreBelow(double measured, double official) {
        assertEquals(official, OfficialDistance.truncatedM(measured));
    }

    @Test
    void isNotFooledByBinaryFractions() {
        // In binary 5.97 - 0.06 is 5.909999999999999 and 4.35 * 100 is 434.99999999999994.
        assertEquals(5.91, OfficialDistance.truncatedM(5.97 - 0.06));
        assertEquals(4.35, OfficialDistance.truncatedM(4.35));
    }

    static IntStream centimetres() {
        return IntStream.range(0, 200).map(i -> i * 11);
    }

    @ParameterizedTest(name = "{0} cm")
    @MethodSource("centimetres")
    void keepsEveryWholeCentimetreHoweverItWasAddedUp(int cm) {
        double addedUp = 0;
        for (int i = 0; i < cm; i++) {
            addedUp += 0.01;
        }

        assertEquals(cm / 100.0, OfficialDistance.truncatedM(addedUp));
        assertEquals(cm / 100.0, OfficialDistance.truncatedM(cm / 100.0 + 0.009999));
    }

    @Test
    void leavesUnknownUnknown() {
        assertEquals(Double.NaN, OfficialDistance.truncatedM(Double.NaN));
    }
}
