package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Mark;
import org.boardtopit.ground.CalibrationException;
import org.boardtopit.ground.FoundCamera;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.signal.Point2;
import org.junit.jupiter.api.Test;

class CameraDoubtTest {
    private static final PhaseDistances JUMP = new PhaseDistances(0, 5, 8, 12);

    /** A pinhole of focal length 1000 px, 16 m beside the runway and 2 m up, looking level (by hand: u = 1000 x / depth). */
    private static RunwayCamera camera() throws CalibrationException {
        double[][] places = {{0, -1}, {0, 1}, {11, -1}, {11, 1}, {5, 0}};
        List<Mark> marks = java.util.Arrays.stream(places)
                .map(p -> new Mark(
                        "m",
                        p[0],
                        p[1],
                        new Point2(640 + 1000 * (p[0] - 6) / (16 + p[1]), 360 + 1000 * 2 / (16 + p[1]))))
                .toList();
        return RunwayCamera.fromMarks(marks, 1280, 720);
    }

    private static FoundCamera doubtfulScale(double factor) throws CalibrationException {
        RunwayCamera camera = camera();
        RunwayCamera larger =
                new FoundCamera(camera, List.of(camera), 1).scaled(factor, 0).camera();
        return new FoundCamera(camera, List.of(larger), 1);
    }

    @Test
    void aDoubtfulScaleMovesDistancesAlikeAndSharesNot() throws CalibrationException {
        CameraDoubt doubt = new CameraDoubt(Optional.of(doubtfulScale(1.02)), Double.NaN);
        assertEquals(0.02 * 5, doubt.phaseSdM(JUMP, 0), 1e-6);
        assertEquals(0.02 * 4, doubt.phaseSdM(JUMP, 2), 1e-6);
        assertEquals(0, doubt.leadSdPct(JUMP), 1e-6);
        assertEquals(0.02, doubt.scaleSd(JUMP), 1e-6);
    }

    @Test
    void scaledToTheOfficialDistanceOnlyTheToeOnTheBoardIsInDoubt() throws CalibrationException {
        CameraDoubt doubt = new CameraDoubt(Optional.of(doubtfulScale(1.02)), 0.06);
        assertEquals(0.06 * 5 / 12, doubt.phaseSdM(JUMP, 0), 1e-6);
        assertEquals(0.06 / 12, doubt.scaleSd(JUMP), 1e-6);
    }

    @Test
    void twoDoubtsAddUpAsSquares() throws CalibrationException {
        RunwayCamera camera = camera();
        FoundCamera both = new FoundCamera(
                camera,
                List.of(
                        doubtfulScale(1.03).doubts().get(0),
                        doubtfulScale(1.04).doubts().get(0)),
                1);
        assertEquals(0.05 * 3, new CameraDoubt(Optional.of(both), Double.NaN).phaseSdM(JUMP, 1), 1e-6);
    }

    @Test
    void marksLeaveNoSuchDoubt() {
        CameraDoubt none = new CameraDoubt(Optional.empty(), Double.NaN);
        assertEquals(0, none.phaseSdM(JUMP, 0));
        assertEquals(0, none.leadSdPct(JUMP));
    }
}
