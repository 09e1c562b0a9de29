package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_JPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_MPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_SMPTE170M;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_TRC_ARIB_STD_B67;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
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
import org.boardtopit.video.FramePixels.Luma;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class FfmpegFrameReaderTest {
    private static final int WIDTH = 160;
    private static final int HEIGHT = 96;

    @TempDir
    Path folder;

    // ---- which frames

    @ParameterizedTest(name = "{0} in {1} with {3} threads")
    @CsvSource({
        "ffv1,        lossless.mkv,          0, 1",
        "mjpeg,       still-pictures.avi,    0, 2",
        "mpeg4,       reordered.mp4,         2, 1",
        "mpeg4,       reordered.mp4,         2, 3",
        "mpeg2video,  transport-stream.mts,  2, 2",
        "libopenh264, baseline.mov,          0, 2"
    })
    void deliversEveryFrameOnceFromFirstToLast(String codec, String name, int reordered, int threads)
            throws IOException {
        String format = codec.equals("mjpeg") ? "yuvj420p" : "yuv420p";
        Path clip = DrawnClip.codedAs(codec)
                .pixelFormat(format)
                .reorderedPictures(reordered)
                .addNumbered(23, WIDTH, HEIGHT)
                .write(folder.resolve(name));

        List<VideoFrame> frames = read(clip, threads);

        assertEquals(IntStream.range(0, 23).boxed().toList(), numbers(frames));
        assertEquals(
                IntStream.range(0, 23).boxed().toList(),
                frames.stream().map(VideoFrame::index).toList());
        assertEquals(LongStream.range(0, 23).map(i -> i * 40_000).boxed().toList(), times(frames));
    }

    @Test
    void readsAClipOfOneFrame() throws IOException {
        Path clip = DrawnClip.codedAs("mpeg4").addNumbered(1, WIDTH, HEIGHT).write(folder.resolve("one-frame.mp4"));
        List<VideoFrame> frames = read(clip, 2);
        assertEquals(List.of(0), numbers(frames));
        assertEquals(List.of(0L), times(frames));
    }

    @Test
    void givesTheSamePixelsEachTime() throws IOException {
        Path clip = DrawnClip.codedAs("mpeg4").addNumbered(12, WIDTH, HEIGHT).write(folder.resolve("twice.mp4"));
        List<VideoFrame> first = read(clip, 1);
        List<VideoFrame> second = read(clip, 3);
        assertEquals(12, first.size());
        for (int i = 0; i < 12; i++) {
            assertEquals(first.get(i).bgr(), second.get(i).bgr(), "frame " + i);
        }
    }

    @Test
    void staysAtTheEnd() throws IOException {
        Path clip = DrawnClip.codedAs("ffv1").addNumbered(2, WIDTH, HEIGHT).write(folder.resolve("short.mkv"));
        try (FrameReader reader = new FfmpegFrameReader(clip, 1)) {
            assertTrue(reader.next().isPresent());
            assertTrue(reader.next().isPresent());
            assertTrue(reader.next().isEmpty());
            assertTrue(reader.next().isEmpty());
        }
    }

    @Test
    void refusesToReadAfterClosing() throws IOException {
        Path clip = DrawnClip.codedAs("ffv1").addNumbered(2, WIDTH, HEIGHT).write(folder.resolve("closed.mkv"));
        FrameReader reader = new FfmpegFrameReader(clip, 1);
        reader.close();
        reader.close();
        assertThrows(IllegalStateException.class, reader::next);
    }

    // ---- when

    @Test
    void takesTimesFromTheStampsOfAVariableFrameRate() throws IOException {
        long[] stampsMs = {0, 33, 67, 100, 117, 133, 500, 501, 2000};
        DrawnClip clip = DrawnClip.codedAs("ffv1");
        for (int i = 0; i < stampsMs.length; i++) {
            clip.addAt(stampsMs[i], Drawing.numbered(WIDTH, HEIGHT, i));
        }
        List<VideoFrame> frames = read(clip.write(folder.resolve("variable-frame-rate.mkv")), 2);
        assertEquals(LongStream.of(stampsMs).map(ms -> ms * 1000).boxed().toList(), times(frames));
    }

    @Test
    void countsTimeFromTheFirstFrame() throws IOException {
        Path clip = DrawnClip.codedAs("ffv1")
                .addAt(700, Drawing.numbered(WIDTH, HEIGHT, 0))
                .addAt(733, Drawing.numbered(WIDTH, HEIGHT, 1))
                .write(folder.resolve("starts-late.mkv"));
        assertEquals(List.of(0L, 33_000L), times(read(clip, 1)));
    }

    @Test
    void tellsRateLengthAndCount() throws IOException {
        Path clip = DrawnClip.codedAs("mpeg4")
                .fps(50)
                .addNumbered(100, WIDTH, HEIGHT)
                .write(folder.resolve("50-fps.mp4"));
        VideoInfo info = info(clip);
        assertEquals(50, info.nominalFps(), 1e-6);
        assertEquals(2_000_000, info.durationUs());
        assertEquals(100, info.estimatedFrames());
        assertEquals("mpeg4", info.codec());
        assertFalse(info.interlaced());
        assertEquals(0, info.rotationDeg());
    }

    // ---- upright

    /** The stored picture has R G / B W in its corners; what is expected was found by turning a sheet of paper. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "rotated-0.mp4,      1,  0,  0,  1,   0, RGBW",
        "rotated-90.mp4,     0,  1, -1,  0,  90, BRWG",
        "rotated-180.mp4,   -1,  0,  0, -1, 180, WBGR",
        "rotated-270.mp4,    0, -1,  1,  0, 270, GWRB",
        "mirrored.mp4,      -1,  0,  0,  1,   0, GRWB",
        "upside-down.mp4,    1,  0,  0, -1,   0, BWRG"
    })
    void turnsThePictureUpright(String name, int a, int b, int c, int d, int degrees, String corners)
            throws IOException {
        Path clip = DrawnClip.codedAs("mpeg4")
                .displayMatrix(a, b, c, d)
                .add(Drawing.withCorners(WIDTH, HEIGHT, 32))
                .write(folder.resolve(name));
        VideoInfo info = info(clip);
        VideoFrame frame = read(clip, 1).get(0);
        boolean swapped = degrees == 90 || degrees == 270;
        assertEquals(degrees, info.rotationDeg());
        assertEquals(swapped ? HEIGHT : WIDTH, info.widthPx());
        assertEquals(swapped ? WIDTH : HEIGHT, info.heightPx());
        assertEquals(info.widthPx(), frame.widthPx());
        assertEquals(info.heightPx(), frame.heightPx());
        assertEquals(corners, Drawing.cornersOf(frame));
    }

    // ---- sizes and formats

    @ParameterizedTest(name = "pixel format {0}, turned {1}")
    @CsvSource({"yuv420p, false", "yuv420p, true", "yuv422p, true", "yuv444p, false", "yuv420p10, false", "bgr0, true"})
    void keepsOddSizesToTheLastPixel(String format, boolean turned) throws IOException {
        DrawnClip clip = DrawnClip.codedAs("ffv1").pixelFormat(format).add(Drawing.withCorners(161, 97, 20));
        if (turned) {
            clip.displayMatrix(0, 1, -1, 0);
        }
        // Only MOV keeps both the odd formats and the display matrix.
        VideoFrame frame = read(clip.write(folder.resolve("odd-size.mov")), 2).get(0);
        assertEquals(turned ? 97 : 161, frame.widthPx());
        assertEquals(turned ? 161 : 97, frame.heightPx());
        assertEquals(turned ? "BRWG" : "RGBW", Drawing.cornersOf(frame));
    }

    @ParameterizedTest(name = "{0}:{1} pixels of {2} x {3} become {4} x {5}")
    @CsvSource({
        "16, 11, 720, 576, 1047, 576",
        "4,   3, 144, 108,  192, 108",
        "10, 11, 720, 480,  720, 528",
        "1,   1, 160,  96,  160,  96"
    })
    void makesPixelsSquareByEnlarging(int num, int den, int width, int height, int outWidth, int outHeight)
            throws IOException {
        Path clip = DrawnClip.codedAs("ffv1")
                .pixelAspect(num, den)
                .add(Drawing.withCorners(width, height, 30))
                .write(folder.resolve("not-square.mkv"));
        VideoFrame frame = read(clip, 1).get(0);
        assertEquals(outWidth, frame.widthPx());
        assertEquals(outHeight, frame.heightPx());
        assertEquals("RGBW", Drawing.cornersOf(frame));
    }

    @Test
    void keepsTheSizeOfTheFirstPictureWhenItChanges() throws IOException {
        Path clip = DrawnClip.codedAs("mjpeg")
                .pixelFormat("yuvj420p")
                .add(Drawing.withCorners(WIDTH, HEIGHT, 32))
                .add(Drawing.withCorners(WIDTH * 2, HEIGHT * 2, 64))
                .add(Drawing.withCorners(WIDTH, HEIGHT, 32))
                .write(folder.resolve("size-changes.avi"));
        List<VideoFrame> frames = read(clip, 1);
        assertEquals(3, frames.size());
        for (VideoFrame frame : frames) {
            assertEquals(WIDTH, frame.widthPx());
            assertEquals("RGBW", Drawing.cornersOf(frame));
        }
    }

    /**
     * The 75 % colour bars in 8-bit Y'CbCr as published for BT.709 (SMPTE RP 219) and BT.601 (ITU-R BT.801), MEM-H; and for the
     * full range computed by the JPEG formula (ITU-T T.871), CALC. 75 % of 255 is 191.
     */
    @ParameterizedTest(name = "{0} {4} {5}")
    @CsvSource({
        "yellow  709, 168,  44, 136, BT709, NARROW, 191, 191,   0",
        "cyan    709, 145, 147,  44, BT709, NARROW,   0, 191, 191",
        "green   709, 133,  63,  52, BT709, NARROW,   0, 191,   0",
        "magenta 709,  63, 193, 204, BT709, NARROW, 191,   0, 191",
        "red     709,  51, 109, 212, BT709, NARROW, 191,   0,   0",
        "blue    709,  28, 212, 120, BT709, NARROW,   0,   0, 191",
        "yellow  601, 162,  44, 142, BT601, NARROW, 191, 191,   0",
        "green   601, 112,  72,  58, BT601, NARROW,   0, 191,   0",
        "red     601,  65, 100, 212, BT601, NARROW, 191,   0,   0",
        "blue    601,  35, 212, 114, BT601, NARROW,   0,   0, 191",
        "red    full,  57,  96, 223, BT601, FULL,   191,   0,   0",
        "white  full, 255, 128, 128, BT601, FULL,   255, 255, 255",
        "white   709, 235, 128, 128, BT709, NARROW, 255, 255, 255",
        "black   709,  16, 128, 128, BT709, NARROW,   0,   0,   0"
    })
    void convertsColoursByTheirOwnMatrixAndRange(
            String name, int y, int cb, int cr, String matrix, String range, int red, int green, int blue)
            throws IOException {
        Path clip = DrawnClip.codedAs("ffv1")
                .colours(
                        matrix.equals("BT709") ? AVCOL_SPC_BT709 : AVCOL_SPC_SMPTE170M,
                        range.equals("FULL") ? AVCOL_RANGE_JPEG : AVCOL_RANGE_MPEG)
                .touchUp(frame -> paintYuv(frame, y, cb, cr))
                .add(Drawing.plain(WIDTH, HEIGHT, Drawing.GREY))
                .write(folder.resolve("colour-bar.mkv"));
        int[] actual = Drawing.rgbOf(read(clip, 1).get(0), 80, 48);
        // 3 levels: 8-bit Y'CbCr is off by up to 1.5 levels itself, the fast conversion by up to 2.
        assertEquals(red, actual[0], 3, name);
        assertEquals(green, actual[1], 3, name);
        assertEquals(blue, actual[2], 3, name);
    }

    private static void paintYuv(AVFrame frame, int y, int cb, int cr) {
        int[] values = {y, cb, cr};
        for (int plane = 0; plane < 3; plane++) {
            int rows = plane == 0 ? frame.height() : frame.height() / 2;
            BytePointer.memset(frame.data(plane), values[plane], (long) frame.linesize(plane) * rows);
        }
    }

    // ---- interlaced

    /**
     * A white bar moves 8 px from field to field. Each picture weaves two fields: even lines are the top one. Read back, frame k
     * must show the bar where it was at field k: a reader that weaves, blends or mixes up the field order shows it elsewhere.
     */
    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "mpeg2video, interlaced-top-first.mkv,    true",
        "mpeg2video, interlaced-bottom-first.mkv, false",
        "ffvhuff,    interlaced-by-header.mkv,    true",
        "ffvhuff,    interlaced-by-header.mkv,    false"
    })
    void givesEveryFieldItsOwnFrameAndTime(String codec, String name, boolean topFirst) throws IOException {
        int pictures = 10;
        DrawnClip clip = DrawnClip.codedAs(codec).interlaced(topFirst);
        for (int i = 0; i < pictures; i++) {
            Drawing woven = Drawing.plain(256, 96, 16, 16, 16);
            for (int line = 0; line < 96; line++) {
                boolean firstField = (line % 2 == 0) == topFirst;
                woven.fill(barLeft(2 * i + (firstField ? 0 : 1)), line, 16, 1, Drawing.WHITE);
            }
            clip.add(woven);
        }
        Path file = clip.write(folder.resolve(name));

        VideoInfo info = info(file);
        List<VideoFrame> frames = read(file, 2);

        assertTrue(info.interlaced());
        assertEquals(50, info.nominalFps(), 1e-6);
        assertEquals(2L * pictures, info.estimatedFrames());
        assertEquals(
                LongStream.range(0, 2L * pictures).map(i -> i * 20_000).boxed().toList(), times(frames));
        for (VideoFrame frame : frames) {
            assertEquals(barLeft(frame.index()) + 8, brightCentre(frame), 1.5, "field " + frame.index());
        }
    }

    @Test
    void readsAnInterlacedClipOfOnePicture() throws IOException {
        Path clip = DrawnClip.codedAs("mpeg2video")
                .interlaced(true)
                .addNumbered(1, WIDTH, HEIGHT)
                .write(folder.resolve("interlaced-one-picture.mkv"));
        List<VideoFrame> frames = read(clip, 1);
        assertEquals(List.of(0, 0), numbers(frames));
        assertTrue(frames.get(1).timestampUs() > 0);
    }

    private static int barLeft(int field) {
        return 32 + 8 * field;
    }

    /** Mean column of the light, over rows in the middle where both fields have neighbours. */
    private static double brightCentre(VideoFrame frame) {
        double weight = 0;
        double sum = 0;
        for (int y = 40; y < 56; y++) {
            for (int x = 0; x < frame.widthPx(); x++) {
                int light = Math.max(0, Drawing.rgbOf(frame, x, y)[1] - 60);
                weight += light;
                sum += light * (x + 0.5);
            }
        }
        return sum / weight;
    }

    // ---- damage

    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 3})
    void countsADamagedPacketAndGoesOn(int threads) throws IOException {
        Path clip = DrawnClip.codedAs("mjpeg")
                .pixelFormat("yuvj420p")
                .addNumbered(12, WIDTH, HEIGHT)
                .damagedPackets(4, 11)
                .write(folder.resolve("damaged-packets.avi"));
        try (FrameReader reader = new FfmpegFrameReader(clip, threads)) {
            List<VideoFrame> frames = all(reader);
            assertEquals(List.of(0, 1, 2, 3, 5, 6, 7, 8, 9, 10), numbers(frames));
            assertEquals(200_000, frames.get(4).timestampUs());
            assertEquals(2, reader.undecodableFrames());
        }
    }

    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 2})
    void keepsTheTimesOfTheFramesAfterADamagedOne(int threads) throws IOException {
        Path clip = DrawnClip.codedAs("libopenh264")
                .addNumbered(25, WIDTH, HEIGHT)
                .damagedPackets(5)
                .write(folder.resolve("damaged-h264.mp4"));
        try (FrameReader reader = new FfmpegFrameReader(clip, threads)) {
            List<Long> expected = LongStream.range(0, 25)
                    .filter(i -> i != 5)
                    .map(i -> i * 40_000)
                    .boxed()
                    .toList();
            assertEquals(expected, times(all(reader)));
            assertEquals(1, reader.undecodableFrames());
        }
    }

    /** Pictures 1 to 9 build on the first, whose packet is damaged; the decoder drops them without an error. */
    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 2})
    void countsPicturesThatAreDroppedInSilence(int threads) throws IOException {
        Path clip = DrawnClip.codedAs("libopenh264")
                .addNumbered(25, WIDTH, HEIGHT)
                .damagedPackets(0)
                .write(folder.resolve("damaged-key-picture.mp4"));
        try (FrameReader reader = new FfmpegFrameReader(clip, threads)) {
            assertEquals(IntStream.range(10, 25).boxed().toList(), numbers(all(reader)));
            assertEquals(10, reader.undecodableFrames());
        }
    }

    @Test
    void skipsDamageAtTheVeryStart() throws IOException {
        Path clip = DrawnClip.codedAs("mjpeg")
                .pixelFormat("yuvj420p")
                .addNumbered(4, WIDTH, HEIGHT)
                .damagedPackets(0)
                .write(folder.resolve("damaged-start.avi"));
        List<VideoFrame> frames = read(clip, 2);
        assertEquals(List.of(1, 2, 3), numbers(frames));
        assertEquals(List.of(0L, 40_000L, 80_000L), times(frames));
    }

    @Test
    void refusesAClipWithoutOneGoodPicture() {
        Path clip = DrawnClip.codedAs("mjpeg")
                .pixelFormat("yuvj420p")
                .addNumbered(2, WIDTH, HEIGHT)
                .damagedPackets(0, 1)
                .write(folder.resolve("all-damaged.avi"));
        assertTrue(refusal(clip).startsWith("all-damaged.avi: none of its pictures can be decoded"), refusal(clip));
    }

    @Test
    void givesWhatIsThereOfAClipCutOffAfterItsIndex() throws IOException {
        Path whole = DrawnClip.codedAs("ffv1").addNumbered(40, WIDTH, HEIGHT).write(folder.resolve("whole.mkv"));
        byte[] bytes = Files.readAllBytes(whole);
        Path cut = Files.write(folder.resolve("cut-off.mkv"), Arrays.copyOf(bytes, bytes.length / 2));
        List<Integer> numbers = numbers(read(cut, 2));
        assertTrue(numbers.size() > 10 && numbers.size() < 35, "frames: " + numbers.size());
        assertEquals(IntStream.range(0, numbers.size()).boxed().toList(), numbers);
    }

    @Test
    void saysThatARecordingWithoutIndexWasCutOff() throws IOException {
        Path whole = DrawnClip.codedAs("mpeg4").addNumbered(40, WIDTH, HEIGHT).write(folder.resolve("whole.mp4"));
        byte[] bytes = Files.readAllBytes(whole);
        Path cut = Files.write(folder.resolve("truncated.mp4"), Arrays.copyOf(bytes, bytes.length / 2));
        assertTrue(refusal(cut).startsWith("truncated.mp4: the recording has no index"), refusal(cut));
    }

    // ---- not clips

    @Test
    void refusesWhatIsNotAVideo() throws IOException {
        Path text = Files.writeString(
                folder.resolve("not-a-video.txt"), "bib,athlete\n1,somebody\n", StandardCharsets.UTF_8);
        Path empty = Files.createFile(folder.resolve("empty.mp4"));
        Path playlist = Files.writeString(
                folder.resolve("list.m3u8"),
                "#EXTM3U\n#EXT-X-TARGETDURATION:10\n#EXTINF:10,\nother.ts\n",
                StandardCharsets.UTF_8);
        Path picture = Files.write(folder.resolve("picture.png"), onePixelPng());

        assertTrue(refusal(text).startsWith("not-a-video.txt: is not a video file"), refusal(text));
        assertTrue(refusal(playlist).startsWith("list.m3u8: is not a video file"), refusal(playlist));
        assertTrue(refusal(picture).startsWith("picture.png: is not a video file"), refusal(picture));
        assertTrue(refusal(empty).startsWith("empty.mp4: the file is empty"), refusal(empty));
        assertTrue(refusal(folder).endsWith("is a folder, not a video file"), refusal(folder));
        assertTrue(refusal(folder.resolve("gone.mp4")).startsWith("gone.mp4: there is no such file"));
    }

    @Test
    void refusesAClipWithSoundOnly() throws IOException {
        Path sound = Files.write(folder.resolve("audio-only.avi"), avi(2000));
        assertTrue(refusal(sound).startsWith("audio-only.avi: holds no video track"), refusal(sound));
    }

    /** An AVI file of silence, built by hand: one PCM track of 8-bit samples at 8 kHz (RIFF and AVI headers, MEM-H). */
    private static byte[] avi(int samples) {
        ByteBuffer file = ByteBuffer.allocate(4096 + samples).order(ByteOrder.LITTLE_ENDIAN);
        int strl = 4 + 8 + 56 + 8 + 16;
        int hdrl = 4 + 8 + 56 + 8 + strl;
        text(file, "RIFF").putInt(4 + 8 + hdrl + 8 + 4 + 8 + samples);
        text(text(file, "AVI "), "LIST").putInt(hdrl);
        text(text(file, "hdrl"), "avih").putInt(56);
        file.putInt(1_000_000)
                .putInt(8000)
                .putInt(0)
                .putInt(0x10)
                .putInt(1)
                .putInt(0)
                .putInt(1);
        file.position(file.position() + 28);
        text(file, "LIST").putInt(strl);
        text(text(file, "strl"), "strh").putInt(56);
        text(file, "auds")
                .putInt(0)
                .putInt(0)
                .putInt(0)
                .putInt(0)
                .putInt(1)
                .putInt(8000)
                .putInt(0)
                .putInt(samples);
        file.putInt(samples).putInt(0).putInt(1).putLong(0);
        text(file, "fmt ").putInt(16);
        file.putShort((short) 1)
                .putShort((short) 1)
                .putInt(8000)
                .putInt(8000)
                .putShort((short) 1)
                .putShort((short) 8);
        text(file, "LIST").putInt(4 + 8 + samples);
        text(text(file, "movi"), "00wb").putInt(samples);
        for (int i = 0; i < samples; i++) {
            file.put((byte) 128);
        }
        return Arrays.copyOf(file.array(), file.position());
    }

    private static ByteBuffer text(ByteBuffer into, String fourLetters) {
        return into.put(fourLetters.getBytes(StandardCharsets.US_ASCII));
    }

    private static byte[] onePixelPng() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB), "png", out);
        return out.toByteArray();
    }

    // ---- names

    @ParameterizedTest
    @ValueSource(strings = {"with blanks.mkv", "-dash.mkv", "Weitsprünge.mkv", "100%25.mkv", "a#b?.mkv", "jump:1.mkv"})
    void readsFilesOfAnyName(String name) throws IOException {
        byte[] clip = Files.readAllBytes(
                DrawnClip.codedAs("ffv1").addNumbered(3, WIDTH, HEIGHT).write(folder.resolve("plain.mkv")));
        Path named;
        try {
            named = Files.write(folder.resolve(name), clip);
        } catch (IOException | InvalidPathException e) {
            Assumptions.abort("this system has no file named " + name);
            return;
        }
        assertEquals(List.of(0, 1, 2), numbers(read(named, 1)));
    }

    // ---- memory

    /**
     * The first openings fill the reserves of allocator and Java heap; the rest must find all they need there. Measured: they grow
     * by less than 1 MB, but by 17 MB or more with any one native part left unfreed.
     */
    @Test
    void freesItsMemoryWhenClosed() throws IOException, InterruptedException {
        Path clip = DrawnClip.codedAs("mpeg4")
                .displayMatrix(0, 1, -1, 0)
                .addNumbered(3, WIDTH, HEIGHT)
                .write(folder.resolve("open-and-close.mp4"));
        openAndClose(clip, 200);
        long before = settledBytes();
        openAndClose(clip, 600);
        long grown = settledBytes() - before;
        assertTrue(grown < 10_000_000, "grew by " + grown + " bytes");
    }

    private static void openAndClose(Path clip, int times) throws IOException {
        for (int i = 0; i < times; i++) {
            try (FrameReader reader = new FfmpegFrameReader(clip, 2)) {
                assertTrue(reader.next().isPresent());
            }
            if (i % 100 == 0) {
                System.gc(); // pixel buffers belong to the Java heap
            }
        }
    }

    /** The Java heap's cleaner frees pixel buffers a moment after the collection. */
    private static long settledBytes() throws InterruptedException {
        System.gc();
        Thread.sleep(200);
        return Pointer.physicalBytes();
    }

    @Test
    void keepsTheFramesThatAreAskedForAndRefusesToShowTheOthersOnceItHasGoneOn() throws IOException {
        Path clip = DrawnClip.codedAs("ffv1").addNumbered(4, WIDTH, HEIGHT).write(folder.resolve("reuse.mkv"));
        VideoFrame copied;
        try (FrameReader reader = new FfmpegFrameReader(clip, 1)) {
            VideoFrame first = reader.next().orElseThrow();
            copied = first.copy();
            VideoFrame kept = first.kept();
            VideoFrame second = reader.next().orElseThrow();
            assertEquals(1, Drawing.numberOf(second));
            assertEquals(0, Drawing.numberOf(kept), "converted after the other frame");
            assertThrows(IllegalStateException.class, second::bgr, "not again without what was drawn on it");
            assertThrows(IllegalStateException.class, first::bgr);
            kept.release();
            kept.release();
            assertThrows(IllegalStateException.class, kept::bgr);
            assertThrows(IllegalStateException.class, kept::luma);
        }
        assertEquals(0, Drawing.numberOf(copied), "a copy outlives the reader");
    }

    @Test
    void whatIsDrawnOnAFrameStaysThere() throws IOException {
        Path clip = DrawnClip.codedAs("ffv1").addNumbered(1, WIDTH, HEIGHT).write(folder.resolve("drawn-on.mkv"));
        try (FrameReader reader = new FfmpegFrameReader(clip, 1)) {
            VideoFrame frame = reader.next().orElseThrow();
            frame.bgr().put(7, (byte) 99);
            assertEquals(99, frame.bgr().get(7));
        }
    }

    /** Y' of BT.601, of the narrow range 16 + 219 (0.299 R' + 0.587 G' + 0.114 B') (MEM-H); the stored byte itself. */
    @ParameterizedTest(name = "{0} {1} {2}: stored {3}")
    @CsvSource({
        "yuv420p, NARROW, false, 81",
        "yuv420p, NARROW, true,  81",
        "yuv422p, NARROW, false, 81",
        "yuv444p, NARROW, false, 81",
        "yuv420p, FULL,   false, 76"
    })
    void givesTheBrightnessAsItIsStored(String format, String range, boolean turned, int stored) throws IOException {
        DrawnClip clip = DrawnClip.codedAs("ffv1")
                .pixelFormat(format)
                .colours(AVCOL_SPC_SMPTE170M, range.equals("FULL") ? AVCOL_RANGE_JPEG : AVCOL_RANGE_MPEG)
                .touchUp(frame -> paintYuv(frame, stored, 90, 240))
                .add(Drawing.plain(161, 97, Drawing.GREY));
        if (turned) {
            clip.displayMatrix(0, 1, -1, 0);
        }
        try (FrameReader reader =
                new FfmpegFrameReader(clip.write(folder.resolve(turned ? "brightness.mov" : "brightness.mkv")), 1)) {
            VideoFrame frame = reader.next().orElseThrow();
            Luma luma = frame.luma().orElseThrow();
            assertEquals(range.equals("FULL"), luma.fullRange());
            int last = (frame.heightPx() - 1) * luma.strideBytes() + frame.widthPx() - 1;
            assertEquals(stored, luma.plane().get(0) & 0xff);
            assertEquals(stored, luma.plane().get(last) & 0xff);
            assertEquals(last + 1, luma.plane().capacity());
        }
    }

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"yuv420p10", "bgr0"})
    void hasNoPlainBrightnessWhereItIsStoredOtherwise(String format) throws IOException {
        Path clip = DrawnClip.codedAs("ffv1")
                .pixelFormat(format)
                .addNumbered(1, WIDTH, HEIGHT)
                .write(folder.resolve("no-brightness.mov"));
        try (FrameReader reader = new FfmpegFrameReader(clip, 1)) {
            assertTrue(reader.next().orElseThrow().luma().isEmpty());
        }
    }

    @Test
    void hasNoPlainBrightnessOfPicturesThatItEnlargesOrPressesTogether() throws IOException {
        Path wide = DrawnClip.codedAs("mpeg4")
                .pixelAspect(4, 3)
                .addNumbered(1, WIDTH, HEIGHT)
                .write(folder.resolve("wide.mp4"));
        Path bright = DrawnClip.codedAs("ffv1")
                .tone(AVCOL_TRC_ARIB_STD_B67)
                .addNumbered(1, WIDTH, HEIGHT)
                .write(folder.resolve("bright.mkv"));
        for (Path clip : List.of(wide, bright)) {
            try (FrameReader reader = new FfmpegFrameReader(clip, 1)) {
                assertTrue(reader.next().orElseThrow().luma().isEmpty(), clip.toString());
            }
        }
    }

    // ---- what the tests share

    private static String refusal(Path clip) {
        return assertThrows(VideoException.class, () -> new FfmpegFrameReader(clip, 1).close())
                .getMessage();
    }

    private static VideoInfo info(Path clip) throws IOException {
        try (FrameReader reader = new FfmpegFrameReader(clip, 1)) {
            return reader.info();
        }
    }

    private static List<VideoFrame> read(Path clip, int threads) throws IOException {
        try (FrameReader reader = new FfmpegClipOpener(threads).open(clip)) {
            return all(reader);
        }
    }

    static List<VideoFrame> all(FrameReader reader) throws IOException {
        List<VideoFrame> frames = new ArrayList<>();
        for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
            frames.add(next.get().copy());
        }
        return frames;
    }

    static List<Integer> numbers(List<VideoFrame> frames) {
        return frames.stream().map(Drawing::numberOf).toList();
    }

    static List<Long> times(List<VideoFrame> frames) {
        return frames.stream().map(VideoFrame::timestampUs).toList();
    }
}
