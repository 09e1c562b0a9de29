package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.TruthFiles;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A drawn jumper (SYN) with its truth, from landmarks to report: no network and no pictures. */
class AccuracyCommandTest {
    @TempDir
    private Path folder;

    private DrawnClip clip;
    private CommandLineRun program;

    @BeforeEach
    void drawAClip() throws IOException {
        draw(DrawnClip.Setup.ordinary(3).perfect().withStillCamera().atFps(60));
    }

    private void draw(DrawnClip.Setup setup) throws IOException {
        clip = new DrawnClip(setup);
        new TruthFiles(clip, folder.resolve("footage")).write("drawn");
        program = again();
    }

    private CommandLineRun again() {
        return new CommandLineRun(folder).with((one, listener) -> clip.landmarks());
    }

    private double number(String file, String name, String statistic) throws IOException {
        JsonNode figures =
                new ObjectMapper().readTree(folder.resolve(file).toFile()).get("figures");
        for (JsonNode figure : figures) {
            if (figure.get("clip").asText().equals("all")
                    && figure.get("name").asText().equals(name)
                    && figure.has(statistic)) {
                return figure.get(statistic).asDouble(Double.NaN);
            }
        }
        throw new AssertionError(name + " " + statistic);
    }

    @Test
    void findsExactLandmarksExactAndWhatIsMeasuredFromThemNearTheTruth() throws IOException {
        int code = program.run("accuracy", "@footage", "--out", "@results");

        assertEquals(0, code, program.err());
        assertEquals("", program.err());
        assertTrue(program.closed(), "the networks are closed at the end");
        assertFalse(program.setup().overlay());
        String numbers = "results/accuracy.json";
        assertEquals(1, number(numbers, "sequence with the right feet", "right"));
        assertEquals(0, number(numbers, "all, as seen", "median_px"), 1e-3);
        assertEquals(0, number(numbers, "all, repaired", "median_px"), 1e-3);
        assertEquals(0, number(numbers, "along, still camera", "p95"), 0.5);
        assertEquals(0, number(numbers, "legs exchanged, as seen", "share_pct"));
        // Half a frame; the timing's own tests ask for less.
        assertTrue(number(numbers, "touchdown", "mae") < 8.3);
        assertTrue(number(numbers, "toe place", "mae") < 3);
        assertEquals(3, number(numbers, "toe place", "n"));
        assertEquals(0, number(numbers, "touchdown", "missing"));
    }

    /**
     * The drawn jumper's joints in metres are its truth. Bounds: a few frames of 60 a second and the fit's rounding; the landmarks
     * themselves are exact, but the hips stand for the centre of mass in the truth.
     */
    @Test
    void readsMovementsNearTheTruthFromExactLandmarks() throws IOException {
        assertEquals(0, program.run("accuracy", "@footage", "--out", "@results"), program.err());
        String bounds = """
                least knee in support | 3 | 6
                interval | 3 | 8
                support share | 3 | 1
                rhythm evenness | 1 | 2
                free thigh, largest | 3 | 2
                free thigh held | 3 | 3
                free thigh, least | 3 | 2
                free knee, least | 3 | 2
                free lever, least | 3 | 1
                thigh separation | 3 | 2
                reach of the shank | 2 | 3
                trunk, largest lean | 3 | 1
                trunk change | 3 | 1
                head change | 3 | 1
                arm at touchdown | 6 | 3
                arm at toe-off | 6 | 3
                foot speed at touchdown | 3 | 1
                wrists behind in the pit | 1 | 2
                """;
        for (String row : bounds.lines().toList()) {
            String[] cells = row.split(" \\| ", -1); // measure, how many, largest mean absolute error
            assertEquals(Integer.parseInt(cells[1]), number("results/accuracy.json", cells[0], "n"), cells[0]);
            assertEquals(0, number("results/accuracy.json", cells[0], "missing"), cells[0]);
            double error = number("results/accuracy.json", cells[0], "mae");
            assertTrue(error < Double.parseDouble(cells[2]), cells[0] + " is off by " + error);
        }
    }

    @Test
    void aTruthThatIsMovedMovesTheErrorByAsMuch() throws IOException {
        assertEquals(0, program.run("accuracy", "@footage", "--out", "@results"), program.err());
        double before = number("results/accuracy.json", "touchdown", "bias");
        moveTruth(0.003);

        CommandLineRun later = again();
        int code = later.run("accuracy", "@footage", "--out", "@later", "--compare", "@results/accuracy.json");

        assertEquals(0, code, later.err());
        // One of three touchdowns is 3 ms later now, so that the mean error is 1 ms less.
        assertEquals(before - 1, number("later/accuracy.json", "touchdown", "bias"), 1e-3);
        assertTrue(later.out().contains(" touchdown "), later.out());
        assertTrue(later.out().contains("better: ") && later.out().contains("worse: "), later.out());
    }

    private void moveTruth(double byS) throws IOException {
        Path file = folder.resolve("footage/drawn.truth.json");
        double touchdown = clip.contacts().stream()
                .filter(c -> c.kind() == ContactKind.HOP_LANDING)
                .findFirst()
                .orElseThrow()
                .touchdownS();
        String text = Files.readString(file);
        String was = "\"touchdown_s\" : " + touchdown;
        assertTrue(text.contains(was), was);
        Files.writeString(
                file, text.replace(was, String.format(Locale.ROOT, "\"touchdown_s\" : %.9f", touchdown + byS)));
    }

    @Test
    void countsTheFramesInWhichTheNetworkTakesOneLegForTheOther() throws IOException {
        draw(DrawnClip.Setup.ordinary(3).perfect().withStillCamera().atFps(60).withExchanges(2));

        assertEquals(0, program.run("accuracy", "@footage", "--out", "@results"), program.err());

        int drawn = 0;
        for (int f = 0; f < clip.landmarks().frameCount(); f++) {
            drawn += clip.exchanged(f) ? 1 : 0;
        }
        String numbers = "results/accuracy.json";
        double frames = number(numbers, "legs exchanged, as seen", "n");
        double found = number(numbers, "legs exchanged, as seen", "share_pct") * frames / 100;
        assertTrue(drawn > 5, "drawn " + drawn);
        // Frames with the legs together do not count, and nothing else may be taken for an exchange.
        assertTrue(found <= drawn + 0.01 && found > drawn / 2.0, found + " of " + drawn);
        assertTrue(number(numbers, "legs exchanged, repaired", "share_pct") * frames / 100 < found / 4);
    }

    @Test
    void writesTheSameTextAgainAndKeepsWhatIsWrittenByHand() throws IOException {
        assertEquals(0, program.run("accuracy", "@footage", "--out", "@results"), program.err());
        Path report = folder.resolve("results/accuracy.md");
        String first = Files.readString(report);
        assertFalse(first.contains(folder.toString()), "no path of this machine");
        Files.writeString(report, first + "\nBy hand.\n");

        CommandLineRun later = again();
        assertEquals(0, later.run("accuracy", "@footage", "--out", "@results"), later.err());

        assertEquals(first + "\nBy hand.\n", Files.readString(report));
    }

    @Test
    void doesNotWriteOverAFileThatIsNoReport() throws IOException {
        program.file("notes.md", "# My notes\n");

        int code = program.run("accuracy", "@footage", "--out", "@results", "--report", "@notes.md");

        assertEquals(2, code);
        assertTrue(program.err().contains("notes.md: is not overwritten"), program.err());
        assertEquals(1, program.err().lines().count(), program.err());
        assertEquals("# My notes\n", Files.readString(folder.resolve("notes.md")));
    }

    @Test
    void aClipThatCannotBeMeasuredCountsAsMissing() throws IOException {
        CommandLineRun lost = new CommandLineRun(folder).with((one, listener) -> {
            throw new ClipNotMeasuredException("track", "nobody runs through the picture", null);
        });

        assertEquals(1, lost.run("accuracy", "@footage", "--out", "@results"));

        assertEquals("error: drawn.mp4: not measured (track): nobody runs through the picture\n", lost.err());
        assertEquals(3, number("results/accuracy.json", "touchdown", "missing"));
        assertEquals(0, number("results/accuracy.json", "sequence with the right feet", "right"));
        assertTrue(Files.readString(folder.resolve("results/accuracy.md"))
                .contains("Not measured: drawn (nobody runs through the picture)."));
    }

    @Test
    void clipsWithoutTruthAreLeftOut() throws IOException {
        Files.delete(folder.resolve("footage/drawn.truth.json"));

        assertEquals(2, program.run("accuracy", "@footage", "--out", "@results"));
        assertTrue(program.err().contains("warning: drawn.mp4: left out, its truth is not known"), program.err());
        assertTrue(
                program.err().contains("footage: no clip here has its truth beside it, <clip>.truth.json"),
                program.err());
    }
}
