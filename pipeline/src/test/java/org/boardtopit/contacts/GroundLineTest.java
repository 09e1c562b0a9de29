package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.boardtopit.motion.DrawnMotion;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.Point2;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GroundLineTest {

    /** SYN: both toes hop along a sloping line; every second bounce of 0.5 s leaves the ground for a flight. */
    private static MotionTrack bouncing(double slope, double offset, double missingUntilS) {
        return DrawnMotion.of(60, 4, 1.8, 0, new Random(1), (point, t) -> {
            double along = 7 * t;
            double phase = (t % 0.25) / 0.25;
            double height = 0.5 * Math.sin(Math.PI * phase);
            return t < missingUntilS ? Point2.UNKNOWN : new Point2(along, offset + slope * along + height);
        });
    }

    @ParameterizedTest(name = "slope {0}, offset {1} m, first seen at {2} s")
    @CsvSource({"0, 0, 0", "0.03, -4.2, 0", "-0.05, 2, 0.9"})
    void liesUnderTheLowestToes(double slope, double offset, double missingUntilS) {
        GroundLine line = GroundLine.underToes(bouncing(slope, offset, missingUntilS));
        assertEquals(offset + slope * 10, line.at(10), 0.06);
        assertEquals(offset + slope * 25, line.at(25), 0.06);
        assertEquals(0.3, line.above(new Point2(12, offset + slope * 12 + 0.3)), 0.06);
    }

    @Test
    void isAtHeightNoughtWithMarks() {
        assertEquals(0, GroundLine.level().at(7));
        assertEquals(0.4, GroundLine.level().above(new Point2(3, 0.4)));
    }
}
