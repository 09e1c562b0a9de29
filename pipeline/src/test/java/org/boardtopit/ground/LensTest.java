package org.boardtopit.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.boardtopit.signal.Point2;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LensTest {
    /** By hand (CALC), 1280 x 720: h = 640, the right edge has r = 1, the corner r^2 = 1 + (360 / 640)^2 = 1.31640625. */
    @ParameterizedTest
    @CsvSource({
        "640, 360, 0.02, 640, 360",
        "1280, 360, 0.02, 1292.8, 360",
        "0, 360, 0.02, -12.8, 360",
        "960, 360, 0.02, 961.6, 360",
        "1280, 360, -0.02, 1267.2, 360",
        "1280, 720, 0.02, 1296.85, 729.478125"
    })
    void movesAPixelOutwardsByTheSquareOfItsDistance(
            double x, double y, double k1, double straightX, double straightY) {
        Point2 straight = new Lens(1280, 720, k1).straightened(new Point2(x, y));
        assertEquals(straightX, straight.x(), 1e-9);
        assertEquals(straightY, straight.y(), 1e-9);
    }

    @Test
    void countsHalvesOfTheLongerSideAlsoInAnUprightPicture() {
        assertEquals(
                1292.8,
                new Lens(720, 1280, 0.02).straightened(new Point2(360, 1280)).y(),
                1e-9);
    }

    @RepeatedTest(value = 200, name = "seed {currentRepetition}")
    void bendingUndoesStraightening(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        Lens lens = new Lens(1280, 720, -0.15 + 0.45 * random.nextDouble());
        Point2 px = new Point2(1280 * random.nextDouble(), 720 * random.nextDouble());
        Point2 back = lens.bent(lens.straightened(px));
        assertEquals(px.x(), back.x(), 1e-6);
        assertEquals(px.y(), back.y(), 1e-6);
    }

    /** The recipe of docs/inputs.md: how far a line bows outwards in its middle, over its distance from the picture's middle. */
    @ParameterizedTest
    @ValueSource(doubles = {0.01, 0.02, -0.02})
    void theBowOfALineAcrossThePictureTellsTheCoefficient(double k1) {
        Lens lens = new Lens(1280, 720, k1);
        double atMiddle = 360 - lens.bent(new Point2(640, 60)).y();
        double atEnd = 360 - lens.bent(new Point2(0, 60)).y();
        double bow = atMiddle - atEnd;
        assertEquals(k1, bow / 300, 0.1 * Math.abs(k1));
    }

    @Test
    void aLensThatBendsNothingLeavesPixelsAsTheyAre() {
        Point2 px = new Point2(12.5, 700);
        assertSame(px, Lens.ideal(1280, 720).straightened(px));
        assertSame(px, Lens.ideal(1280, 720).bent(px));
    }

    @Test
    void farOutsideThePictureACushionShowsNothing() {
        assertFalse(
                new Lens(1280, 720, -0.1).bent(new Point2(640 + 3 * 640, 360)).isKnown());
        assertFalse(new Lens(1280, 720, 0.1).straightened(Point2.UNKNOWN).isKnown());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.17, Double.NaN, Double.POSITIVE_INFINITY})
    void refusesWhatNoLensDoes(double k1) {
        assertThrows(IllegalArgumentException.class, () -> new Lens(1280, 720, k1));
    }
}
