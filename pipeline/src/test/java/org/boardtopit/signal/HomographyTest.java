package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class HomographyTest {

    @Test
    void dividesByTheThirdCoordinate() {
        Homography map = Homography.of(2, 0, 10, 0, 3, 20, 0.5, 0, 1);

        // (4, 5, 1) -> (18, 35, 3).
        Point2 image = map.apply(4, 5);
        assertEquals(6, image.x(), 1e-12);
        assertEquals(35.0 / 3, image.y(), 1e-12);
    }

    @Test
    void hasNoImageOnTheHorizon() {
        Homography map = Homography.of(1, 0, 0, 0, 1, 0, 0, 0.01, -1);

        assertFalse(map.apply(7, 100).isKnown());
        assertFalse(map.apply(Point2.UNKNOWN).isKnown());
    }

    @Test
    void laysTheUnitSquareOnAnyQuadrangle() {
        Point2[] corners = {new Point2(3, 1), new Point2(11, 2), new Point2(9, 8), new Point2(2, 5)};
        Homography map = Homography.ofUnitSquare(corners[0], corners[1], corners[2], corners[3]);

        double[][] square = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
        for (int i = 0; i < 4; i++) {
            assertEquals(0, map.apply(square[i][0], square[i][1]).distanceTo(corners[i]), 1e-12, "corner " + i);
        }
        // The diagonals of the square meet in its middle, and so do their images (CALC).
        Point2 middle = map.apply(0.5, 0.5);
        assertEquals(0, cross(corners[0], corners[2], middle), 1e-9);
        assertEquals(0, cross(corners[1], corners[3], middle), 1e-9);
    }

    private static double cross(Point2 a, Point2 b, Point2 c) {
        return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
    }

    @Test
    void laysNoSquareOnALine() {
        Point2 a = new Point2(0, 0);
        Point2 b = new Point2(1, 1);
        Point2 c = new Point2(2, 2);
        assertThrows(IllegalArgumentException.class, () -> Homography.ofUnitSquare(a, b, c, new Point2(3, 3)));
        assertThrows(IllegalArgumentException.class, () -> Homography.ofUnitSquare(a, b, c, Point2.UNKNOWN));
    }

    @Test
    void leavesPointsWhereTheyAreAsIdentity() {
        assertEquals(new Point2(3, -4), Homography.IDENTITY.apply(new Point2(3, -4)));
    }

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void comesBackThroughItsInverse(int seed) {
        Random random = new Random(seed);
        Homography map = pictureToRunway(random);
        Point2 picture = picturePoint(random);

        Point2 back = map.inverse().apply(map.apply(picture));
        assertEquals(picture.x(), back.x(), 1e-6);
        assertEquals(picture.y(), back.y(), 1e-6);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void composesAsOneMapAfterTheOther(int seed) {
        Random random = new Random(seed);
        Homography first = pictureToPicture(random);
        Homography second = pictureToRunway(random);
        Point2 picture = picturePoint(random);

        Point2 inSteps = second.apply(first.apply(picture));
        Point2 atOnce = second.after(first).apply(picture);
        assertEquals(inSteps.x(), atOnce.x(), 1e-8);
        assertEquals(inSteps.y(), atOnce.y(), 1e-8);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void isTheSameMapWhenAllNineNumbersAreScaled(int seed) {
        Random random = new Random(seed);
        Homography map = pictureToRunway(random);
        double factor = (random.nextBoolean() ? -1 : 1) * Math.pow(10, random.nextInt(13) - 6);
        Homography scaled =
                Homography.of(Arrays.stream(map.toArray()).map(h -> h * factor).toArray());
        Point2 runway = map.apply(picturePoint(random));

        assertEquals(0, map.inverse().apply(runway).distanceTo(scaled.inverse().apply(runway)), 1e-6);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void keepsPointsOfALineOnALine(int seed) {
        Random random = new Random(seed);
        Homography map = pictureToRunway(random);
        Point2 a = picturePoint(random);
        Point2 c = picturePoint(random);
        Point2 b = a.plus(c.minus(a).times(random.nextDouble()));

        Point2 ac = map.apply(c).minus(map.apply(a));
        Point2 ab = map.apply(b).minus(map.apply(a));
        assertEquals(0, ac.x() * ab.y() - ac.y() * ab.x(), 1e-9 * (1 + ac.length() * ac.length()));
    }

    /** A pan, a little zoom and a little roll. */
    private static Homography pictureToPicture(Random random) {
        return Homography.of(
                1 + 0.1 * random.nextGaussian(),
                0.02 * random.nextGaussian(),
                80 * random.nextGaussian(),
                0.02 * random.nextGaussian(),
                1 + 0.1 * random.nextGaussian(),
                10 * random.nextGaussian(),
                1e-5 * random.nextGaussian(),
                1e-5 * random.nextGaussian(),
                1);
    }

    /** Some hundredths of a metre a pixel, with the perspective of a camera on a low stand. */
    private static Homography pictureToRunway(Random random) {
        return Homography.of(
                0.015 + 0.003 * random.nextDouble(),
                0.002 * random.nextGaussian(),
                -8 + random.nextGaussian(),
                0.001 * random.nextGaussian(),
                0.03 + 0.01 * random.nextDouble(),
                -12 + random.nextGaussian(),
                2e-5 * random.nextGaussian(),
                3e-4 * random.nextDouble(),
                1);
    }

    private static Point2 picturePoint(Random random) {
        return new Point2(1280 * random.nextDouble(), 720 * random.nextDouble());
    }

    @Test
    void refusesToInvertWhatSqueezesThePlane() {
        assertThrows(
                IllegalArgumentException.class,
                () -> Homography.of(1, 2, 3, 2, 4, 6, 0, 0, 1).inverse());
    }

    @Test
    void refusesNumbersThatAreNone() {
        assertThrows(IllegalArgumentException.class, () -> Homography.of(1, 2, 3));
        assertThrows(IllegalArgumentException.class, () -> Homography.of(1, 0, 0, 0, Double.NaN, 0, 0, 0, 1));
    }
}
