package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boardtopit.clips.Effort;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.report.tables.CsvwValidator;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.RunInputs;
import org.boardtopit.run.RunLock;
import org.boardtopit.run.ScriptedMeasurer;
import org.boardtopit.run.workers.SmallDisk;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProcessCommandTest {
    @TempDir
    private Path folder;

    private CommandLineRun program;

    @BeforeEach
    void twoClips() {
        program = new CommandLineRun(folder);
        program.file("clips/a.mp4", "a");
        program.file("clips/b.mp4", "b");
    }

    @Test
    void measuresABareFolder() throws IOException {
        int code = program.run("process", "@clips", "--out", "@results");

        assertEquals(0, code, program.err());
        assertEquals(List.of("a.mp4", "b.mp4"), program.measurer.opened());
        assertEquals(3, Files.readAllLines(program.path("results/attempts.csv")).size());
        assertEquals("", program.err());
        assertTrue(program.out().contains("[2/2] b.mp4: measured in "), program.out());
        assertTrue(program.out().contains("Measured 2 of 2 clips in "), program.out());
        assertTrue(program.out().contains(program.path("results/clips.csv").toString()), program.out());
        assertTrue(program.out().contains(program.path("results/overlays").toString()), program.out());
        assertTrue(program.closed(), "the networks are closed at the end");
    }

    @Test
    void keepsWhatItWasToldForTheCommandsThatGoOnFromTheResults() throws Exception {
        program.file("clips/note.txt", "no clip");
        program.file("meet.yaml", "settings: {effort: quick}\n");

        program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@results", "--no-overlay");

        RunInputs kept = RunInputs.of(program.path("results"));
        assertEquals(List.of(program.path("clips/a.mp4"), program.path("clips/b.mp4")), kept.clips());
        assertEquals(program.path("meet.yaml"), kept.meet().orElseThrow());
        assertEquals(Effort.QUICK, kept.settings().effort());
        assertEquals(program.path("clips/note.txt"), kept.skipped().get(0).file());
        assertFalse(kept.overlay());
    }

    @ParameterizedTest
    @CsvSource({"'',','", "'tables: {decimal: \",\"}\n',;"})
    void describesItsTablesInTheFormatOfTheSheet(String tables, String separator) throws IOException {
        program.file("meet.yaml", tables);
        program.file("clips/note.txt", "no clip");
        program.measurer.on("b.mp4", (clip, listener) -> {
            throw new ClipNotMeasuredException("subject", "nobody; runs, through", null);
        });

        program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@results");

        JsonNode described =
                new ObjectMapper().readTree(program.path("results/tables.json").toFile());
        assertEquals(separator, described.at("/dialect/delimiter").asText());
        assertEquals(List.of(), CsvwValidator.problems(program.path("results")));
    }

    @Test
    void aClipThatCannotBeMeasuredIsALineOfErrorAndCodeOne() {
        program.measurer.on("a.mp4", (clip, listener) -> {
            throw new ClipNotMeasuredException("subject", "nobody runs through the picture", null);
        });

        int code = program.run("process", "@clips", "--out", "@results");

        assertEquals(1, code);
        assertEquals("error: a.mp4: not measured (subject): nobody runs through the picture\n", program.err());
        assertTrue(program.out().contains("Measured 1 of 2 clips"), program.out());
        assertTrue(program.out().contains("1 not measured; clips.csv says which and why"), program.out());
    }

    @Test
    void aBugOnOneClipIsCodeThreeAndTheOtherClipIsMeasured() {
        program.measurer.on("a.mp4", (clip, listener) -> {
            throw new OutOfMemoryError("Java heap space");
        });

        int code = program.run("process", "@clips", "--out", "@results");

        assertEquals(3, code);
        assertEquals(1, program.err().lines().count(), program.err());
        assertTrue(program.err().startsWith("error: a.mp4: not measured (start): a fault of the program"));
        assertTrue(program.out().contains("b.mp4: measured"), program.out());
        assertTrue(Files.exists(program.path("results/run.log")));
    }

    @Test
    void aFolderBelowAFileIsRefusedBeforeTheFirstClip() {
        program.file("notes", "a file");

        int code = program.run("process", "@clips", "--out", "@notes/results");

        assertEquals(2, code);
        assertEquals(1, program.err().lines().count(), program.err());
        assertTrue(program.err().contains("nothing can be written there"), program.err());
        assertEquals(List.of(), program.measurer.opened());
    }

    @Test
    void aDiskThatCanOnlyBeReadIsRefusedInOneLine() throws Exception {
        try (SmallDisk disk = SmallDisk.mount(program.path("disk"), 1 << 20)) {
            disk.lock();

            int code = program.run("process", "@clips", "--out", "@disk/results");

            assertEquals(2, code);
            assertEquals(1, program.err().lines().count(), program.err());
            assertTrue(program.err().contains("nothing can be written there"), program.err());
            assertEquals(List.of(), program.measurer.opened());
        }
    }

    @Test
    void aWithheldClipIsNoFailure() {
        program.file("meet.yaml", "attempts: attempts.csv\n");
        program.file("attempts.csv", "clip,consent\na.mp4,no\nb.mp4,yes\n");

        int code = program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@results");

        assertEquals(0, code, program.err());
        assertEquals(List.of("b.mp4"), program.measurer.opened());
        assertTrue(program.out().contains("[1/2] a.mp4: withheld: "), program.out());
    }

    @ParameterizedTest
    @CsvSource({"'',NORMAL,", "effort: quick,QUICK,", "effort: quick,THOROUGH,thorough"})
    void theEffortIsTheSheetsUnlessTheCommandLineSaysAnother(String setting, Effort expected, String option)
            throws IOException {
        program.file("meet.yaml", setting.isEmpty() ? "" : "settings: {" + setting + "}\n");
        List<String> line = new ArrayList<>(List.of("process", "@clips", "--meet", "@meet.yaml", "--out", "@results"));
        if (option != null) {
            line.addAll(List.of("--effort", option));
        }

        assertEquals(0, program.run(line.toArray(String[]::new)), program.err());

        assertEquals(expected, program.setup().settings().effort());
        JsonNode run =
                new ObjectMapper().readTree(program.path("results/run.json").toFile());
        assertEquals(expected.label(), run.get("settings").get("effort").asText());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "process @clips | --out",
                "process --out @results | CLIPS",
                "process @none --out @results | there is no such file or folder",
                "process @empty --out @results | there are no clips here",
                "process @clips --out @clips | must go to a folder of its own",
                "process @clips --out @clips/a.mp4 | this is a file",
                "process @clips --out @results --meet @bad.yaml | line 1, column 1",
                "process @clips --out @results --network no/such | --network",
                "process @clips --out @results --network missing | there is no network missing",
                "process @clips --out @results --networks @none | there is no such folder of networks",
                "process @clips --out @results --threads 0 | --threads must be from 1 to 256",
                "process @clips --out @results --threads two | two",
                "process @clips --out @results --workers 0 | --workers must be from 1 to 64, was 0",
                "process @clips --out @results --workers 65 | --workers must be from 1 to 64, was 65",
                "process @clips --out @results --effort huge | it must be one of quick, normal, thorough, was 'huge'",
                "process @clips --out @results --quiet --verbose | mutually exclusive",
                "process @clips --out @results --colour | --colour",
                "measure @clips | measure",
                "'' | a command is missing",
            })
    void whatTheUserCanPutRightIsOneLineAndCodeTwo(String line, String expected) throws IOException {
        Files.createDirectories(program.path("empty"));
        program.file("bad.yaml", "competitoin: Open Meeting\n");

        int code = program.run(line.isEmpty() ? new String[0] : line.split(" ", -1));

        assertEquals(2, code, program.err());
        assertEquals(1, program.err().lines().count(), program.err());
        assertTrue(program.err().startsWith("error: "), program.err());
        assertTrue(program.err().contains(expected), program.err());
        assertEquals(List.of(), program.measurer.opened());
        assertNull(program.setup());
    }

    @Test
    void anUnfitNetworkStopsTheRunBeforeTheFirstClip() {
        program.with(setup -> {
            throw new NetworkUnfitException("network full is not fit to measure on this machine");
        });

        assertEquals(2, program.run("process", "@clips", "--out", "@results"));
        assertEquals("error: network full is not fit to measure on this machine\n", program.err());
    }

    @Test
    void aBugBeforeTheFirstClipIsCodeThreeWithItsTrace() {
        program.with(setup -> {
            throw new IllegalStateException("wired wrongly");
        });

        assertEquals(3, program.run("process", "@clips", "--out", "@results"));
        assertTrue(program.err().startsWith("error: a fault of the program"), program.err());
        assertTrue(program.err().contains("IllegalStateException: wired wrongly"), program.err());
    }

    @Test
    void aMissingNativeLibraryIsCodeThree() {
        program.with(setup -> {
            throw new UnsatisfiedLinkError("no such library");
        });

        assertEquals(3, program.run("process", "@clips", "--out", "@results"));
        assertTrue(program.err().contains("UnsatisfiedLinkError: no such library"), program.err());
    }

    @Test
    void tablesThatCannotBeWrittenInTheEndAreCodeTwo() throws IOException {
        Files.createDirectories(program.path("results/phases.csv/in the way"));

        assertEquals(2, program.run("process", "@clips", "--out", "@results"));
        assertTrue(program.err().contains("warning: the tables cannot be written now"), program.err());
        assertTrue(program.err().lines().reduce("", (a, b) -> b).startsWith("error: "), program.err());
    }

    @Test
    void theCommandLineTakesPrecedenceOverTheSheet() {
        program.network("tiny");
        program.file("meet.yaml", "settings:\n  network: full\n  threads: 3\n");

        program.run(
                "process",
                "@clips",
                "--meet",
                "@meet.yaml",
                "--out",
                "@results",
                "--network",
                "tiny",
                "--networks",
                "@networks",
                "--threads",
                "2",
                "--no-overlay");

        assertEquals("tiny", program.setup().settings().network());
        assertEquals(2, program.setup().settings().threads());
        assertFalse(program.setup().overlay());
        assertFalse(program.out().contains("Overlays:"), program.out());
    }

    @Test
    void theSheetTakesPrecedenceOverTheDefaults() {
        program.file("meet.yaml", "settings:\n  threads: 3\n");

        program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@results");

        assertEquals("full", program.setup().settings().network());
        assertEquals(3, program.setup().settings().threads());
        assertTrue(program.setup().overlay());
    }

    @Test
    void threadsAreChosenWhenNothingIsSaid() {
        program.run("process", "@clips", "--out", "@results");

        int processors = Runtime.getRuntime().availableProcessors();
        assertEquals(Math.min(8, processors), program.setup().settings().threads());
    }

    @Test
    void recordsTheVersionsTheNetworksAndTheSettings() throws IOException {
        program.run("process", "@clips", "--out", "@results", "--threads", "2");

        JsonNode json =
                new ObjectMapper().readTree(program.path("results/run.json").toFile());
        assertTrue(json.get("versions").get("boardtopit").asText().matches("\\d+\\.\\d+\\.\\d+"), json.toString());
        assertEquals("fake engine 1", json.get("versions").get("network_engine").asText());
        assertEquals(64, json.get("hashes").get("full").asText().length());
        assertEquals(64, json.get("hashes").get("detector").asText().length());
        assertEquals("full", json.get("settings").get("network").asText());
        assertEquals(2, json.get("settings").get("threads").asInt());
        assertTrue(json.get("settings").get("overlay").asBoolean());
    }

    @Test
    void quietSaysNothingButErrors() {
        program.file("clips/notes.txt", "x");
        program.measurer.on("a.mp4", (clip, listener) -> {
            throw new ClipNotMeasuredException("video", "the file is cut off", null);
        });

        program.onTerminal().run("process", "@clips", "--out", "@results", "--quiet");

        assertEquals("", program.out());
        assertEquals("error: a.mp4: not measured (video): the file is cut off\n", program.err());
    }

    @Test
    void verboseSaysWarningsSkippedFilesAndWhereTheTimeWent() {
        program.file("clips/notes.txt", "x");
        program.measurer.on("a.mp4", (clip, listener) -> {
            listener.at("survey", 0);
            return ScriptedMeasurer.result(clip, List.of("the pit is out of view"));
        });

        program.run("process", "@clips", "--out", "@results", "--verbose");

        assertTrue(program.out().contains("notes.txt: not a video"), program.out());
        assertTrue(program.out().contains("    the pit is out of view\n"), program.out());
        assertTrue(program.out().contains("  survey: 0.0 s\n"), program.out());
    }

    @Test
    void showsABarOnATerminalOnly() {
        program.onTerminal().run("process", "@clips", "--out", "@results");
        assertTrue(program.out().contains("\r|"), program.out());

        CommandLineRun plain = new CommandLineRun(folder);
        plain.run("process", "@clips", "--out", "@results");
        assertFalse(plain.out().contains("\r"), plain.out());
    }

    @Test
    void warnsOfSheetsThatDoNotFitTheClips() {
        program.file("meet.yaml", "attempts: attempts.csv\n");
        program.file("attempts.csv", "clip\na.mp4\nb.mp4\nc.mp4\n");

        assertEquals(0, program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@results"));
        assertTrue(program.err().startsWith("warning: "), program.err());
        assertTrue(program.err().contains("there is no clip 'c.mp4'"), program.err());
    }

    @Test
    void aSecondStartKeepsWhatIsDoneAndOpensNoNetwork() throws IOException {
        program.measurer.on("b.mp4", (clip, listener) -> {
            throw new ClipNotMeasuredException("video", "the file is cut off", null);
        });
        assertEquals(1, program.run("process", "@clips", "--out", "@results", "--no-overlay"));
        String clips = Files.readString(program.path("results/clips.csv"));

        CommandLineRun second = new CommandLineRun(folder);
        assertEquals(1, second.run("process", "@clips", "--out", "@results", "--no-overlay"), second.err());

        assertNull(second.setup(), "nothing was opened");
        assertEquals(List.of(), second.measurer.opened());
        assertEquals(clips, Files.readString(program.path("results/clips.csv")));
        assertTrue(second.out().contains("2 of 2 clips are done by an earlier start and kept"), second.out());
    }

    @Test
    void againMeasuresAllAnew() {
        program.run("process", "@clips", "--out", "@results", "--no-overlay");
        program.run("process", "@clips", "--out", "@results", "--no-overlay", "--again");

        assertEquals(List.of("a.mp4", "b.mp4", "a.mp4", "b.mp4"), program.measurer.opened());
    }

    @Test
    void aClipThatChangedOrLacksItsPicturesIsMeasuredAgain() {
        program.run("process", "@clips", "--out", "@results");
        program.file("results/overlays/a.mp4", "drawn");
        program.file("results/overlays/b.mp4", "drawn");
        program.file("results/stills/a-strip.jpg", "drawn");
        program.file("results/stills/b-strip.jpg", "drawn");
        program.file("clips/b.mp4", "another take");
        program.run("process", "@clips", "--out", "@results");
        assertEquals(List.of("a.mp4", "b.mp4", "b.mp4"), program.measurer.opened());

        program.path("results/overlays/a.mp4").toFile().delete();
        program.run("process", "@clips", "--out", "@results");
        assertEquals(List.of("a.mp4", "b.mp4", "b.mp4", "a.mp4"), program.measurer.opened());

        program.file("results/overlays/a.mp4", "drawn");
        program.path("results/stills/b-strip.jpg").toFile().delete();
        program.run("process", "@clips", "--out", "@results");
        assertEquals(List.of("a.mp4", "b.mp4", "b.mp4", "a.mp4", "b.mp4"), program.measurer.opened());
    }

    @Test
    void aSecondRunOnTheSameFolderIsOneLineAndCodeTwo() throws Exception {
        Files.createDirectories(program.path("results"));
        try (RunLock lock = RunLock.take(program.path("results"))) {
            assertNotNull(lock.results());
            assertEquals(2, program.run("process", "@clips", "--out", "@results"));
        }

        assertEquals(1, program.err().lines().count(), program.err());
        assertTrue(program.err().contains("another run is writing into this folder (process "), program.err());
        assertEquals(List.of(), program.measurer.opened());
        assertEquals(0, program.run("process", "@clips", "--out", "@results"), "free again");
    }
}
