package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avutil.AVCOL_TRC_ARIB_STD_B67;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_TRC_SMPTE2084;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import javax.imageio.ImageIO;
import org.boardtopit.video.ClipFacts;
import org.boardtopit.video.ClipFacts.Tone;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.PrefetchingReader;
import org.boardtopit.video.RetimedReader;
import org.boardtopit.video.SquareCrop;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Footage as phones and camcorders make it, through the look of the evening and the reader of the night. */
@Timeout(120)
class FootageTest {
    private static final int WIDTH = 160;
    private static final int HEIGHT = 96;
    private static final List<Double> NOWHERE = List.of();

    @TempDir
    Path folder;

    // ---- codecs and containers

    @ParameterizedTest(name = "{0} as {1} in {2}")
    @CsvSource({
        "libopenh264, yuv420p,   h264.mp4,  h264",
        "libopenh264, yuv420p,   h264.mkv,  h264",
        "libopenh264, yuv420p,   h264.avi,  h264",
        "libopenh264, yuv420p,   h264.mts,  h264",
        "mpeg4,       yuv420p,   mpeg4.avi, mpeg4",
        "mpeg4,       yuv420p,   mpeg4.mov, mpeg4",
        "mjpeg,       yuvj420p,  mjpeg.mov, mjpeg",
        "mjpeg,       yuvj422p,  mjpeg.mkv, mjpeg",
        "prores_ks,   yuv422p10, prores.mov, prores",
        "libaom-av1,  yuv420p,   av1.mp4,   av1",
        "libaom-av1,  yuv420p,   av1.mkv,   av1",
        "libvpx-vp9,  yuv420p,   vp9.webm,  vp9"
    })
    void readsEveryPictureOfEveryKind(String codec, String format, String name, String called) throws IOException {
        Path clip = DrawnClip.codedAs(codec)
                .pixelFormat(format)
                .addNumbered(12, WIDTH, HEIGHT)
                .write(folder.resolve(name));

        ClipFacts facts = look(clip);

        assertEquals(IntStream.range(0, 12).boxed().toList(), FfmpegFrameReaderTest.numbers(read(clip)));
        assertEquals(12, facts.frames());
        assertEquals(25, facts.fps(), 0.01);
        assertEquals(called, facts.info().codec());
        assertEquals(format.endsWith("10") ? 10 : 8, facts.bitDepth());
        assertFalse(facts.brokenOff());
    }

    @Test
    void readsHevc() throws IOException {
        Path clip = resource("hevc.mp4");
        List<VideoFrame> frames = read(clip);
        assertEquals(IntStream.range(0, 20).boxed().toList(), FfmpegFrameReaderTest.numbers(frames));
        assertEquals(
                LongStream.range(0, 20).map(i -> i * 40_000).boxed().toList(), FfmpegFrameReaderTest.times(frames));
        assertEquals("hevc", look(clip).info().codec());
    }

    @Test
    void readsAPhoneThatWasHeldUprightAndRecordsHighDynamicRange() throws IOException {
        Path clip = resource("phone-hevc-10bit-hlg-turned.mov");
        ClipFacts facts = look(clip);
        assertEquals(Tone.HLG, facts.tone());
        assertEquals(10, facts.bitDepth());
        assertEquals(60, facts.fps(), 0.01);
        assertEquals(90, facts.info().rotationDeg());
        assertEquals(WIDTH, facts.info().widthPx());
        assertEquals(IntStream.range(0, 20).boxed().toList(), FfmpegFrameReaderTest.numbers(read(clip)));
    }

    /** Fifty fields a second: frame k shows the bar where it was at field k, 8 px on. */
    @Test
    void readsTheFieldsOfACamcorder() throws IOException {
        Path clip = resource("camcorder-h264-50i.mts");
        ClipFacts facts = look(clip);
        assertTrue(facts.info().interlaced());
        assertEquals(20, facts.frames());
        assertEquals(50, facts.fps(), 0.01);
        List<VideoFrame> frames = read(clip);
        assertEquals(20, frames.size());
        for (VideoFrame frame : frames) {
            assertEquals(32 + 8 * frame.index() + 8, brightCentre(frame), 1.5, "field " + frame.index());
            assertEquals(0.02 * frame.index(), frame.timestampUs() * 1e-6, 1.1e-5); // stored in 90ths of a millisecond
        }
    }

    private static double brightCentre(VideoFrame frame) {
        double weight = 0;
        double sum = 0;
        for (int y = 40; y < 56; y++) {
            for (int x = 0; x < frame.widthPx(); x++) {
                int light = Math.max(0, Drawing.rgbOf(frame, x, y)[1] - 80);
                weight += light;
                sum += light * (x + 0.5);
            }
        }
        return sum / weight;
    }

    // ---- time

    @Test
    void slowMotionStoredAtThirtyFramesGetsItsTimeBack() throws IOException {
        Path clip = DrawnClip.codedAs("mpeg4")
                .fps(30)
                .addNumbered(16, WIDTH, HEIGHT)
                .write(folder.resolve("240-stored-at-30.mp4"));
        try (FrameReader reader = new RetimedReader(new FfmpegFrameReader(clip, 1), 240 / 30.0)) {
            List<VideoFrame> frames = FfmpegFrameReaderTest.all(reader);
            assertEquals(240, reader.info().nominalFps(), 0.3);
            assertEquals(0.0625, frames.get(15).timestampUs() * 1e-6, 1.5e-4); // CALC: 15/240 s; stored in milliseconds
        }
    }

    @Test
    void tellsAVariableRate() throws IOException {
        DrawnClip drawn = DrawnClip.codedAs("ffv1");
        for (int i = 0; i < 30; i++) {
            drawn.addAt(i < 15 ? 17 * i : 255 + 33 * (i - 15), Drawing.numbered(WIDTH, HEIGHT, i));
        }
        ClipFacts facts = look(drawn.write(folder.resolve("variable.mkv")));
        assertTrue(facts.times().isVariable());
        assertEquals(29 / 0.717, facts.fps(), 0.01); // CALC: 255 + 33 x 14 ms for 29 steps
    }

    @Test
    void givesPairsOfNeighboursFromWhereTheyWereAskedFor() throws IOException {
        Path clip = DrawnClip.codedAs("mpeg4") // a key picture every ten
                .addNumbered(101, WIDTH, HEIGHT)
                .write(folder.resolve("pairs.mp4"));
        List<Integer> seen = new ArrayList<>();
        new FfmpegClipProbe(1).look(clip, List.of(0.0, 0.25, 0.8), (share, first, second) -> {
            seen.add(Drawing.numberOf(first));
            seen.add(Drawing.numberOf(second));
        });
        assertEquals(List.of(0, 1, 25, 26, 80, 81), seen);
    }

    // ---- tone

    /**
     * White paper, 203 cd/m2, is 75 % of the signal in HLG and 58 % in PQ, the grey card 38 % in both (ITU-R BT.2408, table 1,
     * MEM-H); 10 bits, 64 to 940. They come out at 232 and 108 (CALC: see ToneCurveTest), close to what they are in a clip of
     * the usual tone.
     */
    @ParameterizedTest(name = "{0}: {1} becomes {2}")
    @CsvSource({"HLG, 721, 232", "HLG, 397, 108", "PQ, 572, 232", "PQ, 397, 108", "HLG, 64, 0", "PQ, 64, 0"})
    void highDynamicRangeIsNeitherGreyNorBurntOut(Tone tone, int stored, int expected) throws IOException {
        Path clip = DrawnClip.codedAs("ffv1")
                .pixelFormat("yuv420p10")
                .tone(tone == Tone.HLG ? AVCOL_TRC_ARIB_STD_B67 : AVCOL_TRC_SMPTE2084)
                .touchUp(frame -> paint10Bit(frame, stored))
                .add(Drawing.plain(WIDTH, HEIGHT, Drawing.GREY))
                .write(folder.resolve("hdr.mkv"));
        assertEquals(tone, look(clip).tone());
        int[] rgb = Drawing.rgbOf(read(clip).get(0), 80, 48);
        for (int channel : rgb) {
            assertEquals(expected, channel, 5, Arrays.toString(rgb));
        }
    }

    private static void paint10Bit(AVFrame frame, int y) {
        for (int plane = 0; plane < 3; plane++) {
            int value = plane == 0 ? y : 512;
            int bytes = frame.linesize(plane) * (plane == 0 ? frame.height() : frame.height() / 2);
            BytePointer data = frame.data(plane).capacity(bytes);
            for (int i = 0; i < bytes; i += 2) {
                data.put(i, (byte) value);
                data.put(i + 1L, (byte) (value >> 8));
            }
        }
    }

    // ---- size

    /** Stripes of two pixels would be grey in a frame that was made smaller before it was cut. */
    @Test
    void cutsFromTheFullPictureOfA4kClip() throws IOException {
        int left = 3000;
        int top = 1600;
        Drawing picture = Drawing.plain(3840, 2160, Drawing.GREY);
        for (int x = left; x < left + 128; x += 4) {
            picture.fill(x, top, 2, 128, Drawing.WHITE);
            picture.fill(x + 2, top, 2, 128, 0, 0, 0);
        }
        Path clip =
                DrawnClip.codedAs("mjpeg").pixelFormat("yuvj444p").add(picture).write(folder.resolve("4k.mkv"));
        SquareCrop crop = new SquareCrop(128);
        var rgb = crop.newBuffer();
        VideoFrame frame = read(clip).get(0);
        crop.cut(frame, left + 64, top + 64, 128, rgb);
        assertEquals(3840, frame.widthPx());
        for (int x = 8; x < 120; x++) {
            int light = rgb.get(3 * (64 * 128 + x)) & 0xff;
            assertTrue(x % 4 < 2 ? light > 200 : light < 55, "column " + x + ": " + light);
        }
    }

    @Test
    void aLargeClipIsReadAheadWithinBounds() throws IOException {
        DrawnClip drawn = DrawnClip.codedAs("mpeg4");
        Drawing picture = Drawing.plain(3840, 2160, Drawing.GREY);
        for (int i = 0; i < 12; i++) {
            drawn.add(picture);
        }
        Path clip = drawn.write(folder.resolve("4k.mp4"));
        System.gc();
        long before = Pointer.physicalBytes();
        int frames = 0;
        try (FrameReader reader = new PrefetchingReader(new FfmpegFrameReader(clip, 2))) {
            for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
                frames++;
            }
        }
        long grown = Pointer.physicalBytes() - before;
        assertEquals(12, frames);
        // A picture is 25 MB: four wait, one is converted, the decoder holds some of half the size.
        assertTrue(grown < 300_000_000, "grew by " + grown);
    }

    @Test
    void refusesPicturesThatNoCameraTakes() throws IOException {
        Path clip = DrawnClip.codedAs("mjpeg")
                .pixelFormat("yuvj420p")
                .pixelAspect(1, 3)
                .add(Drawing.plain(4200, 4200, Drawing.GREY))
                .write(folder.resolve("vast.mkv"));
        assertTrue(
                refusal(clip).startsWith("vast.mkv: its pictures are 4200 x 12600 pixels, more than 8K"),
                refusal(clip));
    }

    // ---- what is no clip

    @ParameterizedTest
    @ValueSource(strings = {"jpeg", "png", "bmp", "gif"})
    void aStillIsNotAClipWhateverItsName(String format) throws IOException {
        for (String ending : List.of("mp4", "mov", "avi", "mkv", "mts")) {
            Path still = folder.resolve("still." + ending);
            ImageIO.write(new BufferedImage(320, 180, BufferedImage.TYPE_INT_RGB), format, still.toFile());
            assertTrue(refusal(still).startsWith("still." + ending + ": is not a video file"), refusal(still));
        }
    }

    @Test
    void aClipWithAnotherEndingIsReadAsWhatItIs() throws IOException {
        Path clip = DrawnClip.codedAs("mpeg4").addNumbered(5, WIDTH, HEIGHT).write(folder.resolve("a.mp4"));
        for (String name : List.of("a.avi", "a.mts", "a.mkv")) {
            Path renamed = Files.copy(clip, folder.resolve(name));
            assertEquals(List.of(0, 1, 2, 3, 4), FfmpegFrameReaderTest.numbers(read(renamed)));
        }
    }

    @Test
    void soundAloneIsNotAClip() throws IOException {
        String refused = refusal(resource("sound-only.mp4"));
        assertTrue(refused.startsWith("sound-only.mp4: holds no video track"), refused);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "clip,bib\na.mp4,1\n",
                "#EXTM3U\n#EXTINF:1,\nother.mp4\n",
                "ffconcat version 1.0\nfile other.mp4\n"
            })
    void textIsNotAClipAndLeadsToNoOtherFile(String text) throws IOException {
        DrawnClip.codedAs("mpeg4").addNumbered(2, WIDTH, HEIGHT).write(folder.resolve("other.mp4"));
        Path clip = Files.writeString(folder.resolve("list.mp4"), text, StandardCharsets.UTF_8);
        assertTrue(refusal(clip).startsWith("list.mp4: is not a video file"), refusal(clip));
    }

    @ParameterizedTest
    @CsvSource({"mpeg4, a.mp4, false", "mpeg2video, a.avi, true", "ffv1, a.mkv, true", "mpeg2video, a.mts, true"})
    void ofAClipThatBreaksOffEveryWholePictureIsRead(String codec, String name, boolean readable) throws IOException {
        Path clip = DrawnClip.codedAs(codec).addNumbered(60, WIDTH, HEIGHT).write(folder.resolve(name));
        byte[] bytes = Files.readAllBytes(clip);
        Path cut = Files.write(folder.resolve("cut-" + name), Arrays.copyOf(bytes, bytes.length / 2));
        if (!readable) {
            assertTrue(refusal(cut).contains("has no index"), refusal(cut));
            return;
        }
        List<Integer> numbers = FfmpegFrameReaderTest.numbers(read(cut));
        // Of an AVI file half is headers here. The last picture may be half there.
        assertTrue(numbers.size() >= 3 && numbers.size() < 50, "frames: " + numbers.size());
        List<Integer> whole = numbers.subList(0, numbers.size() - 1);
        assertEquals(IntStream.range(0, whole.size()).boxed().toList(), whole);
    }

    // ---- names

    @ParameterizedTest
    @ValueSource(
            strings = {
                "\uD83C\uDFC3 third.mkv",
                "--out.mkv",
                "Spru\u0308nge.mkv",
                "\u4E09\u6BB5\u8DF3.mkv",
                "'quoted' \"twice\".mkv",
                "a\\b.mkv",
                "pipe|.mkv",
                "%s%n.mkv"
            })
    void looksIntoFilesOfAnyName(String name) throws IOException {
        Path plain = DrawnClip.codedAs("ffv1").addNumbered(3, WIDTH, HEIGHT).write(folder.resolve("plain.mkv"));
        Path named;
        try {
            named = Files.copy(plain, folder.resolve(name));
        } catch (IOException | InvalidPathException e) {
            Assumptions.abort("this system has no file named " + name);
            return;
        }
        assertEquals(3, look(named).frames());
        assertEquals(List.of(0, 1, 2), FfmpegFrameReaderTest.numbers(read(named)));
    }

    // ---- length

    /** Forty minutes: {@code mvn test -Dtest=FootageTest -Dboardtopit.long=true}. */
    @Test
    @Timeout(600)
    @EnabledIfSystemProperty(named = "boardtopit.long", matches = "true")
    void readsALongRecordingWithinTheMemoryOfAShortOne() throws IOException {
        int frames = 60_000;
        DrawnClip drawn = DrawnClip.codedAs("mpeg4");
        Drawing same = Drawing.numbered(WIDTH, HEIGHT, 7);
        for (int i = 0; i < frames; i++) {
            drawn.add(same);
        }
        Path clip = drawn.write(folder.resolve("forty-minutes.mp4"));
        System.gc();
        long before = Pointer.physicalBytes();
        long startNs = System.nanoTime();
        ClipFacts facts = look(clip);
        double lookS = (System.nanoTime() - startNs) * 1e-9;
        int read = 0;
        try (FrameReader reader = new PrefetchingReader(new FfmpegFrameReader(clip, 2))) {
            while (reader.next().isPresent()) {
                read++;
            }
        }
        assertEquals(frames, facts.frames());
        assertFalse(facts.allCounted());
        assertEquals(frames, read);
        assertTrue(lookS < 5, "the look took " + lookS + " s");
        assertTrue(Pointer.physicalBytes() - before < 50_000_000, "grew by " + (Pointer.physicalBytes() - before));
    }

    // ---- what the tests share

    private Path resource(String name) throws IOException {
        try (InputStream in = FootageTest.class.getResourceAsStream(name)) {
            Files.copy(in, folder.resolve(name));
        }
        return folder.resolve(name);
    }

    private static ClipFacts look(Path clip) throws VideoException {
        return new FfmpegClipProbe(1).look(clip, NOWHERE, (share, first, second) -> {});
    }

    private static List<VideoFrame> read(Path clip) throws IOException {
        try (FrameReader reader = new FfmpegFrameReader(clip, 2)) {
            return FfmpegFrameReaderTest.all(reader);
        }
    }

    private static String refusal(Path clip) {
        return assertThrows(VideoException.class, () -> new FfmpegFrameReader(clip, 1).close())
                .getMessage();
    }
}
