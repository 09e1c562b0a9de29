package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Outside check: SHA-256 of "abc" and of nothing are those of FIPS 180-4, appendix examples (MEM-H). */
class RememberedDigestsTest {
    private static final String ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    private static final String NOTHING = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

    @TempDir
    private Path folder;

    private Path clip(String text) throws IOException {
        return Files.writeString(folder.resolve("a.mp4"), text);
    }

    private Path stored() {
        return folder.resolve("work").resolve(RememberedDigests.FILE_NAME);
    }

    /** An hour from now, when what is written now has been left alone. */
    private RememberedDigests later() {
        return new RememberedDigests(folder, Clock.fixed(Instant.now().plus(Duration.ofHours(1)), ZoneOffset.UTC));
    }

    private static void assumeTimesOfChange() {
        assumeTrue(
                Path.of("").getFileSystem().supportedFileAttributeViews().contains("unix"),
                "this system has no times of change");
    }

    /** A digest in the file that is not the content's shows that the content was not read. */
    private void forge() throws IOException {
        String json = Files.readString(stored());
        Files.writeString(stored(), json.replace(ABC, NOTHING));
    }

    @Test
    void givesTheDigestOfTheContent() throws IOException {
        assertEquals(ABC, new RememberedDigests(folder).of(clip("abc")));
        assertEquals(NOTHING, new RememberedDigests(folder).of(clip("")));
    }

    @Test
    void aLaterStartDoesNotReadAFileThatIsTheSame() throws IOException {
        assumeTimesOfChange();
        RememberedDigests first = later();
        first.of(clip("abc"));
        first.store();
        forge();

        assertEquals(NOTHING, later().of(folder.resolve("a.mp4")));
    }

    @Test
    void storingWhatIsStoredWritesNothing() throws IOException {
        assumeTimesOfChange();
        RememberedDigests first = later();
        first.of(clip("abc"));
        first.store();
        FileTime longAgo = FileTime.from(Instant.EPOCH);
        Files.setLastModifiedTime(stored(), longAgo);

        RememberedDigests second = later();
        second.of(folder.resolve("a.mp4"));
        second.store();

        assertEquals(longAgo, Files.getLastModifiedTime(stored()));
    }

    /** Same size, and the time of modification put back, as copying programs do: the time of change tells. */
    @Test
    void aChangedFileIsReadEvenWhenItsTimeOfModificationIsKept() throws IOException {
        RememberedDigests first = later();
        Path clip = clip("abc");
        FileTime modified = Files.getLastModifiedTime(clip);
        first.of(clip);
        first.store();

        Files.writeString(clip, "abd");
        Files.setLastModifiedTime(clip, modified);

        assertNotEquals(ABC, later().of(clip));
    }

    @Test
    void anotherFileInItsPlaceIsReadEvenWithTheSameTimes() throws IOException {
        RememberedDigests first = later();
        Path clip = clip("abc");
        first.of(clip);
        first.store();
        Path other = Files.writeString(folder.resolve("b.mp4"), "abd");
        Files.setLastModifiedTime(other, Files.getLastModifiedTime(clip));
        Files.move(other, clip, StandardCopyOption.REPLACE_EXISTING);

        assertNotEquals(ABC, later().of(clip));
    }

    /** A file that is being copied while the run begins could change within one tick of the clock. */
    @Test
    void aFileThatWasTouchedJustNowIsNotRemembered() throws IOException {
        RememberedDigests now = new RememberedDigests(folder);
        now.of(clip("abc"));
        now.store();

        assertFalse(Files.exists(stored()));
    }

    @Test
    void aClockThatWasSetBackRemembersNothing() throws IOException {
        RememberedDigests past = new RememberedDigests(folder, Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
        past.of(clip("abc"));
        past.store();

        assertFalse(Files.exists(stored()));
    }

    @Test
    void aDamagedFileOfDigestsReadsAsNone() throws IOException {
        RememberedDigests first = later();
        first.of(clip("abc"));
        first.store();
        Files.createDirectories(stored().getParent());
        Files.writeString(stored(), "{\"files\": [{\"path\": ");

        assertEquals(ABC, later().of(folder.resolve("a.mp4")));
    }

    @Test
    void forgetsFilesThatNobodyAskedFor() throws IOException {
        assumeTimesOfChange();
        RememberedDigests first = later();
        first.of(clip("abc"));
        first.of(Files.writeString(folder.resolve("gone.mp4"), ""));
        first.store();

        RememberedDigests second = later();
        second.of(folder.resolve("a.mp4"));
        second.store();

        assertFalse(Files.readString(stored()).contains("gone.mp4"));
    }
}
