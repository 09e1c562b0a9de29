package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Effort;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.clips.SkippedFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RunInputsTest {
    @TempDir
    private Path out;

    private static RunInputs inputs(Path... clips) {
        return new RunInputs(
                List.of(clips),
                List.of(new SkippedFile(Path.of("notes.txt"), "not a video by the ending of its name")),
                Optional.of(Path.of("sheets", "..", "meet.yaml")),
                Optional.empty(),
                Optional.empty(),
                new RunSettings("full", 2, 0, Effort.THOROUGH),
                true);
    }

    @Test
    void comeBackAsTheyWereGiven() throws Exception {
        RunInputs told = inputs(out.resolve("Sprünge 😀.mp4"), out.resolve("a b.mov"));
        told.write(out);
        assertEquals(told, RunInputs.of(out));
        assertEquals(told.clips(), RunInputs.of(out).folder().clips());
    }

    @Test
    void pathsHoldFromAnyFolder() {
        RunInputs told = inputs(Path.of("clips", "a.mp4"));
        assertTrue(told.clips().get(0).isAbsolute());
        assertEquals(Path.of("meet.yaml").toAbsolutePath(), told.meet().orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "null",
                "{\"layout\":\"boardtopit inputs 0\",\"inputs\":null}",
                "{\"layout\":\"boardtopit inputs 1\",\"inputs\":null}",
                "{\"layout\":\"boardtopit inp"
            })
    void aFileThatIsNotOursIsAsGoodAsNone(String text) throws IOException {
        Path file = out.resolve("work/inputs.json");
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
        assertEquals(Optional.empty(), RunInputs.find(out));
    }

    @Test
    void withoutThemItIsSaidWhatToDo() {
        InputException none = assertThrows(InputException.class, () -> RunInputs.of(out));
        assertTrue(none.getMessage().contains("start process once more"), none.getMessage());
        InputException missing = assertThrows(InputException.class, () -> RunInputs.of(out.resolve("no")));
        assertTrue(missing.getMessage().contains("no such folder"), missing.getMessage());
    }
}
