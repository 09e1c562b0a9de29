package org.boardtopit.ground.opencv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.IntPredicate;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.CameraModel;
import org.boardtopit.ground.Survey;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnCamera;
import org.boardtopit.synthetic.DrawnScene;
import org.boardtopit.synthetic.SyntheticFrameReader;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** On drawn clips (SYN, our own) of which every frame's place in the scene is known. */
class BackgroundSurveyTest {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 360;
    private static final DrawnScene SCENE = new DrawnScene(1700, 620, 1);

    @TempDir
    Path folder;

    /** A camera that looks at the scene from one place: pans to the right, trembles, and zooms by so much a second. */
    private static DoubleFunction<Homography> pan(double pxPerS, double zoomPerS) {
        return t -> {
            double zoom = 1 + zoomPerS * t;
            double perspective = 4e-5 * (t - 1); // a turning camera squeezes the far side
            double x = 60 + pxPerS * t + 1.5 * Math.sin(9 * t);
            double y = 110 + 6 * Math.sin(5 * t);
            return new Homography(zoom, 0.01, x, -0.004, zoom, y, perspective, 0, 1);
        };
    }

    private static SyntheticFrameReader reader(int frames, DoubleFunction<Homography> camera, IntPredicate black) {
        return new SyntheticFrameReader(SCENE, WIDTH, HEIGHT, 30, frames, camera, black);
    }

    private static Survey survey(Optional<ReferencePicture> reference, SyntheticFrameReader reader)
            throws VideoException {
        return new BackgroundSurvey(reference).survey(reader);
    }

    private static double median(List<Double> values) {
        return OrderStatistics.median(values.stream().mapToDouble(v -> v).toArray());
    }

    /** Distances between where frames are put and where they belong, given a map from the scene to the fixed picture. */
    private static List<Double> errorsPx(
            BackgroundMotion motion, DoubleFunction<Homography> camera, Homography sceneToFixed) {
        List<Double> errors = new ArrayList<>();
        for (int f = 0; f < motion.frameCount(); f++) {
            for (double x = 40; x < WIDTH; x += 112) {
                for (double y = 30; y < HEIGHT; y += 75) {
                    Point2 p = new Point2(x, y);
                    Point2 place = sceneToFixed.apply(camera.apply(f / 30.0).apply(p));
                    errors.add(motion.toFixed(f, p).distanceTo(place));
                }
            }
        }
        return errors;
    }

    @ParameterizedTest(name = "zoom {0} a second")
    @ValueSource(doubles = {0, 0.05, -0.04})
    void followsAPanToHalfAPixel(double zoomPerS) throws VideoException {
        DoubleFunction<Homography> camera = pan(260, zoomPerS);
        Survey survey = survey(Optional.empty(), reader(80, camera, f -> false));
        BackgroundMotion motion = survey.background();
        assertTrue(motion.cameraMoves());
        assertFalse(motion.referenceMatched());
        assertEquals(1, motion.registeredShare());
        // The fixed picture is one of the clip: taken from the middle frame's own place.
        Homography sceneToFixed =
                motion.frame(40).toFixed().after(camera.apply(40 / 30.0).inverse());
        assertTrue(median(errorsPx(motion, camera, sceneToFixed)) < 0.5);
        assertEquals(80, survey.frameCount());
        assertEquals(1_000_000, survey.timestampsUs().get(30));
    }

    @Test
    void leavesAStillCameraExactlyWhereItIs() throws VideoException {
        DoubleFunction<Homography> camera = t -> pan(0, 0).apply(0);
        BackgroundMotion motion =
                survey(Optional.empty(), reader(40, camera, f -> false)).background();
        assertFalse(motion.cameraMoves());
        for (int f = 0; f < 40; f++) {
            assertTrue(motion.frame(f).registered());
            for (Point2 p : List.of(new Point2(0, 0), new Point2(640, 0), new Point2(123.25, 359.5))) {
                assertTrue(motion.toFixed(f, p).distanceTo(p) < 1e-9, "frame " + f);
            }
        }
    }

    @Test
    void saysWhichFramesShowNothingAndFindsTheWayBackAfterThem() throws VideoException {
        DoubleFunction<Homography> camera = pan(200, 0);
        IntPredicate black = f -> f >= 20 && f < 25;
        BackgroundMotion motion =
                survey(Optional.empty(), reader(50, camera, black)).background();
        for (int f = 0; f < 50; f++) {
            assertEquals(f < 20 || f >= 25, motion.frame(f).registered(), "frame " + f);
        }
        assertEquals(0.9, motion.registeredShare(), 1e-9);
        Homography sceneToFixed =
                motion.frame(0).toFixed().after(camera.apply(0).inverse());
        Point2 middle = new Point2(320, 180);
        Point2 place = sceneToFixed.apply(camera.apply(40 / 30.0).apply(middle));
        assertTrue(motion.toFixed(40, middle).distanceTo(place) < 1);
    }

    @Test
    void comesThroughAClipThatIsBlackThroughout() throws VideoException {
        BackgroundMotion motion =
                survey(Optional.empty(), reader(12, pan(200, 0), f -> true)).background();
        assertEquals(12, motion.frameCount());
        assertFalse(motion.frame(6).registered());
    }

    @ParameterizedTest(name = "pan of {0} px a second")
    @ValueSource(doubles = {0, 240})
    void findsItsPlaceInAWiderReferencePicture(double pxPerS) throws VideoException {
        DoubleFunction<Homography> camera = pan(pxPerS, 0.02);
        try (ReferencePicture reference = ReferencePicture.read(SCENE.writeBackground(folder.resolve("wide.png")))) {
            assertEquals(1700, reference.widthPx());
            BackgroundMotion motion = survey(Optional.of(reference), reader(70, camera, f -> false))
                    .background();
            assertTrue(motion.referenceMatched());
            assertTrue(median(errorsPx(motion, camera, Homography.IDENTITY)) < 1);
        }
    }

    /** A turning camera whose exposure swings by a third, as an automatic one does when it pans past the sun. */
    @Test
    void followsATurningCameraWhoseExposureChanges() throws VideoException {
        DrawnCamera wide = new DrawnCamera(1700, 620, 1100, 0, -20, 1.5, 0, 0.05, 0);
        DoubleFunction<Homography> camera = t -> new DrawnCamera(
                        WIDTH, HEIGHT, 900, 0, -20, 1.5, 0.25 * (t - 1), 0.05 + 0.004 * Math.sin(9 * t), 0.01 * t)
                .to(wide);
        try (ReferencePicture reference = ReferencePicture.read(SCENE.writeBackground(folder.resolve("wide.png")))) {
            FrameReader dimmed = new DimmedReader(reader(70, camera, f -> false), t -> 0.8 + 0.25 * Math.sin(2.5 * t));
            BackgroundMotion motion =
                    new BackgroundSurvey(Optional.of(reference)).survey(dimmed).background();
            assertEquals(CameraModel.TURNING, motion.facts().model());
            assertEquals(1100, motion.facts().focalPx(), 25);
            assertTrue(motion.facts().driftPx() < 1.5, "drift " + motion.facts().driftPx());
            assertTrue(median(errorsPx(motion, camera, Homography.IDENTITY)) < 0.5);
        }
    }

    /** Every pixel times a factor that changes with time. */
    private static final class DimmedReader implements FrameReader {
        private final FrameReader reader;
        private final DoubleUnaryOperator brightness;

        DimmedReader(FrameReader reader, DoubleUnaryOperator brightness) {
            this.reader = reader;
            this.brightness = brightness;
        }

        @Override
        public VideoInfo info() {
            return reader.info();
        }

        @Override
        public Optional<VideoFrame> next() throws VideoException {
            Optional<VideoFrame> frame = reader.next();
            frame.ifPresent(f -> {
                double factor = brightness.applyAsDouble(f.timestampUs() / 1e6);
                for (int i = 0; i < 3 * WIDTH * HEIGHT; i++) {
                    f.bgr().put(i, (byte)
                            Math.min(255, Math.round(factor * (f.bgr().get(i) & 0xff))));
                }
            });
            return frame;
        }

        @Override
        public long undecodableFrames() {
            return reader.undecodableFrames();
        }

        @Override
        public void close() {
            reader.close();
        }
    }

    @Test
    void doesNotMatchThePictureOfAnotherPlace() throws VideoException {
        DrawnScene elsewhere = new DrawnScene(1700, 620, 99);
        try (ReferencePicture reference =
                ReferencePicture.read(elsewhere.writeBackground(folder.resolve("elsewhere.png")))) {
            BackgroundMotion motion = survey(Optional.of(reference), reader(20, pan(100, 0), f -> false))
                    .background();
            assertFalse(motion.referenceMatched());
        }
    }

    /** Ten times as many frames: 540 more grey pictures of 0.23 MB, or colour ones of 0.7 MB, may not pile up. */
    @Test
    @Timeout(120)
    void takesNoMoreMemoryForALongerClip() throws IOException, InterruptedException {
        String classes = System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xms200m",
                        "-Xmx200m",
                        "-XX:+AlwaysPreTouch",
                        "-XX:+UseSerialGC",
                        "-cp",
                        classes,
                        SurveyMemory.class.getName(),
                        "60",
                        "60",
                        "600")
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        List<Long> bytes;
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            bytes = out.lines().map(Long::valueOf).toList();
        }
        assertEquals(0, process.waitFor());
        double grownMb = (bytes.get(2) - bytes.get(1)) / 1e6;
        assertTrue(grownMb < 40, "grown by " + grownMb + " MB");
    }
}
