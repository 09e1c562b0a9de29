package org.boardtopit.pose;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPOutputStream;
import org.boardtopit.synthetic.DrawnClip;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClipLandmarksFileTest {
    private static final String FINGERPRINT = "clip 1234, network full";

    @TempDir
    Path folder;

    private static ClipLandmarks clip() {
        return new DrawnClip(DrawnClip.Setup.ordinary(5))
                .landmarks(); // panned or not, with missing frames and NaN modes
    }

    private Path written(ClipLandmarks clip) throws IOException {
        Path file = folder.resolve("a clip.landmarks");
        ClipLandmarksFile.write(file, FINGERPRINT, clip);
        return file;
    }

    @Test
    void readsBackWhatWasWritten() throws IOException {
        ClipLandmarks clip = clip();
        ClipLandmarks read = ClipLandmarksFile.read(written(clip), FINGERPRINT).orElseThrow();
        assertEquals(clip.video(), read.video());
        assertEquals(clip.timestampsUs(), read.timestampsUs());
        assertEquals(clip.undecodableFrames(), read.undecodableFrames());
        assertEquals(clip.subject(), read.subject());
        assertEquals(clip.background().cameraMoves(), read.background().cameraMoves());
        assertEquals(clip.background().referenceMatched(), read.background().referenceMatched());
        for (int f = 0; f < clip.frameCount(); f++) {
            assertEquals(clip.background().frame(f), read.background().frame(f));
            assertEquals(clip.poses().at(f).isPresent(), read.poses().at(f).isPresent());
            if (clip.poses().at(f).isPresent()) {
                assertEquals(
                        clip.poses().at(f).get().square(),
                        read.poses().at(f).get().square());
                assertArrayEquals(
                        clip.poses().at(f).get().toArray(),
                        read.poses().at(f).get().toArray());
            }
        }
    }

    @Test
    void leavesNoOtherFileBehindAndReplacesAnOldOne() throws IOException {
        written(clip());
        Path file = written(clip());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList());
        }
    }

    @Test
    void isEmptyForAnotherFingerprintOrNoFileAtAll() throws IOException {
        Path file = written(clip());
        assertTrue(ClipLandmarksFile.read(file, "clip 1235, network full").isEmpty());
        assertTrue(ClipLandmarksFile.read(folder.resolve("none"), FINGERPRINT).isEmpty());
        assertTrue(ClipLandmarksFile.read(folder, FINGERPRINT).isEmpty());
    }

    @ParameterizedTest(name = "cut to {0} %")
    @ValueSource(ints = {0, 1, 10, 50, 90, 99})
    void isEmptyForAFileThatWasCutOff(int percent) throws IOException {
        Path file = written(clip());
        byte[] bytes = Files.readAllBytes(file);
        Files.write(file, Arrays.copyOf(bytes, bytes.length * percent / 100));
        assertTrue(ClipLandmarksFile.read(file, FINGERPRINT).isEmpty());
    }

    /** A bit that flips anywhere is noticed: the checksum of gzip (RFC 1952) covers everything. */
    @ParameterizedTest(name = "at {0} per mille")
    @ValueSource(ints = {15, 100, 300, 500, 700, 900, 998})
    void isEmptyForAFileWithAWrongBit(int perMille) throws IOException {
        Path file = written(clip());
        byte[] bytes = Files.readAllBytes(file);
        bytes[(int) ((long) bytes.length * perMille / 1000)] ^= 0x10;
        Files.write(file, bytes);
        assertTrue(ClipLandmarksFile.read(file, FINGERPRINT).isEmpty());
    }

    @Test
    void isEmptyForAForeignFile() throws IOException {
        Path file = folder.resolve("foreign");
        Files.writeString(file, "along_m,across_m\n1,2\n", StandardCharsets.UTF_8);
        assertTrue(ClipLandmarksFile.read(file, FINGERPRINT).isEmpty());
        try (GZIPOutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write("something else, but compressed".getBytes(StandardCharsets.UTF_8));
        }
        assertTrue(ClipLandmarksFile.read(file, FINGERPRINT).isEmpty());
    }
}
