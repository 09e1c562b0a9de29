package org.boardtopit.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.boardtopit.signal.Point2;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

class RunwayCameraTest {
    /** Marks that the footage's own pinhole (f 1024, 1280 x 720, 19 m beside the runway) sees; drawn with the formula. */
    private static Point2 seen(double along, double across, double height, double mirror) {
        double y = mirror * across;
        double depth = 0.99932202 * y - 0.03681713 * height + 19.049707;
        double u = 1024 * (along - 5.6) / depth + 640;
        double v = 1024 * (-0.03681713 * y - 0.99932202 * height + 0.999322) / depth + 360;
        return new Point2(u, v);
    }

    private static List<Mark> marks(double mirror, Random noise, double sdPx) {
        List<Mark> marks = new ArrayList<>();
        double[][] places = {{0, -.61}, {0, .61}, {11, -1.375}, {11, 1.375}, {-4, -.72}, {4, .72}, {8, -.72}};
        for (double[] p : places) {
            Point2 at = seen(p[0], p[1], 0, mirror);
            marks.add(new Mark(
                    "m" + marks.size(),
                    p[0],
                    p[1],
                    new Point2(at.x() + sdPx * noise.nextGaussian(), at.y() + sdPx * noise.nextGaussian())));
        }
        return marks;
    }

    @Test
    void findsTheCameraThatDrewTheMarks() throws CalibrationException {
        RunwayCamera camera = RunwayCamera.fromMarks(marks(1, new Random(1), 0), 1280, 720);
        assertEquals(1024, camera.focalPx(), 5);
        assertEquals(-19.0, camera.acrossM(), 0.1);
        Point2 hip = camera.onUpright(seen(9, -0.1, 0.95, 1), -0.1);
        assertEquals(9, hip.x(), 0.005);
        assertEquals(0.95, hip.y(), 0.005);
        Point2 toe = camera.onGround(seen(5.48, 0.06, 0, 1));
        assertEquals(5.48, toe.x(), 0.003);
        assertEquals(0.06, toe.y(), 0.02);
    }

    @Test
    void understandsMarksCountedToTheRight() throws CalibrationException {
        RunwayCamera camera = RunwayCamera.fromMarks(marks(-1, new Random(1), 0), 1280, 720);
        assertEquals(-1, camera.marksAcrossSign());
        assertEquals(0.95, camera.onUpright(seen(9, 0, 0.95, 1), 0).y(), 0.005);
    }

    @RepeatedTest(value = 30, name = "seed {currentRepetition}")
    void clicksOffByAPixelMoveAnUprightPointByLessThanFiveCentimetres(RepetitionInfo info) throws CalibrationException {
        Random random = new Random(info.getCurrentRepetition());
        RunwayCamera camera = RunwayCamera.fromMarks(marks(1, random, 0.7), 1280, 720);
        Point2 hip = camera.onUpright(seen(5.5, 0, 0.95, 1), 0);
        assertEquals(5.5, hip.x(), 0.05);
        assertEquals(0.95, hip.y(), 0.05);
        assertTrue(camera.residualPx() < 2.5, "residual " + camera.residualPx());
    }

    @Test
    void refusesMarksOnOneLine() {
        List<Mark> line = List.of(
                new Mark("a", 0, 0, seen(0, 0, 0, 1)),
                new Mark("b", 2, 0, seen(2, 0, 0, 1)),
                new Mark("c", 4, 0, seen(4, 0, 0, 1)),
                new Mark("d", 6, 0, seen(6, 0, 0, 1)));
        CalibrationException error =
                assertThrows(CalibrationException.class, () -> RunwayCamera.fromMarks(line, 1280, 720));
        assertTrue(error.getMessage().contains("one line"), error.getMessage());
    }
}
