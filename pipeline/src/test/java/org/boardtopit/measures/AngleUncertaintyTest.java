package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import java.util.stream.IntStream;
import org.boardtopit.signal.Point2;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AngleUncertaintyTest {

    /** Against 20000 draws of noise: limbs of 0.4 m at several knee angles, unequal noise. */
    @ParameterizedTest
    @CsvSource({"60", "90", "130", "160"})
    void tellsTheSpreadOfAnInnerAngle(double kneeDeg) {
        Point2 hip = new Point2(0, .4);
        Point2 knee = new Point2(0, 0);
        double a = Math.toRadians(90 - kneeDeg);
        Point2 ankle = new Point2(.4 * Math.cos(a), .4 * Math.sin(a));
        Random random = new Random(17);
        double[] drawn = IntStream.range(0, 20_000)
                .mapToDouble(i -> JointAngles.kneeDeg(
                        moved(hip, .01, random), moved(knee, .02, random), moved(ankle, .015, random)))
                .toArray();

        double told = AngleUncertainty.innerSdDeg(hip, knee, ankle, .01, .02, .015);
        assertEquals(told, spread(drawn), 0.04 * told);
    }

    @Test
    void tellsTheSpreadOfALine() {
        Point2 hip = new Point2(1, 1);
        Point2 knee = new Point2(1.3, .7);
        Random random = new Random(23);
        double[] drawn = IntStream.range(0, 20_000)
                .mapToDouble(i -> JointAngles.thighDeg(moved(hip, .02, random), moved(knee, .01, random)))
                .toArray();

        double told = AngleUncertainty.lineSdDeg(hip, knee, .02, .01);
        assertEquals(told, spread(drawn), 0.04 * told);
    }

    @Test
    void isTheNoiseOverTheLengthByHand() {
        // 3 cm and 4 cm over 1 m: 5 cm over 1 m, 0.05 rad.
        assertEquals(
                Math.toDegrees(0.05), AngleUncertainty.lineSdDeg(new Point2(0, 0), new Point2(0, 1), .03, .04), 1e-9);
        // Straight limb, arms of 1 m, only the middle moves by 1 cm: both arms turn, 2 cm over 1 m.
        assertEquals(
                Math.toDegrees(0.02),
                AngleUncertainty.innerSdDeg(new Point2(0, 1), new Point2(0, 0), new Point2(0, -1), 0, .01, 0),
                1e-9);
        assertEquals(2.5, AngleUncertainty.sdOfMiddle(3, 4), 1e-12);
    }

    @Test
    void isUnknownForUnknownPointsOrNoise() {
        Point2 a = new Point2(0, 1);
        Point2 b = new Point2(0, 0);

        assertEquals(Double.NaN, AngleUncertainty.innerSdDeg(a, b, Point2.UNKNOWN, 1, 1, 1));
        assertEquals(Double.NaN, AngleUncertainty.innerSdDeg(a, b, new Point2(1, 1), 1, 1, Double.NaN));
        assertEquals(Double.NaN, AngleUncertainty.lineSdDeg(a, a, 1, 1));
        assertEquals(Double.NaN, AngleUncertainty.lineSdDeg(a, b, Double.NaN, 1));
    }

    private static Point2 moved(Point2 p, double sd, Random random) {
        return p.plus(new Point2(sd * random.nextGaussian(), sd * random.nextGaussian()));
    }

    private static double spread(double[] values) {
        double mean = IntStream.range(0, values.length)
                .mapToDouble(i -> values[i])
                .average()
                .orElseThrow();
        return Math.sqrt(IntStream.range(0, values.length)
                .mapToDouble(i -> (values[i] - mean) * (values[i] - mean))
                .average()
                .orElseThrow());
    }
}
