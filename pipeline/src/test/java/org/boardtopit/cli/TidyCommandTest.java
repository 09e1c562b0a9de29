package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.boardtopit.report.tables.CsvwValidator;
import org.boardtopit.run.RunLock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TidyCommandTest {
    private static final String ATTEMPTS = """
            clip,competition,bib,athlete,hop_m,warnings
            a.mp4,Open,214,Corin Vask,5.31,"one, two; ""three"" four"
            b.mp4,Open,131,Imre-Lise Halloran,4.9,
            c.mp4,Open,214,Corin Vask,5.2,
            d.mp4,Open,,,5.0,
            """.replace("\n", "\r\n");

    @TempDir
    private Path folder;

    private CommandLineRun program;

    /** Results as a run leaves them, with a last day. */
    private void results(String retention) throws IOException {
        program = new CommandLineRun(folder);
        program.file("clips/a.mp4", "a");
        program.file("meet.yaml", retention.isEmpty() ? "" : "retention: " + retention + "\n");
        assertEquals(0, program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@out", "--quiet"));
        program.file("out/attempts.csv", ATTEMPTS);
        program.file("out/work/a.landmarks", "x");
        program.file("out/work/deep/b.part", "x");
        program.file("out/overlays/a.mp4", "x");
        program.file("out/stills/a-board-touchdown.jpg", "x");
        program.file("out/cameras/stand.jpg", "x");
        program.file("out/notes.txt", "the coach's own");
    }

    private Map<String, String> content() throws IOException {
        Map<String, String> content = new TreeMap<>();
        try (Stream<Path> all = Files.walk(program.path("out"))) {
            for (Path file : all.filter(f -> Files.isRegularFile(f, LinkOption.NOFOLLOW_LINKS))
                    .toList()) {
                content.put(
                        program.path("out").relativize(file).toString(),
                        Files.readString(file, StandardCharsets.UTF_8));
            }
        }
        return content;
    }

    private int tidy(String... options) {
        String[] words =
                Stream.concat(Stream.of("tidy", "@out"), Stream.of(options)).toArray(String[]::new);
        return program.run(words);
    }

    @Test
    void removesPicturesLandmarksAndNamesAfterTheDate() throws IOException {
        results("2020-01-01");

        assertEquals(0, tidy(), program.err());

        for (String gone : List.of("overlays", "stills", "cameras")) {
            assertFalse(Files.exists(program.path("out/" + gone)), gone);
        }
        try (Stream<Path> work = Files.list(program.path("out/work"))) {
            assertEquals(List.of(program.path("out/work/.lock")), work.toList());
        }
        assertEquals("""
                clip,competition,bib,athlete,hop_m,warnings
                a.mp4,Open,,athlete 1,5.31,"one, two; ""three"" four"
                b.mp4,Open,,athlete 2,4.9,
                c.mp4,Open,,athlete 1,5.2,
                d.mp4,Open,,,5.0,
                """.replace("\n", "\r\n"), content().get("attempts.csv"));
        assertEquals("the coach's own", content().get("notes.txt"));
        assertTrue(content().containsKey("contacts.csv"));
        assertFalse(new ObjectMapper()
                .readTree(content().get("run.json"))
                .path("tidied_on")
                .isMissingNode());
        // Of the pictures one is the page. Of the files three are left by the run: the clip's result, what is known of
        // its
        // bytes, and the inputs; the lock stays.
        assertEquals(
                "Pictures removed: 4\nFiles read from clips removed: 5\nRows with names or bibs that were cleared: 3\n",
                program.out());
    }

    @Test
    void doingItAgainFindsNothing() throws IOException {
        results("2020-01-01");
        tidy();
        Map<String, String> once = content();

        assertEquals(0, tidy());

        assertEquals(once, content());
        assertTrue(program.out().endsWith("Rows with names or bibs that were cleared: 0\n"), program.out());
    }

    @Test
    void refusesWhileARunWritesIntoTheFolder() throws Exception {
        results("2020-01-01");
        Map<String, String> before = content();

        RunLock run = RunLock.take(program.path("out"));
        try {
            assertEquals(2, tidy());
        } finally {
            run.close();
        }

        assertTrue(program.err().contains("another run is writing into this folder"), program.err());
        assertEquals(before, content());
        assertEquals(0, tidy(), program.err());
    }

    /** The same command a month later must not bring back what somebody had removed. */
    @Test
    void aTidiedFolderGetsNoPicturesAndNamesAgain() throws IOException {
        results("2020-01-01");
        tidy();
        Map<String, String> tidied = content();

        assertEquals(2, program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@out", "--quiet"));

        assertTrue(
                program.err()
                        .contains("out: pictures, landmarks and names were removed from these results on "
                                + LocalDate.now(ZoneId.systemDefault()) + " (boardtopit tidy) and would come back"),
                program.err());
        assertEquals(tidied, content());
        assertEquals(0, program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@other", "--quiet"));
    }

    @Test
    void aFolderThatWasTidiedHalfCountsAsTidied() throws Exception {
        results("2020-01-01");
        Path table = program.path("out/attempts.csv");
        Files.delete(table);
        Files.write(table, new byte[] {(byte) 0xff, (byte) 0xfe, 'x'}); // not UTF-8: it cannot be read, the rest could

        assertEquals(2, tidy());

        assertFalse(Files.exists(program.path("out/overlays")));
        assertEquals(2, program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@out", "--quiet"));
        assertTrue(program.err().contains("would come back"), program.err());
    }

    @ParameterizedTest
    @ValueSource(strings = {"2999-12-31", ""})
    void keepsEverythingUntilTheDate(String retention) throws IOException {
        results(retention);
        Map<String, String> before = content();

        assertEquals(0, tidy());

        assertEquals(before, content());
        assertTrue(program.out().contains("Nothing is removed; --now does it all the same."), program.out());
    }

    @Test
    void nowDoesItBeforeTheDate() throws IOException {
        results("2999-12-31");
        assertEquals(0, tidy("--now"));
        assertFalse(Files.exists(program.path("out/overlays")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"2020-01-01", "2999-12-31"})
    void aDryRunTellsAndChangesNothing(String retention) throws IOException {
        results(retention);
        Map<String, String> before = content();

        assertEquals(0, tidy("--dry-run", "--now"));

        assertEquals(before, content());
        assertTrue(program.out().contains("Pictures would be removed: 4\n"), program.out());
        assertTrue(program.out().contains("Rows with names or bibs that would be cleared: 3\n"), program.out());
    }

    @Test
    void followsNoLinkOutOfTheFolder() throws IOException {
        results("2020-01-01");
        Path outside = program.file("elsewhere/family.jpg", "keep").getParent();
        Files.createSymbolicLink(program.path("out/overlays/link"), outside);
        Files.delete(program.path("out/stills/a-board-touchdown.jpg"));
        Files.delete(program.path("out/stills"));
        Files.createSymbolicLink(program.path("out/stills"), outside);
        Path table = Files.move(program.path("out/attempts.csv"), program.path("elsewhere/attempts.csv"));
        Files.createSymbolicLink(program.path("out/attempts.csv"), table);

        assertEquals(0, tidy(), program.err());

        assertEquals("keep", Files.readString(outside.resolve("family.jpg")));
        assertEquals(ATTEMPTS, Files.readString(table));
        assertFalse(Files.exists(program.path("out/stills"), LinkOption.NOFOLLOW_LINKS));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "{}", "{\"versions\": {\"other\": \"1\"}}", "[1]", "not json", "{\"versions\": 3}"})
    void refusesAFolderThatIsNoOutput(String run) {
        program = new CommandLineRun(folder);
        program.file("out/overlays/holiday.mp4", "keep");
        if (!run.isEmpty()) {
            program.file("out/run.json", run);
        }

        assertEquals(2, tidy("--now"));

        assertTrue(program.err().contains("not a folder of results"), program.err());
        assertTrue(Files.exists(program.path("out/overlays/holiday.mp4")));
        assertEquals(2, program.run("tidy", "@nowhere"));
    }

    @Test
    void theTablesStayWhatTheirDescriptionSays() throws IOException {
        results("2020-01-01");
        program.file("clips/b.mp4", "b");
        program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@out", "--quiet");

        tidy();

        assertEquals(List.of(), CsvwValidator.problems(program.path("out")));
    }

    @Test
    void aRunWarnsOnceWhenTheDateHasPassed() {
        program = new CommandLineRun(folder);
        program.file("clips/a.mp4", "a");
        program.file("meet.yaml", "retention: 2020-01-01\n");

        program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@out");

        assertEquals(1, program.err().lines().count(), program.err());
        assertTrue(program.err().contains("the retention date 2020-01-01 of "), program.err());
    }

    @Test
    void theRunRecordsWhatItWasTold() throws IOException {
        results("2999-12-31");
        JsonNode settings =
                new ObjectMapper().readTree(content().get("run.json")).get("settings");
        assertEquals("assumed", settings.get("consent").asText());
        assertEquals("blur_others", settings.get("faces").asText());
        assertEquals("show", settings.get("names").asText());
        assertEquals("2999-12-31", settings.get("retention").asText());
    }
}
