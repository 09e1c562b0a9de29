package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class Point2Test {

    @Test
    void addsAndMeasuresAsAVector() {
        Point2 a = new Point2(1, 2);
        Point2 b = new Point2(4, 6);

        assertEquals(new Point2(3, 4), b.minus(a));
        assertEquals(new Point2(5, 8), b.plus(a));
        assertEquals(new Point2(2, 4), a.times(2));
        assertEquals(5, b.distanceTo(a));
        assertEquals(5, b.minus(a).length());
    }

    @Test
    void isUnknownWithoutBothCoordinates() {
        assertTrue(new Point2(0, 0).isKnown());
        assertFalse(new Point2(Double.NaN, 0).isKnown());
        assertFalse(new Point2(0, Double.POSITIVE_INFINITY).isKnown());
        assertFalse(Point2.UNKNOWN.plus(new Point2(1, 1)).isKnown());
    }
}
