package org.boardtopit.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import org.boardtopit.clips.Safeguards.Faces;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.BackgroundMotion.FrameRegistration;
import org.boardtopit.ground.CameraModel;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.PoseTrack;
import org.boardtopit.report.overlay.DrawnAthlete;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.OverlayScene.CloseView;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.PersonInView;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.VideoInfo;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Two seconds at 30 frames a second, panned by 4 pixels a frame; everybody is 100 pixels tall. */
class FaceCoversTest {
    private static final int FRAMES = 60;
    private static final int LOOK = 10;
    private static final double PAN_PX = 4;
    private static final double TALL = 100;
    /** Half of a head: what must be hidden around its middle (CALC: chin at 0.870 of the stature). */
    private static final double HEAD_PX = 0.065 * TALL;

    /** In the athlete's frames the feet are at (300, 350) of the frame: the camera follows. */
    private static final Point2 ATHLETE_HEAD = new Point2(300, 350 - 0.94 * TALL);

    private static ClipLandmarks clip(IntPredicate athleteInView) {
        List<Long> stamps = new ArrayList<>();
        List<FrameRegistration> registrations = new ArrayList<>();
        List<Optional<Square>> squares = new ArrayList<>();
        for (int f = 0; f < FRAMES; f++) {
            stamps.add(Math.round(f * 1e6 / 30));
            Homography toFixed = new Homography(1, 0, PAN_PX * f, 0, 1, 0, 0, 0, 1);
            registrations.add(new FrameRegistration(toFixed, f != 25, 100, 0.2));
            squares.add(athleteInView.test(f) ? Optional.of(new Square(300, 300, 1.3 * TALL)) : Optional.empty());
        }
        return new ClipLandmarks(
                new VideoInfo(640, 480, 30, 2_000_000, FRAMES, false, 0, "drawn"),
                stamps,
                0,
                new BackgroundMotion(registrations, false, RegistrationFacts.unknown(CameraModel.TURNING)),
                new SubjectTrack(squares, 1),
                new PoseTrack(Collections.nCopies(FRAMES, Optional.empty())));
    }

    private static OverlayScene scene(IntPredicate measured) {
        List<FramePose> frames = new ArrayList<>();
        for (int f = 0; f < FRAMES; f++) {
            if (measured.test(f)) {
                frames.add(DrawnAthlete.standing(f, Math.round(f * 1e6 / 30), 300, 350, TALL));
            }
        }
        return new OverlayScene(
                List.of(),
                List.of(),
                2_000_000,
                true,
                List.of(),
                List.of(),
                List.of(),
                frames,
                CloseView.OFF,
                Language.ENGLISH);
    }

    /** A sighting by the head's place in the fixed picture. */
    private static PersonInView seen(int frame, Point2 fixedHead) {
        Point2 head = new Point2(fixedHead.x() - PAN_PX * frame, fixedHead.y());
        return new PersonInView(frame, new Point2(head.x(), head.y() + 0.4 * TALL), head, TALL);
    }

    private static PersonInView athleteSeen(int frame) {
        return new PersonInView(frame, new Point2(303, 305), ATHLETE_HEAD.plus(new Point2(6, -5)), 1.2 * TALL);
    }

    private static List<PersonInView> looks(IntPredicate found, IntFunction<Point2> fixedHead) {
        List<PersonInView> people = new ArrayList<>();
        for (int f = 0; f < FRAMES; f += LOOK) {
            if (found.test(f)) {
                people.add(seen(f, fixedHead.apply(f)));
            }
        }
        return people;
    }

    private static boolean hides(List<FaceCover> covers, Point2 head) {
        return covers.stream().anyMatch(c -> c.centre().distanceTo(head) + HEAD_PX <= c.radiusPx());
    }

    private static void assertFollowed(FaceCovers covers, IntFunction<Point2> fixedHead, int from, int to) {
        for (int f = from; f < to; f++) {
            Point2 head = fixedHead.apply(f);
            assertTrue(hides(covers.at(f), new Point2(head.x() - PAN_PX * f, head.y())), "frame " + f);
        }
    }

    private static FaceCovers of(List<PersonInView> people, Faces faces) {
        return FaceCovers.of(clip(f -> true), scene(f -> true), people, faces);
    }

    @Test
    void followsSomebodyWhoStandsThroughAPannedClip() {
        IntFunction<Point2> stands = f -> new Point2(500, 200);
        assertFollowed(of(looks(f -> true, stands), Faces.BLUR_OTHERS), stands, 0, FRAMES);
    }

    @Test
    void bridgesLooksThatMissedSomebody() {
        IntFunction<Point2> stands = f -> new Point2(500, 200);
        assertFollowed(of(looks(f -> f == 10 || f == 40, stands), Faces.BLUR_OTHERS), stands, 0, FRAMES);
    }

    @Test
    void followsSomebodyWhoWalksFromLookToLookAndALittleOn() {
        IntFunction<Point2> walks = f -> new Point2(400 + 3 * f, 200); // 0.9 statures a second
        assertFollowed(of(looks(f -> f >= 20 && f <= 40, walks), Faces.BLUR_OTHERS), walks, 10, 55);
    }

    @Test
    void keepsTwoWhoCrossCovered() {
        IntFunction<Point2> one = f -> new Point2(450 + 2.5 * f, 200);
        IntFunction<Point2> other = f -> new Point2(600 - 2.5 * f, 203);
        List<PersonInView> people = new ArrayList<>();
        for (int f = 0; f < FRAMES; f += LOOK) {
            people.add(seen(f, one.apply(f)));
            people.add(seen(f, other.apply(f)));
        }
        FaceCovers covers = of(people, Faces.BLUR_OTHERS);
        for (int f = 0; f < FRAMES; f += LOOK) {
            assertFollowed(covers, one, f, f + 1);
            assertFollowed(covers, other, f, f + 1);
        }
    }

    @Test
    void coversMoreWhereTheBackgroundWasNotRecognised() {
        IntFunction<Point2> stands = f -> new Point2(500, 200);
        FaceCovers covers = of(looks(f -> true, stands), Faces.BLUR_OTHERS);
        assertEquals(2 * covers.at(24).get(0).radiusPx(), covers.at(25).get(0).radiusPx(), 1e-9);
    }

    @Test
    void leavesTheAthleteAndCoversWhoStandsBehind() {
        List<PersonInView> people = new ArrayList<>();
        Point2 behind = new Point2(300 + PAN_PX * 30 + 0.35 * TALL, 240); // level with the athlete in frame 30
        for (int f = 0; f < FRAMES; f += LOOK) {
            people.add(athleteSeen(f));
            people.add(seen(f, behind));
        }
        FaceCovers covers = of(people, Faces.BLUR_OTHERS);
        assertFollowed(covers, f -> behind, 0, FRAMES);
        for (int f = 0; f < FRAMES; f++) {
            assertFalse(hides(covers.at(f), ATHLETE_HEAD), "frame " + f);
            assertEquals(1, covers.at(f).size(), "frame " + f);
        }
    }

    @Test
    void hidesTheAthleteTooWhereAllAreHidden() {
        FaceCovers covers = of(List.of(), Faces.BLUR_ALL);
        for (int f = 0; f < FRAMES; f++) {
            assertTrue(hides(covers.at(f), ATHLETE_HEAD), "frame " + f);
        }
    }

    @Test
    void hidesTheAthleteAlsoInFramesWithoutMeasuredPoints() {
        IntPredicate measured = f -> (f >= 10 && f < 20) || (f >= 26 && f < 50);
        FaceCovers covers = FaceCovers.of(clip(f -> true), scene(measured), List.of(), Faces.BLUR_ALL);
        for (int f = 3; f < 57; f++) { // a quarter of a second is 7.5 frames
            assertTrue(hides(covers.at(f), ATHLETE_HEAD), "frame " + f);
        }
        assertEquals(List.of(), covers.at(0), "long before, nobody knows where the athlete is");
    }

    @ParameterizedTest
    @EnumSource(Faces.class)
    void anAthleteWhoIsNotFollowedYetIsSomebodyElse(Faces faces) {
        List<PersonInView> people = List.of(athleteSeen(0));
        FaceCovers covers = FaceCovers.of(clip(f -> f > 30), scene(f -> f > 30), people, faces);
        assertEquals(faces != Faces.SHOW, hides(covers.at(0), ATHLETE_HEAD));
    }

    @Test
    void hidesNothingWhereFacesAreShownOrTheFrameIsUnknown() {
        List<PersonInView> people = looks(f -> true, f -> new Point2(500, 200));
        assertEquals(List.of(), of(people, Faces.SHOW).at(10));
        assertEquals(List.of(), of(people, Faces.BLUR_ALL).at(FRAMES));
    }
}
