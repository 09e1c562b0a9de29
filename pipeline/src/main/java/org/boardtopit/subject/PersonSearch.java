package org.boardtopit.subject;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.Movement;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.Survey;
import org.boardtopit.models.DetectedPerson;
import org.boardtopit.models.LandmarkNetwork;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.SquareCrop;
import org.boardtopit.video.VideoFrame;

/**
 * Everybody who moves in one frame of a clip from in front or from behind.
 *
 * <p>With a camera from marks, the detector looks along the runway, in crops that hold a person at some distance; without one,
 * around whatever moves. The landmark network then says where the hips are and how tall the person is.
 */
final class PersonSearch {
    private static final double USUAL_STATURE_M = 1.75;
    /** Height of the hips of somebody who stands (0.53 standing heights: Winter after Drillis and Contini, from memory). */
    private static final double HIPS_M = 0.53 * USUAL_STATURE_M;

    /** The part of a runway that may be in view: run-up, board, pit. */
    private static final double RUNWAY_FROM_M = -45;

    private static final double RUNWAY_TO_M = 17;
    private static final double NEAREST_M = 3;
    /** From one crop to the next people are this much smaller; the detector bears a factor of 2. */
    private static final double CROP_RATIO = 1.35;
    /** Smaller people are not worth looking for: the network sees nothing of them. */
    private static final double LEAST_STATURE_PX = 30;

    private static final int MOST_MOVEMENTS = 4;
    /** Moving cells in a crop below which it is not looked at. */
    private static final double LEAST_MOVEMENT = 1.5;

    /** Half a second: as long as a landing takes. */
    private static final int MOST_LOOKS_UNDETECTED = 8;

    /** The network bears squares that are off by a fifth. */
    private static final double RIGHT_SIZE_LOG = 0.2;

    private final List<SightedPerson> last = new ArrayList<>();
    private final Survey survey;
    private final PersonDetector detector;
    private final Optional<RunwayCamera> camera;
    private final BodyReader bodies;
    private final SquareCrop crop;
    private final ByteBuffer rgb;

    /**
     * A search.
     *
     * @param camera of the fixed picture
     */
    PersonSearch(Survey survey, PersonDetector detector, LandmarkNetwork network, Optional<RunwayCamera> camera) {
        this.survey = survey;
        this.detector = detector;
        this.camera = camera;
        this.bodies = new BodyReader(network, true);
        this.crop = new SquareCrop(detector.inputSizePx());
        this.rgb = crop.newBuffer();
    }

    /** The people of a frame, each once. */
    List<SightedPerson> people(VideoFrame frame) {
        int f = frame.index();
        List<Square> crops = camera.map(c -> cropsOfTheRunway(f, c)).orElseGet(() -> cropsOfMovement(f));
        List<Square> found = new ArrayList<>();
        for (Square place : crops) {
            if (movement(f, place, 0.5) >= LEAST_MOVEMENT) {
                detect(frame, place, found);
            }
        }
        List<SightedPerson> people = new ArrayList<>();
        for (Square person : found) {
            body(frame, person).ifPresent(body -> addOnce(sighted(frame, body, 0), people));
        }
        for (SightedPerson earlier : last) {
            followUndetected(frame, earlier, people);
        }
        last.clear();
        last.addAll(people);
        return people;
    }

    /** A second look where the detector was far off the size: it is when the body is small or large in its crop. */
    private Optional<Square> body(VideoFrame frame, Square person) {
        Optional<Square> first = bodies.read(frame, person);
        double off =
                first.map(b -> Math.abs(Math.log(b.sidePx() / person.sidePx()))).orElse(0.0);
        return off < RIGHT_SIZE_LOG ? first : first.flatMap(b -> bodies.read(frame, b));
    }

    private static void addOnce(SightedPerson person, List<SightedPerson> people) {
        if (people.stream().noneMatch(p -> isSame(p.body(), person.body()))) {
            people.add(person);
        }
    }

    /** The detector knows upright people; the landmark network also sees the one who sits down in the sand. */
    private void followUndetected(VideoFrame frame, SightedPerson earlier, List<SightedPerson> people) {
        if (earlier.looksUndetected() >= MOST_LOOKS_UNDETECTED) {
            return;
        }
        Point2 hips = inFrame(frame.index(), earlier.fixed());
        Square expected = new Square(hips.x(), hips.y(), earlier.body().sidePx());
        if (movement(frame.index(), expected, 0.6) < LEAST_MOVEMENT
                || people.stream().anyMatch(p -> isSame(p.body(), expected))) {
            return;
        }
        bodies.read(frame, expected)
                .ifPresent(body -> addOnce(sighted(frame, body, earlier.looksUndetected() + 1), people));
    }

    private SightedPerson sighted(VideoFrame frame, Square square, int looksUndetected) {
        BackgroundMotion background = survey.background();
        Point2 hips = new Point2(square.centreXPx(), square.centreYPx());
        Point2 fixed = background.toFixed(frame.index(), hips);
        Point2 above =
                background.toFixed(frame.index(), new Point2(square.centreXPx(), square.centreYPx() - square.sidePx()));
        double stature = fixed.distanceTo(above);
        double moving = Math.min(1, movement(frame.index(), square, 0.6) / fullMovement(square));
        double worth = moving * camera.map(c -> onRunway(c, fixed, stature)).orElse(1.0);
        return new SightedPerson(
                frame.index(), frame.timestampUs() / 1e6, square, fixed, stature, worth, looksUndetected);
    }

    /** A tenth of the body's square moves when somebody runs. */
    private double fullMovement(Square square) {
        double cells = square.sidePx() / survey.movement().cellPx();
        return Math.max(1, 0.03 * cells * cells);
    }

    /** How well a body of this size at this place stands on the centre line, 0 to 1. */
    private static double onRunway(RunwayCamera camera, Point2 hips, double staturePx) {
        double best = 0;
        for (double along = RUNWAY_FROM_M; along <= RUNWAY_TO_M; along += 0.5) {
            Point2 expected = camera.project(along, 0, HIPS_M);
            double stature = staturePx(camera, along);
            if (!expected.isKnown() || !(stature > 0)) {
                continue;
            }
            double size = Math.log(staturePx / stature) / 0.15;
            double dx = (hips.x() - expected.x()) / (0.4 * stature);
            double dy = (hips.y() - expected.y()) / (0.35 * stature);
            best = Math.max(best, Math.exp(-(size * size + dx * dx + dy * dy) / 2));
        }
        return best;
    }

    private static double staturePx(RunwayCamera camera, double along) {
        return camera.project(along, 0, 0).distanceTo(camera.project(along, 0, USUAL_STATURE_M));
    }

    private List<Square> cropsOfTheRunway(int frame, RunwayCamera camera) {
        List<Square> crops = new ArrayList<>();
        int way = camera.alongM() > 0 ? -1 : 1; // from the camera along the runway
        double farthest = way < 0 ? camera.alongM() - RUNWAY_FROM_M : RUNWAY_TO_M - camera.alongM();
        for (double depth = farthest; depth > NEAREST_M; depth /= CROP_RATIO) {
            double along = camera.alongM() + way * depth;
            if (along < RUNWAY_FROM_M || along > RUNWAY_TO_M) {
                continue;
            }
            Point2 hips = inFrame(frame, camera.project(along, 0, HIPS_M));
            Point2 head = inFrame(frame, camera.project(along, 0, HIPS_M + USUAL_STATURE_M));
            double stature = hips.distanceTo(head);
            if (stature >= LEAST_STATURE_PX && Double.isFinite(stature)) {
                crops.add(new Square(hips.x(), hips.y(), AthleteTracker.LOOK_HEIGHTS * stature));
            }
        }
        return crops;
    }

    private Point2 inFrame(int frame, Point2 fixed) {
        return fixed.isKnown() ? survey.background().fromFixed(frame).apply(fixed) : Point2.UNKNOWN;
    }

    private List<Square> cropsOfMovement(int frame) {
        List<Square> crops = new ArrayList<>();
        double cell = survey.movement().cellPx();
        for (MovingArea area : MovingArea.largest(survey.movement(), frame, MOST_MOVEMENTS)) {
            double height = Math.max(LEAST_STATURE_PX, area.heightCells() * cell);
            crops.add(new Square(
                    area.middleColumn() * cell, area.middleRow() * cell, AthleteTracker.LOOK_HEIGHTS * height));
        }
        return crops;
    }

    /** Moving cells within a share of a square around its middle. */
    private double movement(int frame, Square square, double share) {
        Movement movement = survey.movement();
        double half = share * square.sidePx() / 2;
        double sum = 0;
        for (int i = 0; i < movement.cellCount(frame); i++) {
            double x = (movement.column(frame, i) + 0.5) * movement.cellPx();
            double y = (movement.row(frame, i) + 0.5) * movement.cellPx();
            if (Math.abs(x - square.centreXPx()) < half && Math.abs(y - square.centreYPx()) < half) {
                sum += movement.amount(frame, i);
            }
        }
        return sum;
    }

    private void detect(VideoFrame frame, Square place, List<Square> found) {
        crop.cut(frame, place.centreXPx(), place.centreYPx(), place.sidePx(), rgb);
        double scale = place.sidePx() / detector.inputSizePx();
        for (DetectedPerson p : detector.find(rgb)) {
            if (p.score() < AthleteTracker.LEAST_SCORE || !(p.sizePx() > 0)) {
                continue;
            }
            Square person = new Square(
                    place.centreXPx() - place.sidePx() / 2 + p.hipXPx() * scale,
                    place.centreYPx() - place.sidePx() / 2 + p.hipYPx() * scale,
                    p.sizePx() * scale / AthleteTracker.CIRCLE_STATURES);
            if (found.stream().noneMatch(other -> isSame(person, other))) {
                found.add(person);
            }
        }
    }

    private static boolean isSame(Square a, Square b) {
        double size = Math.min(a.sidePx(), b.sidePx());
        double apart = Math.hypot(a.centreXPx() - b.centreXPx(), a.centreYPx() - b.centreYPx());
        return apart < 0.3 * size && Math.max(a.sidePx(), b.sidePx()) < 1.5 * size;
    }
}
