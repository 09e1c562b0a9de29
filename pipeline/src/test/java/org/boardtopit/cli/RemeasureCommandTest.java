package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.boardtopit.run.RunInputs;
import org.boardtopit.run.RunLock;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two copies of the first sample clip, of which landmarks are kept; the engine of networks computes nothing. */
class RemeasureCommandTest {
    private static final String HEADER = "clip,contact,field,value,by,note\n";

    @TempDir
    private Path folder;

    private CommandLineRun program;
    private Path out;

    private KeptCompetition competition;

    @BeforeEach
    void layTwoClips() throws Exception {
        competition = KeptCompetition.in(folder);
        program = competition.program();
        out = competition.out();
    }

    private void remeasured(String... more) {
        List<String> words = new ArrayList<>(List.of("remeasure", "@results"));
        words.addAll(List.of(more));
        assertEquals(0, program.run(words.toArray(String[]::new)), program.err());
    }

    private List<String> cells(String table, String column) throws IOException {
        List<String> lines = Files.readAllLines(out.resolve(table));
        int index = List.of(lines.get(0).split(",", -1)).indexOf(column);
        return lines.stream().skip(1).map(line -> line.split(",", -1)[index]).toList();
    }

    private Map<Path, String> everything() throws IOException {
        Map<Path, String> contents = new TreeMap<>();
        try (Stream<Path> files = Files.walk(out)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                if (!file.endsWith(".lock")) {
                    contents.put(file, Files.getLastModifiedTime(file) + " " + Files.size(file));
                }
            }
        }
        return contents;
    }

    @Test
    void measuresFromWhatIsKeptAndAnotherTimeOnlyWhatChanged() throws Exception {
        remeasured();
        assertEquals(List.of("a.mp4", "b.mp4"), cells("attempts.csv", "clip"));
        assertTrue(program.out().contains("Measured 2 of 2 clips anew in "), program.out());
        FileTime stored = Files.getLastModifiedTime(out.resolve("work/b.result"));

        program.file("results/corrections.csv", HEADER + "a.mp4,hop_landing,touchdown_frame,130.5,Mara,shadow\n");
        remeasured();

        assertTrue(program.out().contains("Measured 1 of 2 clips anew in "), program.out());
        assertEquals(
                1,
                cells("contacts.csv", "corrected").stream()
                        .filter("yes"::equals)
                        .count());
        assertEquals(stored, Files.getLastModifiedTime(out.resolve("work/b.result")), "b is kept");
        JsonNode run = new ObjectMapper().readTree(out.resolve("run.json").toFile());
        assertEquals("Mara", run.at("/clips/0/corrections/0/by").asText());
        assertEquals("shadow", run.at("/clips/0/corrections/0/note").asText());
        assertTrue(run.at("/clips/1/corrections").isMissingNode());
        String page = Files.readString(out.resolve("index.html"));
        assertTrue(page.contains("130.5 (by Mara): shadow</li>"), "who and why");
    }

    @Test
    void aLineTakenAwayBringsBackWhatWasFound() throws Exception {
        remeasured();
        List<String> found = Files.readAllLines(out.resolve("contacts.csv"));
        program.file("results/corrections.csv", HEADER + "a.mp4,3,touchdown_frame,130.5,Mara,\n");
        remeasured();
        assertFalse(found.equals(Files.readAllLines(out.resolve("contacts.csv"))));
        program.file("results/corrections.csv", HEADER);
        remeasured();
        assertEquals(found, Files.readAllLines(out.resolve("contacts.csv")));
    }

    @Test
    void aRefusedCorrectionLeavesEverythingAsItWas() throws Exception {
        remeasured();
        program.file(
                "results/corrections.csv",
                HEADER + "b.mp4,3,touchdown_frame,130.5,Mara,\na.mp4,3,touchdown_frame,150,Mara,\n");
        Map<Path, String> before = everything();

        int code = program.run("remeasure", "@results");

        assertEquals(2, code);
        assertEquals(1, program.err().lines().count(), program.err());
        assertTrue(
                program.err()
                        .startsWith("error: " + out.resolve("corrections.csv")
                                + ", line 3, column value: the touchdown at frame 150"),
                program.err());
        assertEquals(before, everything());
    }

    @Test
    void theSheetCountsAsItIsNow() throws Exception {
        remeasured();
        competition.sheet("14.50");
        remeasured();
        assertEquals(List.of("14.50", "14.20"), cells("attempts.csv", "official_m"));
        assertTrue(program.out().contains("Measured 1 of 2 clips anew"), program.out());
    }

    @Test
    void aClipWhoseLandmarksAreMissingIsNamedAndTheRestGoesOn() throws Exception {
        Files.delete(out.resolve("work/a.landmarks"));
        assertEquals(1, program.run("remeasure", "@results"));
        assertTrue(
                program.err().contains("error: a.mp4: not measured (landmarks): what was read from a.mp4 is missing"));
        assertEquals(List.of("b.mp4"), cells("attempts.csv", "clip"));
        assertEquals(List.of("not_measured", "measured_with_warnings"), cells("clips.csv", "outcome"));
    }

    @Test
    void clipsThatAreGoneAreMeasuredFromTheirLandmarks() throws Exception {
        remeasured();
        Files.delete(program.path("clips/a.mp4"));
        program.file("results/corrections.csv", HEADER + "a.mp4,3,touchdown_frame,130.5,Mara,\n");
        remeasured();
        assertEquals(List.of("a.mp4", "b.mp4"), cells("attempts.csv", "clip"));
        assertTrue(cells("contacts.csv", "corrected").contains("yes"));
    }

    @Test
    void onlyTheOverlayOfTheCorrectedClipIsDrawnAnew() throws Exception {
        competition.inputs(true).write(out);
        remeasured();
        FileTime a = Files.getLastModifiedTime(out.resolve("overlays/a.mp4"));
        FileTime b = Files.getLastModifiedTime(out.resolve("overlays/b.mp4"));
        program.file("results/corrections.csv", HEADER + "a.mp4,3,touchdown_frame,130.5,Mara,\n");
        remeasured();
        assertFalse(a.equals(Files.getLastModifiedTime(out.resolve("overlays/a.mp4"))));
        assertEquals(b, Files.getLastModifiedTime(out.resolve("overlays/b.mp4")));

        FileTime drawn = Files.getLastModifiedTime(out.resolve("overlays/a.mp4"));
        Path elsewhere = Files.move(program.path("clips/a.mp4"), program.path("a.mp4"));
        program.file("results/corrections.csv", HEADER + "a.mp4,3,touchdown_frame,131,Mara,\n");
        remeasured();
        assertTrue(program.err().contains("a.mp4: its pictures could not be made anew, for the clip is not at "));
        assertEquals(drawn, Files.getLastModifiedTime(out.resolve("overlays/a.mp4")));

        Files.move(elsewhere, program.path("clips/a.mp4"));
        remeasured();
        assertFalse(drawn.equals(Files.getLastModifiedTime(out.resolve("overlays/a.mp4"))), "drawn when it is back");
    }

    @Test
    void waitsForNoOtherRun() throws Exception {
        try (RunLock lock = RunLock.take(out)) {
            assertTrue(lock.results() != null);
            assertEquals(2, program.run("remeasure", "@results"));
        }
        assertTrue(program.err().contains("another run is writing into this folder"), program.err());
    }

    @Test
    void aFolderThatIsNoneOfResultsIsRefusedAndStaysEmpty() throws Exception {
        Path empty = Files.createDirectories(program.path("empty"));
        assertEquals(2, program.run("remeasure", "@empty"));
        assertTrue(program.err().contains("it is not known how these results were made"), program.err());
        try (Stream<Path> files = Files.list(empty)) {
            assertEquals(0, files.count());
        }
    }

    @Test
    void correctionsNamedOnceAreRememberedByProcessToo() throws Exception {
        program.file("mara.csv", HEADER + "a.mp4,3,touchdown_frame,130.5,Mara,\n");
        remeasured("--corrections", "@mara.csv");
        assertEquals(program.path("mara.csv"), RunInputs.of(out).corrections().orElseThrow());
        List<String> corrected = Files.readAllLines(out.resolve("contacts.csv"));

        remeasured();
        assertEquals(corrected, Files.readAllLines(out.resolve("contacts.csv")));
        assertEquals(
                0,
                program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@results", "--no-overlay"),
                program.err());
        assertEquals(List.of(), program.measurer.opened(), "what was corrected holds for process");
        assertEquals(corrected, Files.readAllLines(out.resolve("contacts.csv")));

        Files.delete(program.path("mara.csv"));
        assertEquals(2, program.run("process", "@clips", "--meet", "@meet.yaml", "--out", "@results"));
        assertTrue(program.err().contains("the corrections that these results rest on are not there any more"));
    }

    @Test
    void aClipThatTheResultsHaveNotIsRefusedWithItsLine() {
        program.file("results/corrections.csv", HEADER + "c.mp4,3,touchdown_frame,130.5,Mara,\n");
        assertEquals(2, program.run("remeasure", "@results"));
        assertTrue(program.err().contains("line 2, column clip: there is no clip 'c.mp4' in these results"));
    }
}
