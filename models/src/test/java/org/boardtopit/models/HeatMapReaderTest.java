package org.boardtopit.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Heat maps drawn by formula, 64 x 64 cells of 4 px, so that place, spread and mass are known. CALC. */
class HeatMapReaderTest {
    private static final int CELLS = 64;
    private static final BodyPoint POINT = BodyPoint.LEFT_ANKLE;

    private final HeatMapReader reader = reader(NetworkCard.Weights.logits, 4);

    @Test
    void readsPlaceAndSpreadOfOneGaussianAndTakesTheBlurOff() {
        // 5 px of spread = 4 px of blur and 3 px of the point's own.
        float[] map = logits(new double[][] {{101.3, 54.6, 5, 1}});

        LandmarkReading reading = reader.read(map);

        assertEquals(101.3, reading.xPx(POINT, 0), 0.01);
        assertEquals(54.6, reading.yPx(POINT, 0), 0.01);
        assertEquals(3.0, reading.sdPx(POINT, 0), 0.05);
        assertEquals(1.0, reading.mass(POINT, 0), 0.002);
        assertTrue(reading.mass(POINT, 1) < 0.002, "nothing is left for a second mode");
    }

    @Test
    void readsBothPlacesOfAMapWithTwoPeaks() {
        float[] map = logits(new double[][] {{60, 120, 5, 0.3}, {180, 90, 5, 0.7}});

        LandmarkReading reading = reader.read(map);

        assertEquals(180, reading.xPx(POINT, 0), 0.05);
        assertEquals(90, reading.yPx(POINT, 0), 0.05);
        assertEquals(0.7, reading.mass(POINT, 0), 0.005);
        assertEquals(60, reading.xPx(POINT, 1), 0.05);
        assertEquals(120, reading.yPx(POINT, 1), 0.05);
        assertEquals(0.3, reading.mass(POINT, 1), 0.005);
        assertEquals(3.0, reading.sdPx(POINT, 1), 0.05);
    }

    @Test
    void doesNotTakeTheFlankOfTheFirstPeakForASecondOne() {
        // 20 px apart: inside the window of the first, which reaches 4 cells of 4 px and half a cell.
        float[] map = logits(new double[][] {{100, 100, 4, 0.6}, {116, 100, 4, 0.4}});

        LandmarkReading reading = reader.read(map);

        assertTrue(reading.mass(POINT, 0) > 0.9, "mass was " + reading.mass(POINT, 0));
        assertTrue(reading.mass(POINT, 1) < 0.1, "mass was " + reading.mass(POINT, 1));
    }

    @Test
    void neverReportsLessThanOnePixelOfSpread() {
        float[] map = flat(-50);
        map[10 * CELLS + 20] = 10;

        LandmarkReading reading = reader.read(map);

        assertEquals(20.5 * 4, reading.xPx(POINT, 0), 1e-4);
        assertEquals(10.5 * 4, reading.yPx(POINT, 0), 1e-4);
        assertEquals(1.0, reading.sdPx(POINT, 0), 1e-6);
        assertEquals(1.0, reading.mass(POINT, 0), 1e-6);
        assertEquals(0.0, reading.mass(POINT, 1), 0.0);
        assertTrue(Float.isNaN(reading.xPx(POINT, 1)) && Float.isNaN(reading.sdPx(POINT, 1)));
    }

    @Test
    void readsPeaksInTheCornersOfTheMap() {
        float[] map = flat(-50);
        map[0] = 10;
        map[CELLS * CELLS - 1] = (float) (10 + Math.log(0.25));

        LandmarkReading reading = reader.read(map);

        assertEquals(2.0, reading.xPx(POINT, 0), 1e-4);
        assertEquals(2.0, reading.yPx(POINT, 0), 1e-4);
        assertEquals(0.8, reading.mass(POINT, 0), 1e-5);
        assertEquals(254.0, reading.xPx(POINT, 1), 1e-4);
        assertEquals(254.0, reading.yPx(POINT, 1), 1e-4);
        assertEquals(0.2, reading.mass(POINT, 1), 1e-5);
    }

    @Test
    void aMapThatSaysNothingHasLittleMassAnywhere() {
        LandmarkReading reading = reader.read(flat(0));

        // The first of equal cells is the corner's: 5 x 5 cells of its window are in the map.
        assertEquals(25.0 / 4096, reading.mass(POINT, 0), 1e-6);
    }

    @Test
    void masksOfAMapDoNotReachIntoTheNextReading() {
        LandmarkReading fresh = reader(NetworkCard.Weights.logits, 4).read(logits(new double[][] {{60, 120, 5, 1}}));
        reader.read(logits(new double[][] {{60, 120, 5, 0.4}, {180, 90, 5, 0.6}}));

        assertEquals(fresh, reader.read(logits(new double[][] {{60, 120, 5, 1}})));
    }

    @Test
    void sharesAreTakenAsTheyAreAndNegativeOnesAsNothing() {
        float[] map = flat(-0.5f);
        map[10 * CELLS + 20] = 3;
        map[10 * CELLS + 21] = 1;

        LandmarkReading reading = reader(NetworkCard.Weights.shares, 0).read(map);

        assertEquals((0.75 * 20.5 + 0.25 * 21.5) * 4, reading.xPx(POINT, 0), 1e-4);
        assertEquals(1.0, reading.mass(POINT, 0), 1e-6);
        // Variance in x: 0.75 * 0.25 cells^2 * 16 px^2 = 3; mean of both axes 1.5.
        assertEquals(Math.sqrt(1.5), reading.sdPx(POINT, 0), 1e-5);
    }

    @Test
    void aMapOfNaNIsAPointThatIsNotKnown() {
        LandmarkReading reading = reader.read(flat(Float.NaN));

        assertEquals(0.0, reading.mass(POINT, 0), 0.0);
        assertTrue(Float.isNaN(reading.xPx(POINT, 0)));
    }

    @Test
    void mapsGoToThePointsOfTheCardAndOthersArePassedOver() {
        NetworkCard.HeatMaps output = new NetworkCard.HeatMaps(0, CELLS, NetworkCard.Weights.logits, 4);
        List<BodyPoint> points = Arrays.asList(BodyPoint.RIGHT_TOE, null, BodyPoint.NOSE);
        float[] maps = new float[3 * CELLS * CELLS];
        Arrays.fill(maps, -50);
        maps[7] = 10;
        maps[CELLS * CELLS + 8] = 10;
        maps[2 * CELLS * CELLS + 9] = 10;

        LandmarkReading reading = new HeatMapReader(output, 256, points).read(maps);

        assertEquals(30, reading.xPx(BodyPoint.RIGHT_TOE, 0), 1e-4);
        assertEquals(38, reading.xPx(BodyPoint.NOSE, 0), 1e-4);
        assertTrue(Float.isNaN(reading.xPx(POINT, 0)));
        assertEquals(0.0, reading.mass(POINT, 0), 0.0);
    }

    @Test
    void refusesMapsOfAnotherSize() {
        assertThrows(IllegalArgumentException.class, () -> reader.read(new float[32 * 32]));
    }

    private static HeatMapReader reader(NetworkCard.Weights weights, double blurPx) {
        return new HeatMapReader(
                new NetworkCard.HeatMaps(0, CELLS, weights, blurPx), 256, Collections.singletonList(POINT));
    }

    private static float[] flat(float value) {
        float[] map = new float[CELLS * CELLS];
        Arrays.fill(map, value);
        return map;
    }

    /** Logarithm of a sum of Gaussians; each {x px, y px, sd px, mass}. */
    private static float[] logits(double[][] peaks) {
        float[] map = new float[CELLS * CELLS];
        for (int i = 0; i < map.length; i++) {
            double x = (i % CELLS + 0.5) * 4;
            double y = Math.floorDiv(i, CELLS) * 4 + 2;
            double sum = 1e-12;
            for (double[] p : peaks) {
                double d2 = (x - p[0]) * (x - p[0]) + (y - p[1]) * (y - p[1]);
                sum += p[3] / (p[2] * p[2]) * Math.exp(-d2 / (2 * p[2] * p[2]));
            }
            map[i] = (float) Math.log(sum);
        }
        return map;
    }
}
