package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Optional;
import org.boardtopit.clips.Clip;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClipDigestsTest {
    /** SHA-256 of "abc" (FIPS 180-2, appendix B.1). */
    private static final String OF_ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";

    @TempDir
    private Path folder;

    private Clip clip;

    @BeforeEach
    void aClip() throws IOException {
        Path file = Files.writeString(folder.resolve("a.mp4"), "ab");
        Files.setLastModifiedTime(file, FileTime.fromMillis(1_000_000));
        clip = new Clip(file, "a", Optional.empty(), Optional.empty(), Optional.empty());
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    /** Other bytes behind the back of whoever looks at size and time only. */
    private void changeUnseen() throws IOException {
        Files.writeString(clip.file(), "xx");
        Files.setLastModifiedTime(clip.file(), FileTime.fromMillis(1_000_000));
    }

    @Test
    void digestsTheBytesAndWhatFollows() throws IOException {
        assertEquals(OF_ABC, ClipDigests.unremembered().of(clip, bytes("c")));
        assertEquals(OF_ABC, ClipDigests.reading(folder).of(clip, bytes("c")));
        assertEquals(OF_ABC, ClipDigests.trusting(folder).of(clip, bytes("c")));
    }

    @Test
    void aRunReadsEveryTimeAndWhoTrustsGoesByTheMemory() throws IOException {
        ClipDigests.reading(folder).of(clip, bytes("c"));
        changeUnseen();
        assertEquals(OF_ABC, ClipDigests.trusting(folder).of(clip, bytes("c")));
        assertNotEquals(OF_ABC, ClipDigests.trusting(folder).of(clip, bytes("d")), "nothing is remembered of this");
        assertNotEquals(OF_ABC, ClipDigests.reading(folder).of(clip, bytes("c")));
        assertNotEquals(OF_ABC, ClipDigests.trusting(folder).of(clip, bytes("c")), "and remembers what it read");
    }

    @Test
    void aClipThatWasChangedIsReadAgain() throws IOException {
        ClipDigests.reading(folder).of(clip, bytes("c"));
        Files.writeString(clip.file(), "abb");
        assertNotEquals(OF_ABC, ClipDigests.trusting(folder).of(clip, bytes("c")));
    }

    @Test
    void aClipThatIsGoneIsKnownToWhoTrusts() throws IOException {
        ClipDigests.reading(folder).of(clip, bytes("c"));
        ClipDigests.reading(folder).nominalFps(clip, () -> 120);
        Files.delete(clip.file());
        assertEquals(OF_ABC, ClipDigests.trusting(folder).of(clip, bytes("c")));
        assertEquals(120, ClipDigests.trusting(folder).nominalFps(clip, () -> {
            throw new IllegalStateException("must not be read");
        }));
        assertThrows(
                NoSuchFileException.class, () -> ClipDigests.reading(folder).of(clip, bytes("c")));
        assertThrows(NoSuchFileException.class, () -> ClipDigests.unremembered().of(clip, bytes("c")));
    }

    @Test
    void aDamagedMemoryIsAsGoodAsNone() throws IOException {
        ClipDigests.reading(folder).of(clip, bytes("c"));
        Files.writeString(folder.resolve("work/a.known"), "{\"layout\":");
        assertEquals(OF_ABC, ClipDigests.trusting(folder).of(clip, bytes("c")));
    }
}
