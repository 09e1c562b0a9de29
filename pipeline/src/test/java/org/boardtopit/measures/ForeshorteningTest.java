package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class ForeshorteningTest {

    // CALC: bias of an angle from the vertical, by yaw.
    @ParameterizedTest
    @CsvSource({
        "20, 10, -0.28", "20, 15, -0.63", "20, 20, -1.12", "20, 25, -1.74", "20, 30, -2.50",
        "30, 10, -0.38", "30, 15, -0.85", "30, 20, -1.52", "30, 25, -2.38", "30, 30, -3.43",
        "45, 10, -0.44", "45, 15, -0.99", "45, 20, -1.78", "45, 25, -2.81", "45, 30, -4.11"
    })
    void showsTheTabulatedBias(double angleDeg, double yawDeg, double biasDeg) {
        assertEquals(biasDeg, Foreshortening.seenDeg(angleDeg, yawDeg) - angleDeg, 5.1e-3);
        assertEquals(-biasDeg, Foreshortening.seenDeg(-angleDeg, yawDeg) + angleDeg, 5.1e-3);
    }

    // CALC: a knee of 130 (thigh 30, shank -20) looks straighter.
    @ParameterizedTest
    @CsvSource({"10, 0.7", "20, 2.6", "30, 5.9"})
    void straightensAKnee(double yawDeg, double biasDeg) {
        double seen = 180 - (Foreshortening.seenDeg(30, yawDeg) - Foreshortening.seenDeg(-20, yawDeg));

        assertEquals(biasDeg, seen - 130, 0.051);
    }

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void isUndoneWhenTheYawIsKnown(int seed) {
        Random random = new Random(seed);
        double angle = 180 * random.nextDouble() - 90;
        double yaw = 80 * random.nextDouble() - 40;

        assertEquals(angle, Foreshortening.correctedDeg(Foreshortening.seenDeg(angle, yaw), yaw), 1e-9);
    }

    @Test
    void leavesUprightAndLevelLinesAlone() {
        assertEquals(0, Foreshortening.seenDeg(0, 30), 1e-12);
        assertEquals(90, Foreshortening.seenDeg(90, 30), 1e-9);
    }

    @Test
    void widensAnglesFromTheVerticalInATiltedView() {
        // Heights shrink by cos 60 = 1/2: 1 along and 1 up looks like 1 and 1/2.
        assertEquals(Math.toDegrees(Math.atan(2)), Foreshortening.seenWithTiltDeg(45, 60), 1e-9);
    }

    // CALC: 0.3 m out of the plane at 10, 15, 20 and 25 m: 3, 2, 1.5 and 1.2 %.
    @ParameterizedTest
    @CsvSource({"10, .03", "15, .02", "20, .015", "25, .012"})
    void scalesWithDepth(double distanceM, double share) {
        assertEquals(share, Foreshortening.scaleError(0.3, distanceM), 1e-12);
    }

    @Test
    void refusesToCorrectAViewFromTheFront() {
        assertThrows(IllegalArgumentException.class, () -> Foreshortening.correctedDeg(20, 90));
    }
}
