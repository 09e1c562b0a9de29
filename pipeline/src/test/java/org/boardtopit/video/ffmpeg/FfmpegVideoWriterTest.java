package org.boardtopit.video.ffmpeg;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoWriter;
import org.boardtopit.video.VideoWriter.Chapter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class FfmpegVideoWriterTest {
    private static final int WIDTH = 160;
    private static final int HEIGHT = 96;

    @TempDir
    Path folder;

    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 2})
    void keepsEveryFrameFromFirstToLast(int threads) throws IOException {
        Path video = folder.resolve("numbered.mp4");
        try (VideoWriter writer = new FfmpegVideoCreator(threads).create(video, WIDTH, HEIGHT, 60)) {
            for (int i = 0; i < 75; i++) {
                writer.write(Drawing.numbered(WIDTH, HEIGHT, i).asFrame(i, Math.round(i * 1e6 / 60)));
            }
            writer.finish(List.of());
        }
        List<VideoFrame> frames = read(video);
        assertEquals(IntStream.range(0, 75).boxed().toList(), FfmpegFrameReaderTest.numbers(frames));
    }

    /** The steps of these rates are whole ticks, so the stamps come back exactly. */
    @ParameterizedTest(name = "{0}/{1} frames a second")
    @CsvSource({"25, 1", "30000, 1001", "60, 1", "60000, 1001", "120, 1", "240, 1"})
    void keepsTheStampsOfAnyUsualRateExactly(int num, int den) throws IOException {
        long[] stamps = LongStream.range(0, 30)
                .map(i -> Math.round(i * 1e6 * den / num))
                .toArray();
        Path video = write("rate.mp4", (double) num / den, stamps);
        assertEquals(LongStream.of(stamps).boxed().toList(), FfmpegFrameReaderTest.times(read(video)));
        long end = Math.round(30 * 1e6 * den / num);
        assertWithinOneUs(end, ContainerFacts.of(video).durationUs());
    }

    @Test
    void keepsAVariableFrameRateToTheMicrosecond() throws IOException {
        long[] stamps = {0, 33_123, 66_001, 66_777, 500_000, 500_010, 3_000_001};
        List<Long> times = FfmpegFrameReaderTest.times(read(write("variable.mp4", 30, stamps)));
        assertEquals(stamps.length, times.size());
        for (int i = 0; i < stamps.length; i++) {
            assertWithinOneUs(stamps[i], times.get(i));
        }
    }

    @Test
    void isAnOrdinaryPhoneVideo() throws IOException {
        long[] stamps = LongStream.range(0, 40).map(i -> i * 40_000).toArray();
        Path video = write("phone.mp4", 25, stamps);
        ContainerFacts facts = ContainerFacts.of(video);
        assertEquals("h264", facts.codec());
        assertEquals("avc1", facts.tag());
        assertEquals("yuv420p", facts.pixelFormat());
        assertEquals(
                List.of(1, 1, 1, 1), facts.colours(), "BT.709 is number 1 of ISO/IEC 23091-2 (MEM-H), narrow range");
        assertEquals(WIDTH, facts.widthPx());
        assertEquals(HEIGHT, facts.heightPx());
        assertEquals(List.of(0, 13, 26, 39), facts.keyFrames(), "half a second apart");
        byte[] bytes = Files.readAllBytes(video);
        assertTrue(position(bytes, "moov") < position(bytes, "mdat"), "the index comes before the pictures");
    }

    private static int position(byte[] bytes, String box) {
        return new String(bytes, StandardCharsets.ISO_8859_1).indexOf(box);
    }

    @Test
    void tellsNothingOfPlaceDateOrWriter() throws IOException {
        Map<String, String> metadata =
                ContainerFacts.of(write("plain.mp4", 25, 0, 40_000)).metadata();
        List<String> allowed =
                List.of("major_brand", "minor_version", "compatible_brands", "handler_name", "language", "vendor_id");
        assertTrue(allowed.containsAll(metadata.keySet()), metadata.toString());
    }

    @Test
    void carriesNoPlaceOrDeviceOverFromTheClip() throws IOException {
        // The place as ISO 6709 has it, which phones write; the device is invented.
        Path phone = DrawnClip.codedAs("mpeg4")
                .tag("location", "+48.1372+011.5756/")
                .tag("artist", "Somebody")
                .tag("comment", "Telephone 7")
                .addNumbered(5, WIDTH, HEIGHT)
                .write(folder.resolve("phone.mov"));
        assertTrue(ContainerFacts.of(phone).metadata().containsKey("location"), "the clip has what is to be left out");
        Path copy = folder.resolve("copy.mp4");
        try (FrameReader reader = new FfmpegClipOpener(1).open(phone);
                VideoWriter writer = writer(copy, 25)) {
            for (Optional<VideoFrame> frame = reader.next(); frame.isPresent(); frame = reader.next()) {
                writer.write(frame.get());
            }
            writer.finish(List.of());
        }
        String bytes = Files.readString(copy, StandardCharsets.ISO_8859_1);
        for (String told : List.of("48.1372", "Somebody", "Telephone", "xyz")) {
            assertFalse(bytes.contains(told), told);
        }
    }

    @Test
    void givesTheSameFileForTheSameFrames() throws IOException {
        long[] stamps = LongStream.range(0, 20).map(i -> i * 40_000).toArray();
        byte[] first = Files.readAllBytes(write("first.mp4", 25, stamps));
        byte[] second = Files.readAllBytes(write("second.mp4", 25, stamps));
        assertArrayEquals(first, second);
    }

    @ParameterizedTest(name = "{0} {1} {2}")
    @CsvSource({"255, 255, 255", "0, 0, 0", "230, 40, 40", "40, 200, 60", "30, 60, 220", "213, 94, 0", "128, 128, 128"})
    void keepsColours(int red, int green, int blue) throws IOException {
        Path video = folder.resolve("colour.mp4");
        try (VideoWriter writer = writer(video, 25)) {
            writer.write(Drawing.plain(WIDTH, HEIGHT, red, green, blue).asFrame(0, 0));
            writer.finish(List.of());
        }
        int[] actual = Drawing.rgbOf(read(video).get(0), 80, 48);
        // Two roundings to 8-bit Y'CbCr and back, and a quantiser step: 6 of 255 levels cannot be seen.
        assertEquals(red, actual[0], 6);
        assertEquals(green, actual[1], 6);
        assertEquals(blue, actual[2], 6);
    }

    @Test
    void leavesOutTheLastColumnAndRowOfOddSizes() throws IOException {
        Path video = folder.resolve("odd-size.mp4");
        try (VideoWriter writer = new FfmpegVideoWriter(video, 161, 97, 25, 1)) {
            writer.write(Drawing.withCorners(161, 97, 32).asFrame(0, 0));
            writer.finish(List.of());
        }
        VideoFrame frame = read(video).get(0);
        assertEquals(160, frame.widthPx());
        assertEquals(96, frame.heightPx());
        assertEquals("RGBW", Drawing.cornersOf(frame));
    }

    // ---- chapters

    @Test
    void namesChaptersInTheOrderOfTime() throws IOException {
        Path video = folder.resolve("chapters.mp4");
        try (VideoWriter writer = writer(video, 25)) {
            fourSeconds(writer);
            writer.finish(List.of(
                    new Chapter("Pit", 3_120_000), new Chapter("Approach", 0), new Chapter("Brett – ü", 1_040_000)));
        }
        assertEquals(
                List.of("0.0 Approach", "1.04 Brett – ü", "3.12 Pit"),
                ContainerFacts.of(video).chapters());
        assertEquals(100, read(video).size(), "chapters leave the pictures alone");
    }

    @Test
    void fillsTheTimeBeforeTheFirstChapter() throws IOException {
        Path video = folder.resolve("late-chapter.mp4");
        try (VideoWriter writer = writer(video, 25)) {
            fourSeconds(writer);
            writer.finish(List.of(new Chapter("Board", 1_500_000)));
        }
        assertEquals(List.of("0.0 Start", "1.5 Board"), ContainerFacts.of(video).chapters());
    }

    @Test
    void writesNoChaptersWhenThereAreNone() throws IOException {
        assertEquals(
                List.of(), ContainerFacts.of(write("none.mp4", 25, 0, 40_000)).chapters());
    }

    private static void fourSeconds(VideoWriter writer) throws IOException {
        for (int i = 0; i < 100; i++) {
            writer.write(Drawing.numbered(WIDTH, HEIGHT, i).asFrame(i, i * 40_000L));
        }
    }

    @Test
    void refusesChaptersWithoutTitleOrBeforeTheStart() {
        assertThrows(IllegalArgumentException.class, () -> new Chapter(" ", 0));
        assertThrows(IllegalArgumentException.class, () -> new Chapter("Board", -1));
    }

    // ---- files

    @Test
    void takesItsNameOnlyWhenFinished() throws IOException {
        Path video = Files.writeString(folder.resolve("-Übersicht 1.mp4"), "older", StandardCharsets.UTF_8);
        try (VideoWriter writer = writer(video, 25)) {
            writer.write(Drawing.numbered(WIDTH, HEIGHT, 7).asFrame(0, 0));
            assertEquals("older", Files.readString(video, StandardCharsets.UTF_8));
            writer.finish(List.of());
        }
        assertEquals(List.of(7), FfmpegFrameReaderTest.numbers(read(video)));
        assertEquals(List.of(video), files());
    }

    @Test
    void leavesNothingWhenClosedUnfinished() throws IOException {
        try (VideoWriter writer = writer(folder.resolve("given-up.mp4"), 25)) {
            writer.write(Drawing.numbered(WIDTH, HEIGHT, 0).asFrame(0, 0));
            assertEquals(1, files().size());
        }
        assertEquals(List.of(), files());
    }

    @Test
    void refusesToFinishWithoutAPicture() throws IOException {
        try (VideoWriter writer = writer(folder.resolve("no-picture.mp4"), 25)) {
            VideoException e = assertThrows(VideoException.class, () -> writer.finish(List.of()));
            assertTrue(e.getMessage().startsWith("no-picture.mp4: no picture was written"), e.getMessage());
        }
        assertEquals(List.of(), files());
    }

    @Test
    void saysWhereAFileCannotBeCreated() {
        Path video = folder.resolve("no-such-folder").resolve("video.mp4");
        VideoException e =
                assertThrows(VideoException.class, () -> writer(video, 25).close());
        assertTrue(e.getMessage().startsWith("video.mp4: cannot be created in " + video.getParent()), e.getMessage());
    }

    @Test
    void refusesOtherSizesAndStampsThatDoNotRise() throws IOException {
        try (VideoWriter writer = writer(folder.resolve("strict.mp4"), 25)) {
            VideoFrame frame = Drawing.numbered(WIDTH, HEIGHT, 0).asFrame(0, 40_000);
            VideoFrame wider = Drawing.numbered(WIDTH + 16, HEIGHT, 0).asFrame(1, 80_000);
            writer.write(frame);
            assertThrows(IllegalArgumentException.class, () -> writer.write(frame));
            assertThrows(IllegalArgumentException.class, () -> writer.write(wider));
            writer.finish(List.of());
            assertThrows(IllegalStateException.class, () -> writer.write(frame));
            assertThrows(IllegalStateException.class, () -> writer.finish(List.of()));
        }
    }

    @Test
    void refusesSizesBelowOneBlock() {
        Path video = folder.resolve("tiny.mp4");
        assertThrows(IllegalArgumentException.class, () -> new FfmpegVideoWriter(video, 15, 16, 25, 1).close());
        assertFalse(Files.exists(folder.resolve("tiny.mp4.part")));
    }

    // ---- what the tests share

    private static void assertWithinOneUs(long expectedUs, long actualUs) {
        assertTrue(Math.abs(expectedUs - actualUs) <= 1, "expected " + expectedUs + " us, was " + actualUs);
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    private static VideoWriter writer(Path video, double fps) throws VideoException {
        return new FfmpegVideoWriter(video, WIDTH, HEIGHT, fps, 1);
    }

    private Path write(String name, double fps, long... stampsUs) throws IOException {
        Path video = folder.resolve(name);
        try (VideoWriter writer = writer(video, fps)) {
            for (int i = 0; i < stampsUs.length; i++) {
                writer.write(Drawing.numbered(WIDTH, HEIGHT, i).asFrame(i, stampsUs[i]));
            }
            writer.finish(List.of());
        }
        return video;
    }

    private static List<VideoFrame> read(Path video) throws IOException {
        try (FrameReader reader = new FfmpegFrameReader(video, 2)) {
            return FfmpegFrameReaderTest.all(reader);
        }
    }
}
