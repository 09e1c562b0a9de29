package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import java.util.stream.IntStream;
import org.boardtopit.signal.Point2;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class JointAnglesTest {

    private static final Point2 HIP = new Point2(0, 1);
    private static final Point2 KNEE = new Point2(.25, .6);
    private static final Point2 ANKLE = new Point2(.30, .15);
    private static final Point2 SHOULDER = new Point2(-.05, 1.5);

    // CALC: the agreed test points, angles to a thousandth of a degree.
    @Test
    void givesTheAgreedAnglesOfTheTestPoints() {
        assertEquals(154.335, JointAngles.kneeDeg(HIP, KNEE, ANKLE), 5e-4);
        assertEquals(153.705, JointAngles.hipDeg(SHOULDER, HIP, KNEE), 5e-4);
        assertEquals(6.34, JointAngles.shankDeg(KNEE, ANKLE), 5e-3);
        assertEquals(32.005, JointAngles.thighDeg(HIP, KNEE), 5e-4);
    }

    @Test
    void agreesAtTheKneeWithThighAndShank() {
        // Knee bent by what the thigh leans more than the shank.
        double flexion = JointAngles.thighDeg(HIP, KNEE) - JointAngles.shankDeg(KNEE, ANKLE);

        assertEquals(180 - flexion, JointAngles.kneeDeg(HIP, KNEE, ANKLE), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 0", "1, 1, 45", "-1, 1, -45", "1, 0, 90"})
    void leansTheTrunkForwardAsPositive(double x, double y, double expectedDeg) {
        assertEquals(expectedDeg, JointAngles.trunkDeg(HIP.plus(new Point2(x, y)), HIP), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"0, -1, 0", "1, 0, 90", "-1, -1, -45", "1, 1, 135"})
    void swingsThighAndShankForwardAsPositive(double x, double y, double expectedDeg) {
        assertEquals(expectedDeg, JointAngles.thighDeg(HIP, HIP.plus(new Point2(x, y))), 1e-9);
        assertEquals(expectedDeg, JointAngles.shankDeg(KNEE, KNEE.plus(new Point2(x, y))), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({"0, 90", "0.5773502691896258, 60", "1, 45", "-1, 135"})
    void plantsTheLegAtLessThanNinetyWithTheFootAhead(double ahead, double expectedDeg) {
        assertEquals(expectedDeg, JointAngles.legPlantDeg(new Point2(3, 1), new Point2(3 + ahead, 0)), 1e-9);
    }

    @Test
    void looksUpAsPositive() {
        assertEquals(45, JointAngles.headDeg(new Point2(0, 0), new Point2(.1, .1)), 1e-9);
        assertEquals(0, JointAngles.headDeg(new Point2(0, 0), new Point2(.1, 0)), 1e-9);
    }

    @Test
    void tiltsTheShouldersTowardsTheHigherFrontOneWhicheverComesFirst() {
        Point2 front = new Point2(.3, 1.6);
        Point2 rear = new Point2(.0, 1.3);

        assertEquals(45, JointAngles.shoulderTiltDeg(front, rear), 1e-9);
        assertEquals(45, JointAngles.shoulderTiltDeg(rear, front), 1e-9);
        assertEquals(-45, JointAngles.shoulderTiltDeg(new Point2(.3, 1.0), rear), 1e-9);
    }

    @Test
    void measuresAnkleAndElbowAsInnerAngles() {
        assertEquals(90, JointAngles.ankleDeg(new Point2(0, 1), new Point2(0, 0), new Point2(1, 0)), 1e-9);
        assertEquals(180, JointAngles.elbowDeg(new Point2(0, 2), new Point2(0, 1), new Point2(0, 0)), 1e-9);
        assertEquals(0, JointAngles.elbowDeg(new Point2(0, 2), new Point2(0, 1), new Point2(0, 2)), 1e-9);
    }

    @Test
    void tellsHowFarTheFootIsAheadOfTheCentre() {
        assertEquals(.45, JointAngles.footAhead(new Point2(6.45, 0), new Point2(6, 1)), 1e-12);
    }

    @Test
    void isUnknownForUnknownOrEqualPoints() {
        assertEquals(Double.NaN, JointAngles.kneeDeg(HIP, KNEE, Point2.UNKNOWN));
        assertEquals(Double.NaN, JointAngles.kneeDeg(HIP, HIP, ANKLE));
        assertEquals(Double.NaN, JointAngles.trunkDeg(HIP, HIP));
        assertEquals(Double.NaN, JointAngles.thighDeg(Point2.UNKNOWN, KNEE));
        assertEquals(Double.NaN, JointAngles.legPlantDeg(HIP, Point2.UNKNOWN));
        assertEquals(Double.NaN, JointAngles.shoulderTiltDeg(HIP, Point2.UNKNOWN));
        assertEquals(Double.NaN, JointAngles.footAhead(Point2.UNKNOWN, HIP));
    }

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void leavesAnglesAloneWhenThePictureIsScaledOrMovedAndTurnsLineAnglesWithIt(int seed) {
        Random random = new Random(seed);
        Point2[] p = random.doubles(6, -1, 1)
                .boxed()
                .map(x -> new Point2(x, random.nextDouble()))
                .toArray(Point2[]::new);
        double factor = 0.01 + 500 * random.nextDouble();
        Point2 shift = new Point2(random.nextInt(1280), random.nextInt(720));
        double turnDeg = 20 * random.nextDouble() - 10;
        Point2[] moved = new Point2[6];
        for (int i = 0; i < 6; i++) {
            moved[i] = turned(p[i], turnDeg).times(factor).plus(shift);
        }

        assertEquals(JointAngles.kneeDeg(p[0], p[1], p[2]), JointAngles.kneeDeg(moved[0], moved[1], moved[2]), 1e-7);
        // A turn anticlockwise swings what hangs forward and tips what stands backward.
        assertEquals(
                0,
                wrapped(JointAngles.thighDeg(moved[3], moved[4]) - JointAngles.thighDeg(p[3], p[4]) - turnDeg),
                1e-7);
        assertEquals(
                0,
                wrapped(JointAngles.trunkDeg(moved[4], moved[5]) - JointAngles.trunkDeg(p[4], p[5]) + turnDeg),
                1e-7);
    }

    private static Point2 turned(Point2 p, double deg) {
        double a = Math.toRadians(deg);
        return new Point2(p.x() * Math.cos(a) - p.y() * Math.sin(a), p.x() * Math.sin(a) + p.y() * Math.cos(a));
    }

    private static double wrapped(double deg) {
        return Math.IEEEremainder(deg, 360);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void changesTheSignOfLineAnglesInAMirror(int seed) {
        Random random = new Random(seed);
        Point2 a = new Point2(random.nextGaussian(), random.nextGaussian());
        Point2 b = new Point2(random.nextGaussian(), random.nextGaussian());
        Point2 mirroredA = new Point2(-a.x(), a.y());
        Point2 mirroredB = new Point2(-b.x(), b.y());

        assertEquals(-JointAngles.thighDeg(a, b), JointAngles.thighDeg(mirroredA, mirroredB), 1e-9);
        assertEquals(-JointAngles.trunkDeg(a, b), JointAngles.trunkDeg(mirroredA, mirroredB), 1e-9);
    }
}
