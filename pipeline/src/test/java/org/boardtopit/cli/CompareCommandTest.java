package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CompareCommandTest {
    @TempDir
    private Path folder;

    private CommandLineRun program;

    @BeforeEach
    void results() {
        program = new CommandLineRun(folder);
        program.file("clips/IMG_0412.mp4", "a");
        program.file("clips/IMG_0431.mp4", "b");
        program.file("clips/IMG_0500.mp4", "c");
        program.file("attempts.csv", "clip,consent\nIMG_0412.mp4,yes\nIMG_0431.mp4,yes\nIMG_0500.mp4,no\n");
        program.file("meet.yaml", "attempts: attempts.csv\n");
        assertEquals(0, program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@out", "--quiet"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "IMG_0413 IMG_0431 --out @out | 2 | did you mean 'IMG_0412'?",
                "@out/IMG_0412 jump --out @out | 2 | these results have no clip 'jump'; they have IMG_0412, IMG_0431, IMG_0500",
                "IMG_0412 IMG_0431 | 2 | Name their folder with --out, or write FOLDER/IMG_0412",
                "IMG_0412 IMG_0412.mp4 --out @out | 2 | not compared with itself",
                "@clips/IMG_0412.mp4 IMG_0431 --out @out | 2 | it is not known how these results were made",
                "@nowhere/IMG_0412 IMG_0431 --out @out | 2 | there is no such folder",
                "IMG_0412 IMG_0431 --out @out --slow 0 | 2 | --slow must be from 1 to 20, was 0",
                "IMG_0412 IMG_0500 --out @out | 1 | IMG_0500.mp4 is withheld",
            })
    void saysWhatIsWrongWithTheTwo(String words, int code, String message) {
        assertEquals(code, program.run(("compare " + words).split(" ")), program.err());
        assertTrue(program.err().contains(message), program.err());
    }

    /** The scripted measurer keeps no landmarks. */
    @ParameterizedTest
    @CsvSource({"@out/IMG_0412", "@out/overlays/IMG_0412.mp4", "@out/work/IMG_0412.landmarks"})
    void findsAClipByWhateverIsCalledAfterItInTheResults(String word) {
        assertEquals(1, program.run("compare", word, "@out/img_0431"), program.err());
        assertTrue(program.err().contains("IMG_0412.mp4: not measured, or the clip"), program.err());
        assertTrue(program.err().contains("start process once more"), program.err());
    }

    @Test
    void aClipThatWasTakenAwayIsNamed() throws Exception {
        Files.delete(program.path("clips/IMG_0431.mp4"));
        assertEquals(1, program.run("compare", "IMG_0431", "IMG_0412", "--out", "@out"));
        assertTrue(program.err().contains("the clip is no longer there"), program.err());
    }
}
