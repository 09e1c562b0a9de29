package org.boardtopit.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.boardtopit.ground.RunTraces.Fall;
import org.boardtopit.ground.RunTraces.Trace;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnCamera;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Cameras whose place and direction are known look at a run that obeys mechanics (SYN). Outside checks: the pinhole formula of
 * the textbook (Hartley and Zisserman, MEM-H), as {@link DrawnCamera} writes it, and free fall with 9.81 m/s^2.
 */
class SelfCalibrationTest {
    private static final double STATURE_M = 1.72;

    private static DrawnCamera camera(double yawDeg, double rollDeg, double focalWidths, double acrossM) {
        return new DrawnCamera(
                1280,
                720,
                1280 * focalWidths,
                4,
                acrossM,
                1.7,
                Math.toRadians(yawDeg),
                Math.toRadians(2),
                Math.toRadians(rollDeg));
    }

    private static Optional<FoundCamera> find(DrawnRun run, double statureM, double statureLogSd) {
        return new SelfCalibration(Lens.ideal(1280, 720), run.direction(), 1 / DrawnRun.FPS, statureM, statureLogSd)
                .find(run.traces());
    }

    /** Shares of the four places of a run, percent. */
    private static double[] shares(double... places) {
        double[] shares = new double[3];
        for (int i = 0; i < 3; i++) {
            shares[i] = 100 * (places[i + 1] - places[i]) / (places[3] - places[0]);
        }
        return shares;
    }

    private static double[] places(DrawnRun run, RunwayCamera camera) {
        double[] places = new double[4];
        for (int i = 0; i < 4; i++) {
            places[i] = camera.onUpright(run.onGround(DrawnRun.PLACES_M[i]), 0).x();
        }
        return places;
    }

    private static double worstShareError(DrawnRun run, RunwayCamera camera) {
        double[] truth = shares(DrawnRun.PLACES_M);
        double[] found = shares(places(run, camera));
        double worst = 0;
        for (int i = 0; i < 3; i++) {
            worst = Math.max(worst, Math.abs(found[i] - truth[i]));
        }
        return worst;
    }

    private static double worstFlatShareError(DrawnRun run) {
        double[] seen = new double[4];
        for (int i = 0; i < 4; i++) {
            seen[i] = run.direction() * run.onGround(DrawnRun.PLACES_M[i]).x();
        }
        double[] truth = shares(DrawnRun.PLACES_M);
        double[] flat = shares(seen);
        double worst = 0;
        for (int i = 0; i < 3; i++) {
            worst = Math.max(worst, Math.abs(flat[i] - truth[i]));
        }
        return worst;
    }

    @ParameterizedTest
    @CsvSource({
        // yaw deg, roll deg, focal length in widths, place across
        "  0,  0,   1.2, -16",
        "  5,  0,   1.2, -16",
        " -5,  1.5, 0.8, -14",
        " 10, -1,   0.8, -15",
        "-10,  0,   0.8,  15",
        " 10,  1.5, 1.0,  18",
        "-15,  0,   0.9, -20",
        "  5, -2,   2.0,  30",
    })
    void takesPerspectiveOutOfTheShares(double yaw, double roll, double focal, double across) {
        DrawnRun run = new DrawnRun(camera(yaw, roll, focal, across), STATURE_M, 0, 1);
        FoundCamera found = find(run, STATURE_M, 0).orElseThrow();
        assertTrue(worstShareError(run, found.camera()) < 0.1, "points " + worstShareError(run, found.camera()));
        double[] places = places(run, found.camera());
        assertEquals(13.30, places[3] - places[0], 0.13); // 1 %: a longer lens further away looks nearly the same
    }

    @Test
    void theFlatPictureIsWrongWhereItIsRight() {
        DrawnRun run = new DrawnRun(camera(-10, 0, 0.8, 15), STATURE_M, 0, 1);
        assertTrue(worstFlatShareError(run) > 3, "points " + worstFlatShareError(run));
    }

    @Test
    void saysHowSureItIs() {
        Random random = new Random(11);
        List<Double> errorsInSds = new ArrayList<>();
        for (int seed = 1; seed <= 40; seed++) {
            double yaw = 20 * (random.nextDouble() - 0.5);
            double roll = 3 * (random.nextDouble() - 0.5);
            double across = (random.nextBoolean() ? 1 : -1) * (13 + 8 * random.nextDouble());
            DrawnRun run = new DrawnRun(camera(yaw, roll, 0.85, across), STATURE_M, 0.012, seed);
            FoundCamera found = find(run, STATURE_M, 0).orElseThrow();
            double[] nominal = places(run, found.camera());
            double sd = 0;
            for (double[] doubtful : found.doubtfulAlongM(nominal)) {
                sd = Math.hypot(sd, shares(doubtful)[0] - shares(nominal)[0]);
            }
            errorsInSds.add((shares(nominal)[0] - shares(DrawnRun.PLACES_M)[0]) / sd);
        }
        double rms =
                Math.sqrt(errorsInSds.stream().mapToDouble(e -> e * e).average().orElseThrow());
        // The drawn noise is independent from frame to frame; the fit allows for the memory that real landmarks have,
        // and
        // for a scatter of poses that the drawn body has not.
        assertTrue(rms > 0.15 && rms < 1.2, "root mean square of error over sd " + rms);
    }

    @Test
    void aFallTellsTheScaleWhenTheStatureDoesNot() {
        DrawnRun run = new DrawnRun(camera(4, 0, 0.9, -16), 1.60, 0, 1);
        FoundCamera found = find(run, 1.75, 0.06).orElseThrow();
        double[] places = places(run, found.camera());
        double byStatureAlone = 13.30 * 1.75 / 1.60;
        double error = places[3] - places[0] - 13.30;
        assertTrue(error < 0.5 * (byStatureAlone - 13.30), "m " + error);
        assertTrue(error > -0.1, "m " + error);
    }

    @Test
    void aRunInTheMirrorLooksTheSame() {
        DrawnRun run = new DrawnRun(camera(6, 1, 0.9, -16), STATURE_M, 0.01, 5);
        RunTraces there = run.traces();
        RunTraces mirrored = new RunTraces(
                there.falls().stream()
                        .map(f -> f.stream()
                                .map(s -> new Fall(s.timeS(), mirrored(s.centrePx())))
                                .toList())
                        .toList(),
                there.bodies().stream()
                        .map(b -> new RunTraces.Body(mirrored(b.right()), mirrored(b.left())))
                        .toList(),
                mirrored(there.toes()));
        FoundCamera right = find(run, STATURE_M, 0).orElseThrow();
        FoundCamera left = new SelfCalibration(Lens.ideal(1280, 720), -1, 1 / DrawnRun.FPS, STATURE_M, 0)
                .find(mirrored)
                .orElseThrow();
        Point2 px = run.onGround(8.45);
        Point2 a = right.camera().onUpright(px, 0);
        Point2 b = left.camera().onUpright(mirrored(px), 0);
        assertEquals(a.x(), b.x(), 1e-3);
        assertEquals(a.y(), b.y(), 1e-3);
        assertEquals(-right.camera().acrossM(), left.camera().acrossM(), 1e-3);
    }

    private static Point2 mirrored(Point2 px) {
        return new Point2(1280 - px.x(), px.y());
    }

    private static List<Trace> mirrored(List<Trace> traces) {
        return traces.stream()
                .map(t -> new Trace(mirrored(t.px()), -t.acrossStature()))
                .toList();
    }

    @Test
    void saysNothingOfASingleFlight() {
        RunTraces all = new DrawnRun(camera(0, 0, 1, -16), STATURE_M, 0, 1).traces();
        RunTraces few = new RunTraces(all.falls().subList(2, 3), all.bodies(), all.toes());
        assertTrue(new SelfCalibration(Lens.ideal(1280, 720), 1, 1 / DrawnRun.FPS, STATURE_M, 0)
                .find(few)
                .isEmpty());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void saysNothingOfTracesThatNoRunLeaves(long seed) {
        Random random = new Random(seed);
        RunTraces all = new DrawnRun(camera(0, 0, 1, -16), STATURE_M, 0, 1).traces();
        List<List<Fall>> shaken = all.falls().stream()
                .map(f -> f.stream()
                        .map(s -> new Fall(
                                s.timeS(),
                                s.centrePx().plus(new Point2(40 * random.nextGaussian(), 40 * random.nextGaussian()))))
                        .toList())
                .toList();
        assertTrue(new SelfCalibration(Lens.ideal(1280, 720), 1, 1 / DrawnRun.FPS, STATURE_M, 0)
                .find(new RunTraces(shaken, all.bodies(), all.toes()))
                .isEmpty());
    }

    @Test
    void refusesAnAthleteWithoutHeight() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new SelfCalibration(Lens.ideal(1280, 720), 1, 1 / 60.0, Double.NaN, 0));
    }
}
