package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.models.TensorEngine;
import org.boardtopit.run.workers.WorkerStarter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The program with a real worker process on a clip of the sample competition, and started again. */
@Timeout(600)
class NightTest {
    private static final Path CLIP = Path.of("..", "sample-config", "competition", "A1_static_720p60.mp4");

    @TempDir
    private Path folder;

    private final StringWriter said = new StringWriter();

    @Test
    void aSecondStartChangesNothingAndAMissingOverlayIsDrawnAgain() throws IOException {
        Files.createDirectories(folder.resolve("clips"));
        Files.copy(CLIP, folder.resolve("clips/Sprünge 1.mp4"));
        Files.writeString(folder.resolve("clips/text.mp4"), "no film");

        assertEquals(1, run(new JavaWorkers()), said.toString());
        assertTrue(said.toString().contains("Sprünge 1.mp4: measured"), said.toString());
        assertTrue(said.toString().contains("text.mp4: not measured (survey): "), said.toString());
        Map<String, String> first = results();
        assertTrue(first.get("contacts.csv").contains("hop_landing"), first.get("contacts.csv"));

        assertEquals(
                1,
                run((plan, token, work) -> {
                    throw new AssertionError("nothing is left to measure");
                }),
                said.toString());
        assertTrue(said.toString().contains("2 of 2 clips are done by an earlier start"), said.toString());
        assertEquals(first, results());

        Path overlay = folder.resolve("results/overlays/Sprünge 1.mp4");
        long size = Files.size(overlay);
        Files.delete(overlay);
        assertEquals(1, run(new JavaWorkers()), said.toString());
        assertTrue(Math.abs(Files.size(overlay) - size) < size / 2, "an overlay again");
        assertEquals(first.get("clips.csv"), results().get("clips.csv"));
        assertEquals(first.get("contacts.csv"), results().get("contacts.csv"));
    }

    private int run(WorkerStarter workers) {
        PrintWriter out = new PrintWriter(said);
        Surroundings surroundings = new Surroundings(
                new Console(out, out, false),
                new ClosedEngine(),
                new StageAssembly(),
                Optional.of(workers),
                Optional.empty());
        return Main.run(
                new String[] {
                    "process",
                    folder.resolve("clips").toString(),
                    "--out",
                    folder.resolve("results").toString(),
                    "--effort",
                    "quick"
                },
                surroundings);
    }

    /** Tables as text, overlays by time and size. */
    private Map<String, String> results() throws IOException {
        Map<String, String> content = new TreeMap<>();
        try (Stream<Path> files = Files.walk(folder.resolve("results"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String name = folder.resolve("results").relativize(file).toString();
                if (name.endsWith(".csv")) {
                    content.put(name, Files.readString(file));
                } else if (name.endsWith(".mp4")) {
                    content.put(name, Files.getLastModifiedTime(file) + " " + Files.size(file));
                }
            }
        }
        return content;
    }

    /** The supervisor measures nothing: it has no use for networks. */
    private static final class ClosedEngine implements TensorEngine {
        @Override
        public String description() {
            return "closed";
        }

        @Override
        public LoadedNetwork load(NetworkCard card, byte[] module) {
            throw new AssertionError("a network was opened in the supervisor");
        }
    }
}
