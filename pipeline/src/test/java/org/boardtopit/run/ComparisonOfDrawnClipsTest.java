package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.report.AttemptOverlay;
import org.boardtopit.report.AttemptTables;
import org.boardtopit.report.comparison.AttemptDifferences;
import org.boardtopit.report.comparison.ComparedAttempt;
import org.boardtopit.report.comparison.ComparisonScene;
import org.boardtopit.report.comparison.ComparisonScene.Shot;
import org.boardtopit.report.comparison.TimeAlignment;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.drawing.ComparisonVideo;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.TrueContact;
import org.boardtopit.synthetic.Variants;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;
import org.boardtopit.video.VideoWriter;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Two drawn attempts of 60 and 120 frames a second, measured and compared; their truth is what they were drawn from. SYN. */
class ComparisonOfDrawnClipsTest {
    private static final double FPS_A = 60;
    private static final double FPS_B = 120;

    private static DrawnClip drawnA;
    private static DrawnClip drawnB;
    private static ComparedAttempt a;
    private static ComparedAttempt b;

    @BeforeAll
    static void measure() {
        drawnA = new DrawnClip(
                DrawnClip.Setup.ordinary(11).atFps(FPS_A).withStillCamera().perfect());
        drawnB = new DrawnClip(
                DrawnClip.Setup.ordinary(12).atFps(FPS_B).withStillCamera().perfect());
        a = measured("a", drawnA.landmarks());
        b = measured("b", drawnB.landmarks());
    }

    private static ComparedAttempt measured(String name, ClipLandmarks landmarks) {
        Clip clip = new Clip(Path.of(name + ".mp4"), name, Optional.empty(), Optional.empty(), Optional.empty());
        AttemptAnalysis analysis = new AttemptAnalyser().analyse(clip, landmarks);
        return new ComparedAttempt(
                name,
                landmarks,
                analysis.view(),
                analysis.fitted(),
                analysis.measures(),
                new AttemptOverlay(
                                clip,
                                landmarks,
                                analysis.view(),
                                analysis.fitted(),
                                analysis.measures(),
                                1,
                                Language.ENGLISH)
                        .scene(),
                new AttemptTables(
                                clip,
                                MeetSheet.NONE,
                                analysis.measures(),
                                analysis.fitted().repaired())
                        .intervals());
    }

    private static ComparisonScene scene(ComparedAttempt one, ComparedAttempt two, boolean trueTime) {
        return new ComparisonScene(
                one,
                two,
                TimeAlignment.of(one, two, trueTime).orElseThrow(),
                AttemptDifferences.of(one, two),
                trueTime,
                4,
                Words.of("comparison", Language.GERMAN));
    }

    /** The bar for what is measured: the true touchdowns of both come within one picture of the slower clip, 1/60 s. */
    @Test
    void trueTouchdownsOfBothComeUpWithinOneFrame() {
        TimeAlignment alignment = TimeAlignment.of(a, b, false).orElseThrow();
        int compared = 0;
        for (TrueContact one : drawnA.contacts()) {
            for (TrueContact two : drawnB.contacts()) {
                if (one.kind() == two.kind() && one.kind() != ContactKind.APPROACH) {
                    assertEquals(
                            one.touchdownS(),
                            alignment.aAt(two.touchdownS()),
                            1 / FPS_A,
                            one.kind().label());
                    compared++;
                }
            }
        }
        assertEquals(4, compared);
    }

    @Test
    void oneWhoRunsTheOtherWayIsMirroredAndLiesOnTheSameRunway() {
        ComparedAttempt mirrored = measured("m", Variants.mirrored(drawnA.landmarks()));
        assertFalse(scene(a, a, false).isMirrored());
        ComparisonScene scene = scene(a, mirrored, false);
        assertTrue(scene.isMirrored());
        assertFalse(scene.remarkOfB().isEmpty());
        int compared = 0;
        for (Shot shot : scene.shots()) {
            FramePose own = scene.onRunwayA(shot.frameA());
            FramePose other = scene.onRunwayB(shot.frameB());
            Point2 hips = own.middle(BodyPoint.LEFT_HIP);
            Point2 same = other.middle(BodyPoint.LEFT_HIP);
            double height = own.bounds().map(box -> box.height()).orElse(Double.NaN);
            if (shot.frameA() == shot.frameB() && hips.isKnown() && same.isKnown()) {
                assertTrue(hips.distanceTo(same) < 0.15 * height, "frame " + shot.frameA() + ": " + hips + ", " + same);
                compared++;
            }
        }
        assertTrue(compared > 100, "frames compared: " + compared);
    }

    @Test
    void theVideoGoesForwardThroughBothClipsHidesFacesFirstAndEndsWithTheTable() throws Exception {
        ComparisonScene scene = scene(a, b, false);
        Recorder writer = new Recorder();
        TreeSet<Integer> hiddenA = new TreeSet<>();
        TreeSet<Integer> hiddenB = new TreeSet<>();
        int written = ComparisonVideo.write(
                new ComparisonVideo.Source(new Grey(a.landmarks()), frame -> {
                    hiddenA.add(frame);
                    return List.of();
                }),
                new ComparisonVideo.Source(new Grey(b.landmarks()), frame -> {
                    hiddenB.add(frame);
                    return List.of();
                }),
                scene,
                writer);
        assertEquals(scene.shots().size() + scene.tableUs().size(), written);
        assertEquals(written, writer.timesUs.size());
        for (int i = 1; i < written; i++) {
            assertTrue(writer.timesUs.get(i) > writer.timesUs.get(i - 1), "picture " + i);
        }
        assertEquals(0, writer.timesUs.get(0) / 100_000, "begins at once");
        scene.shots().forEach(shot -> assertTrue(hiddenA.contains(shot.frameA()) && hiddenB.contains(shot.frameB())));
        assertEquals(
                List.of("Balken", "Hop-Landung", "Step-Landung", "Grube", "Unterschiede"),
                writer.chapters.stream().map(VideoWriter.Chapter::title).toList());
    }

    @Test
    void inTrueTimeTheSecondIsNotStretched() {
        ComparisonScene scene = scene(a, b, true);
        List<Shot> shots = scene.shots();
        double first = shots.get(0).moment().aS() - shots.get(0).moment().bS();
        shots.forEach(
                shot -> assertEquals(first, shot.moment().aS() - shot.moment().bS(), 1e-9));
    }

    /** Pictures of one grey with the times of a clip. */
    private static final class Grey implements FrameReader {
        private static final int WIDTH = 320;
        private static final int HEIGHT = 180;
        private final ClipLandmarks clip;
        private final ByteBuffer bgr = ByteBuffer.allocateDirect(3 * WIDTH * HEIGHT);
        private int next;

        Grey(ClipLandmarks clip) {
            this.clip = clip;
        }

        @Override
        public VideoInfo info() {
            return new VideoInfo(WIDTH, HEIGHT, 60, -1, -1, false, 0, "drawn");
        }

        @Override
        public Optional<VideoFrame> next() {
            if (next == clip.frameCount()) {
                return Optional.empty();
            }
            int index = next++;
            return Optional.of(new VideoFrame(index, clip.timestampsUs().get(index), WIDTH, HEIGHT, bgr));
        }

        @Override
        public long undecodableFrames() {
            return 0;
        }

        @Override
        public void close() {}
    }

    private static final class Recorder implements VideoWriter {
        private final List<Long> timesUs = new ArrayList<>();
        private List<Chapter> chapters;

        @Override
        public void write(VideoFrame frame) {
            timesUs.add(frame.timestampUs());
        }

        @Override
        public void finish(List<Chapter> all) {
            chapters = all;
        }

        @Override
        public void close() {}
    }
}
