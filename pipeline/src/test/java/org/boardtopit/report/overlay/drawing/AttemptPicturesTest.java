package org.boardtopit.report.overlay.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.overlay.DrawnAthlete;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.stills.Framing;
import org.boardtopit.report.stills.PhasesScene;
import org.boardtopit.report.stills.Still;
import org.boardtopit.report.stills.StillInstant;
import org.boardtopit.report.stills.StillNames;
import org.boardtopit.report.stills.StillsScene;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgcodecs;
import org.bytedeco.opencv.opencv_core.Mat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class AttemptPicturesTest {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 360;

    @TempDir
    private Path folder;

    /** A picture that was written, read back. */
    private static final class Read {
        private final int widthPx;
        private final int heightPx;
        private final byte[] bgr;

        Read(int widthPx, int heightPx, byte[] bgr) {
            this.widthPx = widthPx;
            this.heightPx = heightPx;
            this.bgr = bgr;
        }

        int widthPx() {
            return widthPx;
        }

        int heightPx() {
            return heightPx;
        }

        int red(int x, int y) {
            return bgr[3 * (y * widthPx + x) + 2] & 0xff;
        }

        int green(int x, int y) {
            return bgr[3 * (y * widthPx + x) + 1] & 0xff;
        }

        int blue(int x, int y) {
            return bgr[3 * (y * widthPx + x)] & 0xff;
        }
    }

    private static Read read(Path file) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        try (BytePointer pointer = new BytePointer(bytes);
                Mat buffer = new Mat(1, bytes.length, opencv_core.CV_8UC1, pointer);
                Mat colour = opencv_imgcodecs.imdecode(buffer, opencv_imgcodecs.IMREAD_COLOR)) {
            byte[] bgr = new byte[3 * colour.rows() * colour.cols()];
            colour.<ByteBuffer>createBuffer().get(bgr);
            return new Read(colour.cols(), colour.rows(), bgr);
        }
    }

    private static Still still(int contact, int frame, double pxPerMetre, Point2 foot) {
        return new Still(
                contact,
                StillInstant.TOUCHDOWN,
                frame,
                new Homography(pxPerMetre, 0, foot.x(), 0, pxPerMetre, foot.y(), 0, 0, 1),
                FramePose.withoutAthlete(frame, 0, Optional.empty()),
                List.of(),
                "board: touchdown",
                List.of("frame " + frame + ", at the instant"));
    }

    private static StillsScene scene(List<Still> stills, Optional<PhasesScene> phases) {
        return new StillsScene(
                List.of("bib 7"),
                true,
                List.of(new StillsScene.Column(0, "board"), new StillsScene.Column(1, "hop landing")),
                Map.of(
                        StillInstant.TOUCHDOWN, "touchdown",
                        StillInstant.MID_SUPPORT, "mid-support",
                        StillInstant.TOE_OFF, "toe-off",
                        StillInstant.FLIGHT, "mid-flight"),
                "1 m",
                false,
                stills,
                phases);
    }

    private static void rectangle(VideoFrame frame, int left, int top, int right, int bottom, int rgb) {
        for (int y = Math.max(0, top); y < Math.min(HEIGHT, bottom); y++) {
            for (int x = Math.max(0, left); x < Math.min(WIDTH, right); x++) {
                int at = 3 * (y * WIDTH + x);
                frame.bgr().put(at, (byte) rgb).put(at + 1, (byte) (rgb >> 8)).put(at + 2, (byte) (rgb >> 16));
            }
        }
    }

    private void write(StillsScene scene, String clip, List<VideoFrame> frames) throws IOException {
        try (AttemptPictures pictures = new AttemptPictures(scene, folder, clip)) {
            for (VideoFrame frame : frames) {
                pictures.see(frame);
            }
            pictures.finish();
        }
    }

    private static VideoFrame grey(int index) {
        return new Pixels(index, 1000L * index, WIDTH, HEIGHT, 0x60).frame();
    }

    /** Middle of the red pixels of a row. */
    private static double redX(Read picture, int y) {
        double sum = 0;
        int count = 0;
        for (int x = 0; x < picture.widthPx(); x++) {
            if (picture.red(x, y) > 150 && picture.green(x, y) < 90) {
                sum += x + 0.5;
                count++;
            }
        }
        return sum / count;
    }

    /**
     * Two attempts filmed at scales of 60 and 110 px a metre, the foot at different places: the ground, the foot and a post one metre
     * ahead that is one metre tall come to lie at the same pixels of both pictures.
     */
    @ParameterizedTest
    @ValueSource(ints = {60, 110})
    void groundFootAndScaleAreTheSameWhateverTheClip(int pxPerMetre) throws IOException {
        Point2 foot = new Point2(250 + pxPerMetre, 200 + 0.5 * pxPerMetre);
        VideoFrame frame = grey(5);
        int postX = (int) (foot.x() + pxPerMetre);
        rectangle(frame, postX - 3, (int) foot.y() - pxPerMetre, postX + 3, (int) foot.y(), 0xff0000);
        rectangle(frame, 0, (int) foot.y(), WIDTH, HEIGHT, 0x00a000);

        write(scene(List.of(still(0, 5, pxPerMetre, foot)), Optional.empty()), "a", List.of(grey(4), frame, grey(6)));

        Read picture = read(folder.resolve("a-0-touchdown.jpg"));
        Framing framing = Framing.STILL;
        assertEquals(framing.widthPx(), picture.widthPx());
        assertEquals(framing.heightPx(), picture.heightPx());
        double metre = framing.pxPerMetre();
        double ground = framing.groundYPx();
        assertEquals(framing.originXPx() + metre, redX(picture, (int) (ground - 0.5 * metre)), 1.5);
        int x = (int) (framing.originXPx() - 0.9 * metre);
        assertTrue(picture.green(x, (int) ground - 5) < 130, "above the ground");
        assertTrue(picture.green(x, (int) ground + 7) > 130, "below it");
        int post = (int) (framing.originXPx() + metre);
        assertTrue(picture.red(post, (int) (ground - metre + 6)) > 150, "the post ends a metre up");
        assertTrue(picture.red(post, (int) (ground - metre - 6)) < 150, "and not higher");
    }

    @Test
    void aContactAtTheEdgeOfThePictureIsShownAsFarAsItIsSeen() throws IOException {
        write(scene(List.of(still(0, 0, 100, new Point2(2, 350))), Optional.empty()), "edge", List.of(grey(0)));

        Read picture = read(folder.resolve("edge-0-touchdown.jpg"));
        assertEquals(0x60, picture.green(Framing.STILL.widthPx() - 30, 300), 6, "seen");
        assertTrue(picture.green(100, 300) < 0x30, "not seen");
    }

    @Test
    void aFrameThatNeverComesCostsItsStillOnly() throws IOException {
        Point2 foot = new Point2(300, 300);
        write(
                scene(List.of(still(0, 3, 100, foot), still(1, 7, 100, foot)), Optional.empty()),
                "gap",
                List.of(grey(0), grey(5), grey(7)));
        assertFalse(Files.exists(folder.resolve("gap-0-touchdown.jpg")));
        assertTrue(Files.exists(folder.resolve("gap-1-touchdown.jpg")));
        assertTrue(Files.exists(folder.resolve("gap-strip.jpg")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"Spr\u00fcnge 1", "-rf", "=1+1", "a'b\"c;d", "\u738b-2-strip", "x.mp4"})
    void filesHaveTheNameOfTheClipWhateverIsInIt(String clip) throws IOException {
        write(scene(List.of(still(0, 0, 100, new Point2(300, 300))), Optional.empty()), clip, List.of(grey(0)));
        try (Stream<Path> files = Files.list(folder)) {
            List<String> names =
                    files.map(f -> f.getFileName().toString()).sorted().toList();
            assertEquals(
                    Stream.of(StillNames.still(clip, 0, StillInstant.TOUCHDOWN), StillNames.strip(clip))
                            .sorted()
                            .toList(),
                    names);
        }
    }

    /** Without a contact there is nothing to show, and no file that says so. */
    @Test
    void withoutContactsThereAreNoFiles() throws IOException {
        StillsScene none = new StillsScene(
                List.of(),
                true,
                List.of(),
                scene(List.of(), Optional.empty()).rows(),
                "",
                false,
                List.of(),
                Optional.empty());
        write(none, "none", List.of(grey(0)));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(0, files.count());
        }
    }

    /** A face is a colour that nothing else has; covered in the frames, it is in none of the pictures. */
    @Test
    void aFaceThatIsHiddenInTheFramesIsInNoPicture() throws IOException {
        int face = 0xff00ff;
        FaceCover cover = new FaceCover(new Point2(330, 100), 30);
        List<VideoFrame> covered = new ArrayList<>();
        List<VideoFrame> plain = new ArrayList<>();
        for (int f = 0; f < 3; f++) {
            plain.add(grey(f));
            rectangle(plain.get(f), 312, 84, 348, 116, face);
            covered.add(plain.get(f).copy());
            FaceCoverPainter.hide(covered.get(f), List.of(cover));
        }
        StillsScene scene = scene(
                List.of(still(0, 0, 100, new Point2(330, 300)), still(1, 2, 100, new Point2(330, 300))),
                Optional.of(phases(List.of(0, 1, 2), 0)));

        write(scene, "covered", covered);
        write(scene, "plain", plain);

        for (String file : List.of("-0-touchdown.jpg", "-1-touchdown.jpg", "-strip.jpg", "-phases.jpg")) {
            assertEquals(0, count(read(folder.resolve("covered" + file))), file);
            assertTrue(count(read(folder.resolve("plain" + file))) > 100, "without a cover it would be seen: " + file);
        }
    }

    private static int count(Read picture) {
        int count = 0;
        for (int y = 0; y < picture.heightPx(); y++) {
            for (int x = 0; x < picture.widthPx(); x++) {
                boolean face = picture.red(x, y) > 200 && picture.green(x, y) < 120 && picture.blue(x, y) > 200;
                count += face ? 1 : 0;
            }
        }
        return count;
    }

    /** The athlete at a place of each frame; each frame is seen a step further on in the picture. */
    private static PhasesScene phases(List<Integer> frames, int stepPx) {
        List<PhasesScene.Figure> figures = new ArrayList<>();
        for (int f : frames) {
            FramePose pose = DrawnAthlete.standing(f, 0, 120 + 190 * f - stepPx * f, 300, 120);
            figures.add(new PhasesScene.Figure(f, new Homography(1, 0, stepPx * f, 0, 1, 0, 0, 0, 1), pose, 120));
        }
        return new PhasesScene(
                WIDTH + 2 * stepPx,
                HEIGHT,
                figures,
                List.of(new Point2(120, 300)),
                List.of(new PhasesScene.Span(PhaseName.HOP, "hop", 120, 310, "5.20 m", "")),
                List.of());
    }

    /**
     * A panned camera that shows a striped wall: the picture has the stripes where they are on the wall, the athlete of each frame
     * once, and nobody twice.
     */
    @Test
    void thePhasePictureJoinsTheViewsOfAPannedCamera() throws IOException {
        int step = 100;
        List<VideoFrame> frames = new ArrayList<>();
        for (int f = 0; f < 3; f++) {
            frames.add(grey(f));
            for (int stripe = 0; stripe * 80 < WIDTH + 2 * step; stripe++) {
                int x = stripe * 80 - step * f;
                rectangle(frames.get(f), x, 20, x + 20, 120, 0x0000ff);
            }
            int body = 120 + 190 * f - step * f;
            rectangle(frames.get(f), body - 6, 190, body + 6, 300, 0xff0000);
        }
        write(scene(List.of(), Optional.of(phases(List.of(0, 1, 2), step))), "pan", frames);

        Read picture = read(folder.resolve("pan-phases.jpg"));
        int top = 46; // who it is stands above
        assertEquals(WIDTH + 2 * step, picture.widthPx());
        for (int stripe = 0; stripe * 80 + 50 < WIDTH + 2 * step; stripe++) {
            assertTrue(picture.blue(stripe * 80 + 10, top + 60) > 180, "stripe " + stripe);
            assertTrue(picture.blue(stripe * 80 + 50, top + 60) < 130, "after stripe " + stripe);
        }
        int bodies = 0;
        boolean inside = false;
        for (int x = 0; x < picture.widthPx(); x++) {
            boolean red = picture.red(x, top + 230) > 180 && picture.green(x, top + 230) < 110;
            bodies += red && !inside ? 1 : 0;
            inside = red;
        }
        assertEquals(3, bodies);
    }
}
