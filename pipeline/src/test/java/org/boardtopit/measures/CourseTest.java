package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.function.IntToDoubleFunction;
import org.boardtopit.fit.FittedMotion;
import org.junit.jupiter.api.Test;

/** Values worked out by hand (SYN). */
class CourseTest {
    private static Course course(double... values) {
        double[] t = new double[values.length];
        for (int i = 0; i < t.length; i++) {
            t[i] = i;
        }
        return new Course(t, values);
    }

    @Test
    void findsTheTopOfAParabolaBetweenItsSamples() {
        // 5 - (t - 1.25)^2 at 0, 1, 2
        Course.Extreme top = course(5 - 1.5625, 5 - 0.0625, 5 - 0.5625).largest();
        assertEquals(5, top.value(), 1e-12);
        assertEquals(1.25, top.atS(), 1e-12);
    }

    @Test
    void findsTheBottomOfAParabolaWithUnevenStamps() {
        // 3 + 2 (t - 0.4)^2 at 0, 0.3, 1
        Course.Extreme bottom = new Course(new double[] {0, 0.3, 1}, new double[] {3.32, 3.02, 3.72}).smallest();
        assertEquals(3, bottom.value(), 1e-12);
        assertEquals(0.4, bottom.atS(), 1e-12);
    }

    @Test
    void anExtremeAtAnEndIsThatEnd() {
        assertEquals(new Course.Extreme(7, 3), course(1, 2, 4, 7).largest());
        assertEquals(new Course.Extreme(1, 0), course(1, 2, 4, 7).smallest());
    }

    @Test
    void countsTheTimeAboveALevelAlongStraightLines() {
        // 0, 10, 10, 0: above 5 from 0.5 to 2.5 of 3
        assertEquals(2.0 / 3, course(0, 10, 10, 0).shareAtLeast(5), 1e-12);
        assertEquals(1, course(0, 10, 10, 0).shareAtLeast(0), 1e-12);
        assertEquals(0, course(0, 10, 10, 0).shareAtLeast(11), 1e-12);
    }

    @Test
    void tellsWhenALevelIsLeftForGood() {
        assertEquals(2.5, course(0, 10, 10, 0).lastAtLeast(5), 1e-12);
        assertEquals(3, course(0, 10, 10, 6).lastAtLeast(5), 1e-12);
        assertTrue(Double.isNaN(course(0, 1, 2).lastAtLeast(5)));
    }

    @Test
    void tellsWhenZeroIsPassedUpwards() {
        assertEquals(1.25, course(-3, -1, 3, -1).firstRiseThroughZero(), 1e-12);
        assertTrue(Double.isNaN(course(3, 1, -1).firstRiseThroughZero()));
    }

    @Test
    void aPartBeginsBetweenSamples() {
        Course part = course(0, 10, 10, 0).from(0.5);
        assertEquals(0.8, part.shareAtLeast(5), 1e-12); // 0.5 to 2.5 of 2.5
        assertEquals(new Course.Extreme(5, 0.5), course(0, 10, 20, 20).from(0.5).smallest());
        assertEquals(new Course.Extreme(10, 1), course(0, 10, 20, 20).from(1).smallest());
        assertFalse(course(0, 10, 20, 20).from(4).smallest().isKnown());
    }

    private static Course between(double fromS, double toS, IntToDoubleFunction number) {
        FittedMotion motion = new DrawnBody().motion(); // 120 frames a second
        return Course.between(motion, fromS, toS, number);
    }

    /** Frame 120 is at 1 s: a number that jumps there is carried on from the frames before it. */
    @Test
    void doesNotLookAcrossTheInstantThatEndsIt() {
        Course course = between(0.504, 0.999, f -> f < 120 ? f : 1000);
        assertEquals(0.999 * 120, course.largest().value(), 1e-3);
        assertEquals(0.504 * 120, course.smallest().value(), 1e-3);
    }

    @Test
    void isUnknownWhereAnExtremeMayBeHidden() {
        assertTrue(between(0.5, 1.0, f -> f > 80 && f < 85 ? Double.NaN : f)
                .largest()
                .isKnown());
        assertFalse(between(0.5, 1.0, f -> f > 80 && f < 95 ? Double.NaN : f)
                .largest()
                .isKnown());
        assertFalse(between(0.5, 1.0, f -> Double.NaN).largest().isKnown());
        assertTrue(Double.isNaN(between(0.5, 1.0, f -> Double.NaN).shareAtLeast(0)));
        assertFalse(between(0.5, 0.505, f -> f).largest().isKnown());
    }
}
