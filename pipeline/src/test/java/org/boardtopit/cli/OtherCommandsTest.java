package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.boardtopit.run.ClipNotMeasuredException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OtherCommandsTest {
    @TempDir
    private Path folder;

    private CommandLineRun program;

    @BeforeEach
    void begin() {
        program = new CommandLineRun(folder);
    }

    @Test
    void tellsItsVersion() {
        assertEquals(0, program.run("--version"));
        assertTrue(program.out().matches("(?s)Board to Pit \\d+\\.\\d+\\.\\d+\\R.*"), program.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"process", "check", "cameras", "networks", "bench", "accuracy"})
    void everyCommandHasHelpWithExamples(String command) {
        assertEquals(0, program.run("help", command));
        String asCommand = program.out();
        assertTrue(asCommand.contains("Usage: boardtopit " + command), asCommand);
        assertTrue(asCommand.contains("Examples:"), asCommand);
        assertTrue(asCommand.lines().allMatch(line -> line.length() <= 80), asCommand);

        CommandLineRun again = new CommandLineRun(folder);
        assertEquals(0, again.run(command, "--help"));
        assertEquals(asCommand, again.out());
    }

    @Test
    void listsTheNetworksOfTheProgramAndTheUser() {
        program.network("tiny");

        assertEquals(0, program.run("networks", "--networks", "@networks"));
        assertTrue(program.out().contains("detector (shipped, finds persons)"), program.out());
        assertTrue(program.out().contains("full (shipped, reads body points)"), program.out());
        assertTrue(program.out().contains("tiny (yours, reads body points)\n  One point\n"), program.out());
    }

    @Test
    void aNetworkThatComputesSomethingElseDoesNotPass() {
        assertEquals(1, program.run("networks", "--verify"));
        assertTrue(program.err().contains("error: network full "), program.err());
    }

    @Test
    void aNetworkWithoutReferencesIsSaidToHaveNone() {
        program.network("tiny");

        program.run("networks", "--verify", "--networks", "@networks");

        assertTrue(program.out().contains("One point\n  runs, but has no references to compare with\n"), program.out());
    }

    @Test
    void aNetworkWithAWrongCardIsAnErrorAndTheOthersAreListed() {
        program.network("tiny");
        program.file("networks/broken/card.json", "{}");

        assertEquals(1, program.run("networks", "--networks", "@networks"));
        assertTrue(program.out().contains("broken (yours, cannot be used)"), program.out());
        assertTrue(program.out().contains("tiny (yours"), program.out());
        assertEquals(1, program.err().lines().count(), program.err());
    }

    @Test
    void benchComparesAClipWithTheNetworkAlone() {
        program.network("tiny");
        program.file("a.mp4", "a");

        int code = program.run("bench", "@a.mp4", "--network", "tiny", "--networks", "@networks", "--threads", "2");

        assertEquals(0, code, program.err());
        assertEquals(List.of("a.mp4", "a.mp4"), program.measurer.opened());
        assertTrue(program.out().contains("Clip: a.mp4, 210 frames, 1280 x 720"), program.out());
        assertTrue(program.out().contains("Network tiny alone, 2 looks at each frame, 2 threads: "), program.out());
        assertTrue(
                program.out().matches("(?s).*As the first clip of a run: .*, ratio \\d+\\.\\d\\d\\R.*"), program.out());
        assertTrue(program.out().matches("(?s).*Ratio: \\d+\\.\\d\\d\\R.*"), program.out());
        assertTrue(program.out().contains("  survey  "), program.out());
        assertTrue(program.setup().overlay());
    }

    @Test
    void benchOfAClipThatCannotBeMeasuredIsCodeOne() {
        program.network("tiny");
        program.file("a.mp4", "a");
        program.measurer.on("a.mp4", (clip, listener) -> {
            throw new ClipNotMeasuredException("video", "the file is cut off", null);
        });

        assertEquals(1, program.run("bench", "@a.mp4", "--network", "tiny", "--networks", "@networks"));
        assertEquals("error: a.mp4: not measured (video): the file is cut off\n", program.err());
    }

    @Test
    void benchNeedsAClipWhenTheLauncherDidNotSayWhereTheSampleIs() {
        assertEquals(2, program.run("bench"));
        assertEquals("error: which clip? - see: boardtopit bench --help\n", program.err());
    }
}
