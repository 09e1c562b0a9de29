package org.boardtopit.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.boardtopit.run.ClipsNotComparedException;
import org.boardtopit.run.RunComparisons.PairMaker;

/**
 * Makes a comparison in a process of its own: it decodes two clips, and whatever a broken one does to the decoder, the night's run
 * ends well all the same.
 */
final class ChildComparison implements PairMaker {
    /** Two long clips on a slow machine; measured are some seconds. */
    private static final long LIMIT_S = 900;

    private static final String ERROR = "error: ";

    private final Path out;

    /**
     * For one run.
     *
     * @param out its output folder, whose lock this process holds
     */
    ChildComparison(Path out) {
        this.out = out;
    }

    @Override
    public void make(String a, String b) throws ClipsNotComparedException, IOException {
        Path said = out.resolve("work").resolve("comparison.part");
        try {
            Process process = new ProcessBuilder(words(a, b))
                    .redirectErrorStream(true)
                    .redirectOutput(said.toFile())
                    .start();
            int code = await(process);
            if (code != ExitCode.DONE) {
                throw new ClipsNotComparedException(reason(code, Files.readString(said, StandardCharsets.UTF_8)));
            }
        } finally {
            Files.deleteIfExists(said);
        }
    }

    private List<String> words(String a, String b) {
        List<String> words = new ArrayList<>(JavaWorkers.java(out.resolve("work")));
        words.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
        // After the two dashes nothing is taken for an option, whatever a clip is called.
        words.addAll(List.of("compare", "--of-run", "--out", out.toString(), "--", a, b));
        return words;
    }

    private static int await(Process process) throws ClipsNotComparedException {
        Thread stopping = new Thread(process::destroyForcibly, "stopping-comparison");
        Runtime.getRuntime().addShutdownHook(stopping);
        try {
            if (!process.waitFor(LIMIT_S, TimeUnit.SECONDS)) {
                throw new ClipsNotComparedException("it took longer than " + LIMIT_S / 60 + " minutes");
            }
            return process.exitValue();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new ClipsNotComparedException("the run was stopped", e);
        } finally {
            process.destroyForcibly();
            ProcessCommand.removeHook(stopping);
        }
    }

    private static String reason(int code, String said) {
        return said.lines()
                .filter(line -> line.startsWith(ERROR))
                .map(line -> line.substring(ERROR.length()))
                .reduce((earlier, later) -> later)
                .orElse("its process ended with code " + code);
    }
}
