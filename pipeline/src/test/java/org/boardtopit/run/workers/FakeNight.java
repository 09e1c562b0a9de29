package org.boardtopit.run.workers;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.reflect.Field;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.run.ClipFingerprints;
import org.boardtopit.run.ClipMeasurer;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.ClipResult;
import org.boardtopit.run.MeetRunner;
import org.boardtopit.run.Progress;
import org.boardtopit.run.RunFacts;
import org.boardtopit.run.RunListener;
import org.boardtopit.run.RunLock;
import org.boardtopit.run.RunSummary;
import org.boardtopit.run.ScriptedMeasurer;
import org.boardtopit.run.StageListener;
import org.boardtopit.run.StoredResult;
import org.boardtopit.run.StoringMeasurer;

/**
 * A whole run with everything but the measuring itself: what happens to a clip is written in it, one word a line. It runs in this
 * process or, by its main method, as a supervisor or a worker of its own.
 */
public final class FakeNight {
    private final Path out;
    private final ClipList list;
    private final ClipFingerprints fingerprints;

    FakeNight(Path clips, Path out) throws InputException, IOException {
        this.out = Files.createDirectories(out);
        this.list = ClipList.join(ClipFolder.list(List.of(clips), out, MeetSheet.NONE.inputFiles()), MeetSheet.NONE);
        this.fingerprints = fingerprints();
    }

    private static ClipFingerprints fingerprints() throws IOException {
        return new ClipFingerprints("program 1", MeetSheet.NONE, "network 1");
    }

    ClipList list() {
        return list;
    }

    ClipFingerprints prints() {
        return fingerprints;
    }

    /** In workers, as many as are wanted; 0 for none, everything in this process. */
    RunSummary run(int workers, TimeLimits limits) throws IOException, InputException, NetworkUnfitException {
        return run(workers, limits, FakeNight::startWorker);
    }

    /** With workers of another kind. */
    RunSummary run(int workers, TimeLimits limits, WorkerStarter starter)
            throws IOException, InputException, NetworkUnfitException {
        try (RunLock lock = RunLock.take(out)) {
            lock.results().removeHalfWritten();
            Map<String, StoredResult> kept = new HashMap<>();
            for (Clip clip : list.clips()) {
                lock.results()
                        .find(clip, fingerprints.of(clip, List.of()))
                        .ifPresent(result -> kept.put(clip.name(), result));
            }
            if (workers == 0) {
                return run(storing(out, fingerprints), 1, kept);
            }
            WorkerPlan plan = new WorkerPlan(workers, 2, 32);
            try (WorkerFleet fleet =
                    new WorkerFleet(starter, plan, limits, out.toString(), AttemptViews.NONE, fingerprints, out)) {
                fleet.startFirst();
                return run(fleet, workers, kept);
            }
        }
    }

    private RunSummary run(ClipMeasurer measurer, int lanes, Map<String, StoredResult> kept) throws IOException {
        TableWriter tables = new TableWriter(out, TableFormat.DEFAULT);
        RunFacts facts = new RunFacts(Instant.EPOCH, Map.of(), Map.of(), Map.of());
        return new MeetRunner(measurer, lanes, tables, out, facts, new Deaf()).run(list, kept);
    }

    private static StoringMeasurer storing(Path out, ClipFingerprints fingerprints) {
        return new StoringMeasurer(
                (clip, listener) -> play(clip, listener, out), out, clip -> fingerprints.of(clip, List.of()));
    }

    private static final class Deaf implements RunListener {
        @Override
        public void begun(int kept, int clips) {}

        @Override
        public void progress(Progress progress) {}

        @Override
        public void clipDone(ClipRow row, List<String> warnings, int number, int clips) {}

        @Override
        public void trouble(String what) {}
    }

    /** What the words of the clip say, one after the other. */
    private static ClipResult play(Clip clip, StageListener listener, Path out) throws ClipNotMeasuredException {
        try {
            note(out, clip);
            listener.at("survey", 0);
            List<String> warnings = new ArrayList<>();
            for (String word : Files.readAllLines(clip.file())) {
                act(word, clip, listener, warnings, out);
            }
            return ScriptedMeasurer.result(clip, warnings);
        } catch (IOException e) {
            throw new ClipNotMeasuredException("open", "cannot be read", e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void act(String word, Clip clip, StageListener listener, List<String> warnings, Path out)
            throws IOException, InterruptedException, ClipNotMeasuredException {
        switch (word) {
            case "good" -> {}
            case "warn" -> warnings.add("the pit is out of view");
            case "slow" -> Thread.sleep(40);
            case "unfit" -> throw new ClipNotMeasuredException("subject", "nobody runs through the picture", null);
            case "bug" -> throw new IllegalStateException("the index was off by one");
            case "stage" -> listener.at("landmarks", 0.5);
            case "chatter" -> System.out.print("a library prints without an end of line".repeat(3000));
            case "hang" -> Thread.sleep(600_000);
            case "exit" -> Runtime.getRuntime().halt(0);
            case "halt" -> Runtime.getRuntime().halt(42);
            case "segv" -> writeToNowhere();
            case "segv-once" -> {
                if (Files.notExists(out.resolve("hit-" + clip.name()))) {
                    Files.createFile(out.resolve("hit-" + clip.name()));
                    signal("-SEGV");
                }
            }
            case "kill" -> signal("-9");
            case "memory" -> fillMemory();
            case "halt-once" -> haltOnce(out.resolve("halted-" + clip.name()));
            case "threads" -> warnings.add(System.getProperty("threads") + " threads");
            case "remove" -> Files.delete(clip.file());
            default -> throw new IllegalArgumentException(word);
        }
    }

    private static void signal(String signal) {
        try {
            String self = Long.toString(ProcessHandle.current().pid());
            new ProcessBuilder("kill", signal, self).start().waitFor();
            Thread.sleep(60_000);
        } catch (IOException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** As a wild pointer in native code does. Through reflection: the compiler warns of the class itself. */
    private static void writeToNowhere() {
        try {
            Class<?> memory = Class.forName("sun.misc.Unsafe");
            Field only = memory.getDeclaredField("theUnsafe");
            only.setAccessible(true);
            memory.getMethod("putLong", long.class, long.class).invoke(only.get(null), 0L, 1L);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void fillMemory() {
        List<long[]> all = new ArrayList<>();
        while (all.size() < 1_000_000) {
            all.add(new long[1 << 17]);
        }
    }

    private static void haltOnce(Path mark) throws IOException {
        if (!Files.exists(mark)) {
            Files.createFile(mark);
            Runtime.getRuntime().halt(42);
        }
    }

    /** Which clips were begun, in order: the file begun, outside of what is compared. */
    private static void note(Path out, Clip clip) throws IOException {
        Files.writeString(
                out.resolve("begun"),
                clip.fileName() + "\n",
                StandardCharsets.UTF_8,
                StandardOpenOption.CREATE,
                StandardOpenOption.APPEND);
    }

    /** The tables without the column of seconds, which is another one for every run. */
    static String tables(Path out) throws IOException {
        StringBuilder all = new StringBuilder();
        for (String name : List.of(
                "attempts.csv", "phases.csv", "contacts.csv", "intervals.csv", "observations.csv", "clips.csv")) {
            for (String line : Files.readAllLines(out.resolve(name))) {
                String[] cells = line.split(",", -1);
                if (name.equals("clips.csv")) {
                    cells[9] = "";
                }
                all.append(String.join(",", cells)).append('\n');
            }
        }
        return all.toString();
    }

    static Process start(int heapMiB, String... words) throws IOException {
        return new ProcessBuilder(line(heapMiB, words))
                .redirectErrorStream(true)
                .start();
    }

    /** The words of a command line. */
    static List<String> line(int heapMiB, String... words) {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx" + heapMiB + "m",
                "-XX:+UseSerialGC",
                "-XX:+ExitOnOutOfMemoryError",
                "-XX:TieredStopAtLevel=1",
                "-XX:-UsePerfData",
                "-cp",
                System.getProperty("java.class.path")));
        line.addAll(Arrays.asList(words));
        return line;
    }

    static Process startWorker(WorkerPlan plan, String token, Path work) throws IOException {
        return start(
                plan.heapMiB(),
                "-Dthreads=" + plan.threads(),
                "-XX:-CreateCoredumpOnCrash",
                "-XX:ErrorFile=" + work.resolve("crash-%p.log"),
                FakeNight.class.getName(),
                "worker",
                token);
    }

    /** worker TOKEN, or supervisor CLIPS OUT WORKERS. */
    public static void main(String[] args) throws Exception {
        if (args[0].equals("supervisor")) {
            new FakeNight(Path.of(args[1]), Path.of(args[2])).run(Integer.parseInt(args[3]), TimeLimits.DEFAULT);
            return;
        }
        PrintStream channel = System.out;
        new WorkerLoop(channel, args[1])
                .run(System.in, FakeNight::open, () -> Runtime.getRuntime().halt(0));
    }

    private static WorkerLoop.JobMeasurer open(String setup, SignsOfLife life)
            throws NetworkUnfitException, IOException {
        if (setup.startsWith("unfit")) {
            throw new NetworkUnfitException("network full is not fit to measure on this machine");
        }
        Path out = Path.of(setup);
        ClipFingerprints fingerprints = fingerprints();
        return new WorkerLoop.JobMeasurer() {
            @Override
            public ClipMeasurer measurer(WorkerJob job, AttemptViews views) {
                return storing(out, fingerprints);
            }

            @Override
            public void close() {}
        };
    }
}
