package org.boardtopit.subject;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.function.DoubleFunction;
import org.boardtopit.ground.Survey;
import org.boardtopit.ground.opencv.BackgroundSurvey;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnScene;
import org.boardtopit.synthetic.SyntheticFrameReader;
import org.boardtopit.video.VideoException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** On drawn clips (SYN, our own) with a runner, somebody who walks, and something that flickers on the spot. */
class RunnerSearchTest {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 360;
    /** The smallest share of the picture width that {@link AthleteTracker} takes for a run. */
    private static final double LEAST_RUN_WIDTHS = 0.25;

    private static DrawnScene decoys() {
        return new DrawnScene(1700, 620, 5)
                .with(t -> new Point2(900 - 40 * t, 300), 26, 80, 60) // walks at a sixth of the runner's speed
                .withFlicker(new Point2(420, 330), 40, 60);
    }

    private static Optional<RoughPath> search(DrawnScene scene, DoubleFunction<Homography> camera)
            throws VideoException {
        SyntheticFrameReader reader = new SyntheticFrameReader(scene, WIDTH, HEIGHT, 30, 90, camera, f -> false);
        Survey survey = new BackgroundSurvey(Optional.empty()).survey(reader);
        return new RunnerSearch(survey).find();
    }

    private static Homography lookingAt(double left) {
        return new Homography(1, 0, left, 0, 1, 120, 0, 0, 1);
    }

    @ParameterizedTest(name = "still camera, {0} px a second")
    @CsvSource({"240", "-240"})
    void findsTheRunnerNotTheOneWhoWalks(double speed) throws VideoException {
        double start = speed > 0 ? 340 : 960;
        DrawnScene scene = decoys().with(t -> new Point2(start + speed * t, 290), 34, 96, 210);
        RoughPath path = search(scene, t -> lookingAt(320)).orElseThrow();
        assertEquals(speed > 0 ? 1 : -1, path.direction());
        assertTrue(path.score() > LEAST_RUN_WIDTHS, "score " + path.score());
        for (int f = 15; f <= 60; f += 5) {
            assertEquals(start - 320 + speed * f / 30, path.xPx(f), 30, "x in frame " + f);
            assertEquals(170, path.yPx(f), 30, "y in frame " + f);
        }
        assertEquals(96, path.heightPx(), 40);
    }

    @Test
    void findsTheRunnerWhomTheCameraFollows() throws VideoException {
        DoubleFunction<Homography> camera = t -> lookingAt(40 + 260 * t + 6 * Math.sin(4 * t));
        DrawnScene scene = decoys().with(t -> new Point2(330 + 260 * t, 290), 34, 96, 210);
        RoughPath path = search(scene, camera).orElseThrow();
        assertEquals(1, path.direction());
        assertTrue(path.score() > LEAST_RUN_WIDTHS, "score " + path.score());
        for (int f = 20; f <= 70; f += 10) {
            double t = f / 30.0;
            assertEquals(290 - 6 * Math.sin(4 * t), path.xPx(f), 30, "x in frame " + f);
        }
    }

    @Test
    void findsNobodyWhereNobodyRuns() throws VideoException {
        Optional<RoughPath> path = search(decoys(), t -> lookingAt(320));
        assertTrue(
                path.isEmpty() || path.get().score() < LEAST_RUN_WIDTHS,
                () -> "score " + path.get().score());
    }

    @Test
    void findsNothingInAnEmptyScene() throws VideoException {
        Optional<RoughPath> path = search(new DrawnScene(1700, 620, 5), t -> lookingAt(100 + 200 * t));
        assertTrue(
                path.isEmpty() || path.get().score() < 0.1,
                () -> "score " + path.get().score());
    }
}
