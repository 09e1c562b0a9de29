package org.boardtopit.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.boardtopit.clips.Mark;
import org.boardtopit.signal.Point2;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

    /** A point at along 9, 0.4 m to the left and 1.4 m up; the same camera as above, of another kind of plane. */
    @Test
    void putsAPixelOnAPlaneAcrossTheRunway() throws CalibrationException {
        RunwayCamera camera = RunwayCamera.fromMarks(marks(1, new Random(1), 0), 1280, 720);
        Point2 shoulder = camera.onAcross(seen(9, 0.4, 1.4, 1), 9);
        assertEquals(0.4, shoulder.x(), 0.1);
        assertEquals(1.4, shoulder.y(), 0.01);
        Point2 behind = camera.onAcross(seen(9, 0.4, 1.4, 1), 0);
        assertTrue(!behind.isKnown(), "the ray goes away from a plane that far back");
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

    /**
     * What a lens makes of a pixel (SYN): the distance from the middle at which the documented formula gives the straight one,
     * found by halving.
     */
    private static Point2 bent(Point2 straight, double k1) {
        double wanted = Math.hypot(straight.x() - 640, straight.y() - 360) / 640;
        double low = 0;
        double high = 1.4;
        for (int i = 0; i < 60; i++) {
            double r = (low + high) / 2;
            low = r * (1 + k1 * r * r) < wanted ? r : low;
            high = r * (1 + k1 * r * r) < wanted ? high : r;
        }
        double by = wanted == 0 ? 1 : low / wanted;
        return new Point2(640 + by * (straight.x() - 640), 360 + by * (straight.y() - 360));
    }

    private static List<Mark> bentMarks(double k1) {
        return marks(1, new Random(1), 0).stream()
                .map(m -> new Mark(m.name(), m.alongM(), m.acrossM(), bent(m.pixel(), k1)))
                .toList();
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.05, 0.02, 0.1})
    void takesOutWhatTheLensBends(double k1) throws CalibrationException {
        RunwayCamera camera = RunwayCamera.fromMarks(bentMarks(k1), new Lens(1280, 720, k1), 1024, 0.003);
        assertTrue(camera.residualPx() < 0.02, "residual " + camera.residualPx());
        for (double along : new double[] {-4, 0, 5.5, 11}) {
            Point2 hip = camera.onUpright(bent(seen(along, -0.1, 0.95, 1), k1), -0.1);
            assertEquals(along, hip.x(), 0.003);
            assertEquals(0.95, hip.y(), 0.003);
            assertEquals(
                    along, camera.onGround(bent(seen(along, 0.3, 0, 1), k1)).x(), 0.003);
        }
    }

    @Test
    void drawsWhereTheLensShowsIt() throws CalibrationException {
        RunwayCamera camera = RunwayCamera.fromMarks(bentMarks(0.1), new Lens(1280, 720, 0.1), 1024, 0.003);
        Point2 drawn = camera.project(11, 0, 0.95);
        assertEquals(0, drawn.distanceTo(bent(seen(11, 0, 0.95, 1), 0.1)), 0.1);
        Point2 back = camera.onUpright(drawn, 0);
        assertEquals(11, back.x(), 1e-6);
        assertEquals(0.95, back.y(), 1e-6);
    }

    /** The counter-check: the same marks without a word about the lens. */
    @Test
    void aBentPictureThatIsTakenForStraightMovesPlacesByCentimetres() throws CalibrationException {
        RunwayCamera camera = RunwayCamera.fromMarks(bentMarks(0.05), 1280, 720);
        double worst = 0;
        for (double along = -4; along <= 11; along++) {
            Point2 toe = camera.onUpright(bent(seen(along, 0, 0, 1), 0.05), 0);
            worst = Math.max(worst, Math.abs(toe.x() - along));
        }
        assertTrue(worst > 0.02, "worst " + worst);
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
