package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.boardtopit.models.djl.TorchEngine;
import org.boardtopit.video.ffmpeg.Mutants;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A night of damaged clips through the program itself, supervisor, workers and networks.
 *
 * <p>A sample in every build; all by {@code mvn test -Dtest=BadInputNightTest -Dboardtopit.night=500
 * -Dsurefire.failIfNoSpecifiedTests=false}.
 */
class BadInputNightTest {
    private static final int MUTANTS = Integer.getInteger("boardtopit.night", 12);

    /** For each, on a machine under load; they are some 10 kB. The start of the workers comes on top. */
    private static final double LONGEST_S = 20;

    private static final double START_S = 300;

    @TempDir
    private Path folder;

    private final StringWriter said = new StringWriter();

    @Test
    @Timeout(value = 3, unit = TimeUnit.HOURS)
    void damagedClipsCostTheNightNothingButThemselves() throws IOException {
        Path clips = Files.createDirectories(folder.resolve("clips"));
        List<Path> mutants = Mutants.write(clips, MUTANTS);
        Map<String, String> before = outside();

        long startNs = System.nanoTime();
        int code = process(clips);
        double seconds = (System.nanoTime() - startNs) * 1e-9;

        Map<String, String> rows = new TreeMap<>();
        for (String line : Files.readAllLines(folder.resolve("results/clips.csv"))) {
            rows.put(line.split(",", -1)[0], line);
        }
        Map<String, Integer> counts = new TreeMap<>();
        List<String> bad = new ArrayList<>();
        for (Path mutant : mutants) {
            String row = rows.getOrDefault(mutant.getFileName().toString(), "no row");
            boolean measured = row.contains(",measured");
            boolean reason = row.matches("[^,]*,not_measured,[^,]+,.{10,}");
            counts.merge(
                    measured ? "measured" : row.split(",", -1).length > 2 ? row.split(",", -1)[2] : "?",
                    1,
                    Integer::sum);
            if ((!measured && !reason) || row.contains("fault") || row.contains("the process that measured")) {
                bad.add(row);
            }
        }
        System.out.printf(">> a night of %d mutants: code %d, %.0f s, %s%n", MUTANTS, code, seconds, counts);
        assertEquals(List.of(), bad, () -> said.toString());
        assertEquals(1, code, () -> said.toString());
        assertEquals(before, outside(), "nothing is written but into the folder of results");
        assertTrue(seconds < START_S + LONGEST_S * MUTANTS, seconds + " s");
    }

    private int process(Path clips) {
        PrintWriter out = new PrintWriter(said);
        return Main.run(
                new String[] {
                    "process",
                    clips.toString(),
                    "--out",
                    folder.resolve("results").toString(),
                    "--workers",
                    "2"
                },
                new Surroundings(
                        new Console(out, out, false),
                        new TorchEngine(),
                        new StageAssembly(),
                        Optional.of(new JavaWorkers()),
                        Optional.empty()));
    }

    /** What lies around the results: the clips as they are, and the folder that the program was started in. */
    private Map<String, String> outside() throws IOException {
        Map<String, String> content = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(f -> !f.startsWith(folder.resolve("results")))
                    .filter(Files::isRegularFile)
                    .toList()) {
                content.put(file.toString(), Files.size(file) + " " + Files.getLastModifiedTime(file));
            }
        }
        try (Stream<Path> files = Files.list(Path.of(""))) {
            files.forEach(file -> content.put(file.toString(), "here"));
        }
        return content;
    }
}
