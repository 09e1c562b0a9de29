package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClipFolderTest {
    @TempDir
    Path temp;

    private Path folder;
    private Path out;

    @BeforeEach
    void makesAFolderOfClips() throws IOException {
        folder = Files.createDirectory(temp.resolve("clips"));
        out = temp.resolve("out");
    }

    private Path touch(String name) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, "");
    }

    private ClipFolder list(Path... inputs) throws InputException {
        return ClipFolder.list(List.of(inputs), out, Set.of());
    }

    private static List<String> names(List<Path> files) {
        return files.stream().map(f -> f.getFileName().toString()).toList();
    }

    @ParameterizedTest
    @CsvSource({"mp4", "MOV", "mkv", "avi", "MTS", "m2ts", "m4v", "webm", "ts", "3gp"})
    void takesVideosByTheEndingOfTheirNames(String extension) throws Exception {
        touch("a b." + extension);
        assertEquals(List.of("a b." + extension), names(list(folder).clips()));
    }

    @Test
    void sortsAFolderByNameWhateverTheCase() throws Exception {
        touch("b.mp4");
        touch("C.mp4");
        touch("a.mp4");
        touch("\u00FC.mp4");
        assertEquals(
                List.of("a.mp4", "b.mp4", "C.mp4", "\u00FC.mp4"),
                names(list(folder).clips()));
    }

    @Test
    void keepsTheOrderOfTheCommandLine() throws Exception {
        Path b = touch("b.mp4");
        Path a = touch("a.mp4");
        assertEquals(List.of("b.mp4", "a.mp4"), names(list(b, a).clips()));
    }

    @Test
    void takesAFileOnceHoweverOftenItIsNamed() throws Exception {
        Path a = touch("a.mp4");
        touch("b.mp4");
        assertEquals(
                List.of("a.mp4", "b.mp4"),
                names(list(a, folder, folder.resolve("../clips/a.mp4")).clips()));
    }

    @Test
    void saysWhyOtherFilesAreLeftOut() throws Exception {
        touch("a.mp4");
        touch("notes.txt");
        touch("._a.mp4");
        touch("mp4");
        touch("day2/b.mp4");
        assertEquals(
                List.of(
                        new SkippedFile(folder.resolve("._a.mp4"), "a hidden file"),
                        new SkippedFile(
                                folder.resolve("day2"), "a folder; name it on the command line to take its clips"),
                        new SkippedFile(folder.resolve("mp4"), "not a video by the ending of its name"),
                        new SkippedFile(folder.resolve("notes.txt"), "not a video by the ending of its name")),
                list(folder).skipped());
    }

    @Test
    void passesOverTheSheetsWithoutAWord() throws Exception {
        touch("a.mp4");
        Path sheet = touch("meet.yaml").toAbsolutePath().normalize();
        assertEquals(
                List.of(), ClipFolder.list(List.of(folder), out, Set.of(sheet)).skipped());
    }

    @Test
    void leavesTheOutputFolderOut() throws Exception {
        touch("a.mp4");
        Path overlay = touch("out/overlays/a.mp4");
        out = folder.resolve("out");
        ClipFolder found = list(folder, overlay);
        assertEquals(List.of(folder.resolve("a.mp4")), found.clips());
        assertEquals(List.of(new SkippedFile(overlay, "it lies in the output folder")), found.skipped());
    }

    @Test
    void refusesToWriteAmongTheClips() throws Exception {
        touch("a.mp4");
        out = temp.resolve("clips/../clips");
        InputException e = assertThrows(InputException.class, () -> list(folder));
        assertEquals(
                folder + ": the output must go to a folder of its own, not among the clips and sheets", e.getMessage());
    }

    @Test
    void refusesToWriteOverTheSheet() throws Exception {
        Path clip = touch("a.mp4");
        Path sheet = Files.writeString(Files.createDirectory(out).resolve("attempts.csv"), "clip\n");
        InputException e = assertThrows(
                InputException.class,
                () -> ClipFolder.list(
                        List.of(clip), out, Set.of(sheet.toAbsolutePath().normalize())));
        assertEquals(
                out + ": the output must go to a folder of its own, not among the clips and sheets", e.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"day1/a.mp4,day2/a.mp4", "day1/a.mp4,day2/A.MP4"})
    void refusesTwoClipsOfOneName(String one, String other) throws Exception {
        Path first = touch(one);
        Path second = touch(other);
        InputException e = assertThrows(InputException.class, () -> list(first, second));
        assertEquals(second + ": a clip of the same name was given: " + first + "; rename one of them", e.getMessage());
    }

    @Test
    void saysThatThereAreNoClips() throws Exception {
        touch("notes.txt");
        InputException e = assertThrows(InputException.class, () -> list(folder));
        assertEquals(
                folder
                        + ": there are no clips here; clips are files ending in mp4, mov, mkv, avi, mts, m2ts, m4v, webm,"
                        + " ts, 3gp",
                e.getMessage());
    }

    @Test
    void saysThatAFileIsNotThere() {
        Path missing = folder.resolve("a.mp4");
        InputException e = assertThrows(InputException.class, () -> list(missing));
        assertEquals(missing + ": there is no such file or folder", e.getMessage());
    }
}
