package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Clip;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StoringMeasurerTest {
    private static final long PLENTY = 1L << 40;

    @TempDir
    private Path out;

    private final ScriptedMeasurer measurer = new ScriptedMeasurer();
    private Clip clip;
    private long nowNs;

    @BeforeEach
    void aClip() throws IOException {
        Path file = Files.writeString(out.resolve("a.mp4"), "bytes");
        clip = new Clip(file, "a", Optional.empty(), Optional.empty(), Optional.empty());
    }

    private StoringMeasurer storing(long freeBytes) {
        return new StoringMeasurer(
                measurer, out, c -> "made from this", () -> freeBytes, () -> nowNs += 2_000_000_000L);
    }

    @Test
    void storesEverythingThatTheTablesSay() throws Exception {
        ClipResult told = storing(PLENTY).measure(clip, (stage, share) -> {});

        StoredResult stored =
                new StoredResults(out).find(clip, "made from this").orElseThrow();
        assertEquals(2, stored.seconds());
        assertEquals(told, stored.result().orElseThrow().took(2));
        assertEquals(Optional.empty(), new StoredResults(out).find(clip, "made from that"));
    }

    @Test
    void aReasonThatLiesInTheClipIsStoredToo() {
        measurer.on("a.mp4", (c, listener) -> {
            throw new ClipNotMeasuredException("track", "nobody runs", null);
        });

        assertThrows(ClipNotMeasuredException.class, () -> storing(PLENTY).measure(clip, (stage, share) -> {}));

        StoredResult stored =
                new StoredResults(out).find(clip, "made from this").orElseThrow();
        assertEquals(StoredResult.failed("track", "nobody runs", 2), stored);
    }

    @Test
    void aReasonOfTheMachineIsNotStored() {
        measurer.on("a.mp4", (c, listener) -> {
            throw new NotMeasuredNowException("overlay", "no space left on device", null);
        });

        assertThrows(NotMeasuredNowException.class, () -> storing(PLENTY).measure(clip, (stage, share) -> {}));

        assertFalse(new StoredResults(out).hasAny(clip));
    }

    @Test
    void aDiskThatIsFullIsToldBeforeTheClipIsOpened() {
        NotMeasuredNowException e = assertThrows(
                NotMeasuredNowException.class, () -> storing(5L << 20).measure(clip, (stage, share) -> {}));

        assertEquals(
                "the disk of the output folder is full: 5 MB free, 64 MB needed for this clip; free some space, then start"
                        + " the same command again",
                e.getMessage());
        assertEquals(List.of(), measurer.opened());
    }

    /** A folder in the place of the result: writing fails on any file system and for any user. */
    @Test
    void aResultThatCannotBeWrittenIsNoResult() throws IOException {
        Files.createDirectories(out.resolve("work/a.result/in the way"));

        NotMeasuredNowException e = assertThrows(
                NotMeasuredNowException.class, () -> storing(PLENTY).measure(clip, (stage, share) -> {}));

        assertTrue(e.getMessage().startsWith("the result cannot be written ("), e.getMessage());
        assertEquals("store", e.stage());
    }

    @Test
    void aResultThatIsThereStaysWhenTheClipIsMeasuredForItsOverlay() throws Exception {
        storing(PLENTY).measure(clip, (stage, share) -> {});
        byte[] first = Files.readAllBytes(out.resolve("work/a.result"));
        measurer.on("a.mp4", (c, listener) -> {
            nowNs += 9_000_000_000L;
            return ScriptedMeasurer.result(c, List.of());
        });

        ClipResult second = storing(PLENTY).measure(clip, (stage, share) -> {});

        assertEquals(2, second.clip().seconds());
        assertArrayEquals(first, Files.readAllBytes(out.resolve("work/a.result")));
    }

    @Test
    void aResultThatIsCutOffIsAsGoodAsAbsent() throws Exception {
        storing(PLENTY).measure(clip, (stage, share) -> {});
        String whole = Files.readString(out.resolve("work/a.result"));
        for (int length = 0; length < whole.length() - 1; length += 7) {
            Files.writeString(out.resolve("work/a.result"), whole.substring(0, length));
            assertEquals(Optional.empty(), new StoredResults(out).find(clip, "made from this"), "of " + length);
        }
    }

    @Test
    void halfWrittenFilesAreRemovedAndOthersAreNot() throws IOException {
        Files.createDirectories(out.resolve("work"));
        Files.createDirectories(out.resolve("overlays"));
        Files.createDirectories(out.resolve("stills"));
        Files.writeString(out.resolve("stills/a-strip.jpg.part"), "x");
        Files.writeString(out.resolve("stills/a-strip.jpg"), "x");
        Files.writeString(out.resolve("work/a.result.part"), "x");
        Files.writeString(out.resolve("work/a.result"), "x");
        Files.writeString(out.resolve("overlays/a.mp4.part"), "x");
        Files.writeString(out.resolve("overlays/a.mp4"), "x");

        new StoredResults(out).removeHalfWritten();

        assertFalse(Files.exists(out.resolve("work/a.result.part")));
        assertTrue(Files.exists(out.resolve("work/a.result")));
        assertFalse(Files.exists(out.resolve("overlays/a.mp4.part")));
        assertTrue(Files.exists(out.resolve("overlays/a.mp4")));
        assertFalse(Files.exists(out.resolve("stills/a-strip.jpg.part")));
        assertTrue(Files.exists(out.resolve("stills/a-strip.jpg")));
    }
}
