package org.boardtopit.video.ffmpeg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Damaged clips. However a file is damaged: within a bounded time and memory its frames come out in the order of time, or one
 * line says why not. Read in a process of its own.
 *
 * <p>A sample in every build; all by {@code mvn test -Dtest=BadInputCorpusTest -Dboardtopit.mutants=600
 * -Dsurefire.failIfNoSpecifiedTests=false}.
 */
class BadInputCorpusTest {
    private static final int MUTANTS = Integer.getInteger("boardtopit.mutants", 40);

    /** The seeds are some 10 kB: a second is plenty, the rest is for a machine under load. */
    private static final long LONGEST_MS = 20_000;

    private static final long MOST_MEGABYTES = 1500;

    @TempDir
    Path folder;

    /** What became of one mutant. */
    private record Outcome(String word, long milliseconds, long megabytes, String text) {}

    @Test
    @Timeout(value = 30, unit = TimeUnit.MINUTES)
    void damagedClipsCostNothingButThemselves() throws Exception {
        List<Path> mutants = Mutants.write(folder, MUTANTS);
        long before = filesIn(folder);

        Map<Path, Outcome> outcomes = read(mutants);

        Map<String, Integer> counts = new TreeMap<>();
        List<String> bad = new ArrayList<>();
        long slowest = 0;
        long largest = 0;
        for (Path mutant : mutants) {
            Outcome outcome = outcomes.get(mutant);
            counts.merge(outcome.word(), 1, Integer::sum);
            slowest = Math.max(slowest, outcome.milliseconds());
            largest = Math.max(largest, outcome.megabytes());
            boolean oneLine = outcome.text().startsWith(mutant.getFileName() + ": ");
            if (!outcome.word().equals("read") && !(outcome.word().equals("refused") && oneLine)) {
                bad.add(mutant.getFileName() + " " + outcome);
            }
        }
        System.out.println(">> " + mutants.size() + " mutants: " + counts + ", the slowest " + slowest + " ms, at most "
                + largest + " MB resident");
        assertEquals(List.of(), bad);
        assertTrue(largest < MOST_MEGABYTES, largest + " MB");
        assertEquals(before, filesIn(folder), "reading writes nothing");
        assertTrue(counts.getOrDefault("read", 0) > MUTANTS / 10, "some can still be read: " + counts);
        assertTrue(counts.getOrDefault("refused", 0) > MUTANTS / 10, "some cannot: " + counts);
    }

    private static long filesIn(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.count();
        }
    }

    // ---- reading them

    /** A process reads one after the other; when it ends or hangs, the clip at work is to blame, and another goes on after it. */
    private static Map<Path, Outcome> read(List<Path> mutants) throws IOException, InterruptedException {
        Map<Path, Outcome> outcomes = new LinkedHashMap<>();
        while (outcomes.size() < mutants.size()) {
            List<Path> rest = mutants.subList(outcomes.size(), mutants.size());
            readInOneProcess(rest, outcomes);
        }
        return outcomes;
    }

    private static void readInOneProcess(List<Path> rest, Map<Path, Outcome> outcomes)
            throws IOException, InterruptedException {
        Process process = start(rest);
        int at = -1;
        AtomicLong sinceNs = new AtomicLong(System.nanoTime());
        boolean[] hung = {false};
        Thread watch = new Thread(() -> {
            while (process.isAlive()) {
                // The first clip also pays for the start of the process.
                if ((System.nanoTime() - sinceNs.get()) / 1_000_000 > LONGEST_MS) {
                    hung[0] = true;
                    process.destroyForcibly();
                }
                try {
                    Thread.sleep(100);
                } catch (InterruptedException e) {
                    return;
                }
            }
        });
        watch.setDaemon(true);
        watch.start();
        try (BufferedReader said =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                sinceNs.set(System.nanoTime());
                if (line.startsWith("begin ")) {
                    at = Integer.parseInt(line.substring(6));
                } else if (line.matches("\\d+ \\w+ \\d+ \\d+ .*")) {
                    String[] words = line.split(" ", 5);
                    outcomes.put(
                            rest.get(at),
                            new Outcome(words[1], Long.parseLong(words[2]), Long.parseLong(words[3]), words[4]));
                }
            }
        }
        int code = process.waitFor();
        watch.join();
        if (at < 0) {
            throw new IOException("the reading process did not start: code " + code);
        }
        Path last = rest.get(at);
        if (!outcomes.containsKey(last)) {
            outcomes.put(last, new Outcome(hung[0] ? "hung" : "crashed", 0, 0, "code " + code));
        }
    }

    private static Process start(List<Path> files) throws IOException {
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m", // as the launcher gives
                "-XX:+UseSerialGC",
                "-XX:-CreateCoredumpOnCrash",
                "-XX:ErrorFile=" + files.get(0).resolveSibling("seeds").resolve("crash-%p.log"),
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                MutantReader.class.getName()));
        files.forEach(file -> words.add(file.toString()));
        return new ProcessBuilder(words)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
