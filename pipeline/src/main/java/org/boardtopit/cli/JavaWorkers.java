package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boardtopit.run.workers.WorkerPlan;
import org.boardtopit.run.workers.WorkerStarter;

/** Starts workers of this same program: the same Java, the same class path, the hidden command worker. */
final class JavaWorkers implements WorkerStarter {
    /** As the launcher has it. */
    private static final int HEAP_MIB = 512;

    private static final String MORE_OPTIONS = "BOARDTOPIT_JAVA_OPTS";

    @Override
    public Process start(WorkerPlan plan, String token, Path work) throws IOException {
        List<String> words = new ArrayList<>(java(plan, work));
        words.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
        words.addAll(List.of("worker", "--channel", token, "--threads", Integer.toString(plan.threads())));
        return new ProcessBuilder(words).redirectErrorStream(true).start();
    }

    /** Java without what the program is called with; the user's options come last and win. */
    static List<String> java(WorkerPlan plan, Path work) {
        return java(plan.heapMiB(), work);
    }

    /** The same for a process that is no worker. */
    static List<String> java(Path work) {
        return java(HEAP_MIB, work);
    }

    private static List<String> java(int heapMiB, Path work) {
        List<String> words = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + heapMiB + "m",
                "-XX:+UseSerialGC",
                // Ten times later than usual: compiling with all means took a worker as long as measuring half a clip,
                // and
                // little of the program is Java that runs long.
                "-XX:Tier4InvocationThreshold=50000",
                "-XX:Tier4MinInvocationThreshold=6000",
                "-XX:Tier4CompileThreshold=150000",
                "-XX:Tier4BackEdgeThreshold=400000",
                "-XX:+ExitOnOutOfMemoryError",
                "-XX:-CreateCoredumpOnCrash",
                "-XX:ErrorFile=" + work.resolve("crash-%p.log"),
                "-Djava.awt.headless=true",
                "-Dfile.encoding=UTF-8"));
        String more = System.getenv(MORE_OPTIONS);
        if (more != null && !more.isBlank()) {
            words.addAll(List.of(more.strip().split("\\s+")));
        }
        return words;
    }
}
