package org.boardtopit.run.workers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.InputException;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.run.RunLock;
import org.boardtopit.run.RunSummary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Real processes, an invented measurer ({@link FakeNight}). */
@Timeout(120)
class WorkerFleetTest {
    private static final TimeLimits SHORT = new TimeLimits(1.5, 0, 60, 0, 0);

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({"halt, ended unasked with code 42", "exit, ended unasked with code 0", "memory, ran out of memory"})
    void aWorkerThatDiesCostsItsClipOnlyAfterASecondTry(String word, String how) throws Exception {
        clip("a.mp4", "good");
        clip("b.mp4", "stage", word);
        clip("c.mp4", "good");

        RunSummary summary = night().run(1, TimeLimits.DEFAULT);

        assertEquals(2, summary.measured());
        assertEquals(0, summary.bugs(), "a death is no fault that stops anything");
        String row = row("b.mp4");
        assertTrue(row.startsWith("b.mp4,not_measured,landmarks,"), row);
        assertTrue(row.contains("the process that measured it " + how), row);
        assertTrue(row.contains("and the time before it " + how + " (landmarks)"), row);
        assertEquals(List.of("a.mp4", "b.mp4", "b.mp4", "c.mp4"), begun());
        assertTrue(log().contains("b.mp4: stage landmarks, its worker " + how + "; trying once more, gently"), log());
        assertFalse(Files.exists(out().resolve("work/b.result")), "the next start tries again");
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aKilledWorkerIsToldFromACrash() throws Exception {
        clip("a.mp4", "kill");

        night().run(1, TimeLimits.DEFAULT);

        assertTrue(row("a.mp4").contains("was killed, by the system when memory ran out or by somebody (signal 9)"));
    }

    /** A write through a wild pointer: the system's SIGSEGV ends the process. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aCrashOfNativeCodeCostsItsClipOnlyAndIsToldWithItsStage() throws Exception {
        clip("a.mp4", "stage", "segv");
        clip("b.mp4", "good");

        RunSummary summary = night().run(1, TimeLimits.DEFAULT);

        assertEquals(1, summary.measured());
        assertTrue(row("a.mp4").startsWith("a.mp4,not_measured,landmarks,"), row("a.mp4"));
        assertTrue(
                row("a.mp4")
                        .contains(
                                "the process that measured it crashed in native code (SIGSEGV), and the time before it"
                                        + " crashed in native code (SIGSEGV) (landmarks)"),
                row("a.mp4"));
        assertTrue(log().contains("a.mp4: stage landmarks, its worker crashed in native code"), log());
        try (Stream<Path> work = Files.list(out().resolve("work"))) {
            List<Path> crashes = work.filter(f -> f.getFileName().toString().startsWith("crash-"))
                    .toList();
            assertEquals(2, crashes.size(), "one for each try");
            assertTrue(Files.readString(crashes.get(0)).contains("SIGSEGV"));
        }
    }

    @Test
    void aFirstWorkerThatDiesAtItsStartIsStartedOnceMore() throws Exception {
        clip("a.mp4", "good");
        AtomicInteger starts = new AtomicInteger();

        RunSummary summary = night().run(
                        1,
                        TimeLimits.DEFAULT,
                        (plan, token, work) -> starts.getAndIncrement() == 0
                                ? FakeNight.start(32, "no.such.Program")
                                : FakeNight.startWorker(plan, token, work));

        assertEquals(1, summary.measured());
        assertEquals(2, starts.get());
        assertTrue(log().contains("the first worker ended unasked with code 1; trying once more"), log());
    }

    /** Killed from outside with the signal of a crash, as a bad memory chip or another program may. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aWorkerThatIsHitByTheSignalOfACrashIsReplaced() throws Exception {
        clip("a.mp4", "stage", "segv-once");
        clip("b.mp4", "good");

        assertEquals(2, night().run(1, TimeLimits.DEFAULT).measured());

        assertTrue(log().contains("a.mp4: stage landmarks, its worker crashed in native code (SIGSEGV)"), log());
        assertEquals(List.of("a.mp4", "a.mp4", "b.mp4"), begun());
    }

    @Test
    void aHungWorkerIsEndedAfterItsLimit() throws Exception {
        clip("a.mp4", "stage", "hang");
        clip("b.mp4", "good");

        long startNs = System.nanoTime();
        RunSummary summary = night().run(1, SHORT);

        assertEquals(1, summary.measured());
        assertTrue(row("a.mp4").startsWith("a.mp4,not_measured,landmarks,"), row("a.mp4"));
        assertTrue(row("a.mp4").contains("did not go on for 2 s and was ended"), row("a.mp4"));
        assertTrue((System.nanoTime() - startNs) * 1e-9 < 60, "nobody waited for the sleeper");
    }

    @Test
    void theSecondTryHasOneThreadAndIsEnough() throws Exception {
        clip("a.mp4", "threads", "halt-once");

        RunSummary summary = night().run(1, TimeLimits.DEFAULT);

        assertEquals(1, summary.withWarnings());
        assertTrue(Files.readString(out().resolve("attempts.csv")).contains("1 threads"));
    }

    @Test
    void manyWorkersGiveTheTablesOfNoneInInputOrder() throws Exception {
        for (int i = 0; i < 9; i++) {
            clip("clip" + i + ".mp4", i % 3 == 0 ? "slow" : i % 3 == 1 ? "warn" : "unfit");
        }
        RunSummary inOne = new FakeNight(clips(), folder.resolve("alone")).run(0, TimeLimits.DEFAULT);
        RunSummary side = night().run(3, TimeLimits.DEFAULT);

        assertEquals(FakeNight.tables(folder.resolve("alone")), FakeNight.tables(out()));
        assertEquals(inOne.measured(), side.measured());
        assertEquals(3, side.notMeasured());
    }

    @Test
    void whatLibrariesPrintIsNotTakenForAMessage() throws Exception {
        clip("a.mp4", "chatter", "stage", "chatter");

        assertEquals(1, night().run(1, TimeLimits.DEFAULT).measured());
    }

    @Test
    void aFaultOfTheProgramKeepsItsWorkerAndItsTrace() throws Exception {
        clip("a.mp4", "stage", "bug");
        clip("b.mp4", "good");

        RunSummary summary = night().run(1, TimeLimits.DEFAULT);

        assertEquals(1, summary.bugs());
        assertTrue(
                row("a.mp4").contains("landmarks,a fault of the program (java.lang.IllegalStateException: the index"));
        assertTrue(log().contains("at org.boardtopit.run.workers.FakeNight"), log());
        assertEquals(List.of("a.mp4", "b.mp4"), begun(), "a fault comes again: it is not tried twice");
    }

    @Test
    void aSecondStartMeasuresFaultsAndDeathsAndNothingElse() throws Exception {
        clip("a.mp4", "good");
        clip("b.mp4", "unfit");
        clip("c.mp4", "bug");
        clip("d.mp4", "halt");
        night().run(1, TimeLimits.DEFAULT);
        String tables = Files.readString(out().resolve("clips.csv"));
        Files.delete(out().resolve("begun"));

        RunSummary second = night().run(1, TimeLimits.DEFAULT);

        assertEquals(2, second.kept());
        assertEquals(List.of("c.mp4", "d.mp4", "d.mp4"), begun());
        assertEquals(
                tables.lines().toList().subList(0, 3),
                Files.readAllLines(out().resolve("clips.csv")).subList(0, 3));
    }

    @Test
    void aClipThatIsTakenAwayInTheMiddleSaysSoAndIsNotStored() throws Exception {
        clip("a.mp4", "remove", "unfit");
        clip("b.mp4", "good");

        assertEquals(1, night().run(1, TimeLimits.DEFAULT).measured());

        assertTrue(row("a.mp4").contains("open,the file was taken away while the run went on"), row("a.mp4"));
        assertFalse(Files.exists(out().resolve("work/a.result")));
    }

    /** The system lets no file grow beyond some kilobytes (POSIX, ulimit -f), as a full disk does: writing fails in the middle. */
    @Test
    @DisabledOnOs(OS.WINDOWS)
    void aDiskThatTakesNoMoreLeavesNothingHalfAndTheNextStartMeasures() throws Exception {
        clip("a.mp4", "good");
        clip("b.mp4", "unfit");
        new FakeNight(clips(), folder.resolve("alone")).run(0, TimeLimits.DEFAULT);
        List<String> line = new ArrayList<>(List.of("sh", "-c", "ulimit -f 4 && exec \"$0\" \"$@\""));
        line.addAll(supervisorLine(0));

        Process limited = new ProcessBuilder(line).redirectErrorStream(true).start();
        String said = new String(limited.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        limited.waitFor();

        assertTrue(log().contains("a.mp4: not_measured"), log());
        assertTrue(log().contains("(store): the result cannot be written (File too large)"), log());
        try (var left = Files.list(out().resolve("work"))) {
            assertEquals(
                    List.of(".lock", "b.result"),
                    left.map(f -> f.getFileName().toString()).sorted().toList(),
                    said);
        }

        RunSummary next = night().run(0, TimeLimits.DEFAULT);

        assertEquals(1, next.kept());
        assertEquals(FakeNight.tables(folder.resolve("alone")), FakeNight.tables(out()));
    }

    /** A disk of two megabytes (Linux, tmpfs) with nothing left on it: not even a table can be written, and all is well afterwards. */
    @Test
    void afterAFullDiskTheSameCommandMeasures() throws Exception {
        clip("a.mp4", "good");
        clip("b.mp4", "unfit");
        new FakeNight(clips(), folder.resolve("alone")).run(0, TimeLimits.DEFAULT);
        try (SmallDisk disk = SmallDisk.mount(folder.resolve("disk"), 2 << 20)) {
            Path results = disk.path().resolve("results");
            FakeNight night = new FakeNight(clips(), results);
            disk.fill(900 << 10);

            RunSummary full = night.run(0, TimeLimits.DEFAULT);

            assertEquals(0, full.measured());
            assertEquals(2, full.notMeasured());
            String rows = Files.readString(results.resolve("clips.csv"));
            assertTrue(rows.contains("start,\"the disk of the output folder is full: 0 MB free, 64 MB needed"), rows);
            assertFalse(Files.exists(results.resolve("begun")), "no clip is opened for nothing");

            disk.fill(0);
            assertThrows(IOException.class, () -> night.run(0, TimeLimits.DEFAULT));
            try (Stream<Path> left = Files.walk(results)) {
                assertEquals(
                        List.of(),
                        left.filter(f -> f.toString().endsWith(".part")).toList());
            }
            assertEquals(rows, Files.readString(results.resolve("clips.csv")), "the tables of before");

            disk.grow(200 << 20);
            RunSummary next = night.run(0, TimeLimits.DEFAULT);
            assertEquals(1, next.measured());
            assertEquals(FakeNight.tables(folder.resolve("alone")), FakeNight.tables(results));
        }
    }

    /** The mode of a folder does not stop the superuser; a file system that is mounted for reading does. */
    @Test
    void aFolderThatTakesNothingIsRefusedBeforeTheFirstClip() throws Exception {
        clip("a.mp4", "good");
        try (SmallDisk disk = SmallDisk.mount(folder.resolve("disk"), 1 << 20)) {
            FakeNight night = new FakeNight(clips(), disk.path().resolve("results"));
            disk.lock();

            assertThrows(FileSystemException.class, () -> night.run(0, TimeLimits.DEFAULT));

            assertEquals(List.of(), begun());
        }
    }

    @Test
    void anUnfitNetworkIsToldBeforeTheFirstClip() throws Exception {
        clip("a.mp4", "good");
        FakeNight night = night();
        try (WorkerFleet fleet = new WorkerFleet(
                (plan, token, work) -> FakeNight.start(32, FakeNight.class.getName(), "worker", token),
                new WorkerPlan(1, 1, 32),
                TimeLimits.DEFAULT,
                "unfit",
                AttemptViews.NONE,
                night.prints(),
                out())) {
            NetworkUnfitException e = assertThrows(NetworkUnfitException.class, fleet::startFirst);
            assertEquals("network full is not fit to measure on this machine", e.getMessage());
        }
    }

    @Test
    void aProgramThatCannotBeStartedIsToldBeforeTheFirstClip() throws Exception {
        clip("a.mp4", "good");
        FakeNight night = night();
        try (WorkerFleet fleet = new WorkerFleet(
                (plan, token, work) -> FakeNight.start(32, "no.such.Program"),
                new WorkerPlan(1, 1, 32),
                TimeLimits.DEFAULT,
                "",
                AttemptViews.NONE,
                night.prints(),
                out())) {
            NetworkUnfitException e = assertThrows(NetworkUnfitException.class, fleet::startFirst);
            assertTrue(e.getMessage().contains("it ended unasked with code 1; run.log has more"), e.getMessage());
            assertTrue(log().contains("no.such.Program"), log());
        }
    }

    @Test
    void workersEndWhenTheirSupervisorIsKilled() throws Exception {
        clip("a.mp4", "hang");
        Process supervisor = startSupervisor(1);
        awaitBegun();
        List<ProcessHandle> workers = supervisor.descendants().toList();
        assertEquals(1, workers.size());

        supervisor.destroyForcibly().waitFor();

        workers.get(0).onExit().get(20, TimeUnit.SECONDS);
    }

    @Test
    void aSecondRunOnTheSameFolderIsRefusedUntilTheFirstIsKilled() throws Exception {
        clip("a.mp4", "hang");
        Process supervisor = startSupervisor(0);
        awaitBegun();

        InputException e = assertThrows(InputException.class, () -> RunLock.take(out()));
        assertEquals(
                out() + ": another run is writing into this folder (process " + supervisor.pid()
                        + "); wait for its end or stop it",
                e.getMessage());

        supervisor.destroyForcibly().waitFor();
        RunLock.take(out()).close();
    }

    /** Killed at a random moment and started again: nothing lost, nothing measured twice but what was at work. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19})
    void aKilledRunThatIsStartedAgainHasTheTablesOfAnUndisturbedOne(int seed) throws Exception {
        int workers = seed % 3;
        for (int i = 0; i < 12; i++) {
            clip("clip" + i + ".mp4", "slow", i % 4 == 1 ? "warn" : i % 4 == 2 ? "unfit" : "slow");
        }
        new FakeNight(clips(), folder.resolve("alone")).run(0, TimeLimits.DEFAULT);
        Random random = new Random(seed);

        Process supervisor = startSupervisor(workers);
        if (supervisor.waitFor(300 + random.nextInt(1500), TimeUnit.MILLISECONDS)) {
            assertEquals(0, supervisor.exitValue(), "it ended before it was killed, and well");
        }
        List<ProcessHandle> children = supervisor.descendants().toList();
        if (workers > 0 && !children.isEmpty() && random.nextBoolean()) {
            children.get(random.nextInt(children.size())).destroyForcibly();
            supervisor.waitFor(random.nextInt(300), TimeUnit.MILLISECONDS);
        }
        supervisor.destroyForcibly().waitFor();
        for (ProcessHandle child : children) {
            child.onExit().get(20, TimeUnit.SECONDS);
        }
        RunSummary last = night().run(workers, TimeLimits.DEFAULT);

        assertEquals(FakeNight.tables(folder.resolve("alone")), FakeNight.tables(out()));
        assertEquals(9, last.measured());
        int mostAtWork = Math.max(1, workers) + 1;
        assertTrue(begun().size() <= 12 + mostAtWork, "begun " + begun());
        try (var left = Files.list(out().resolve("work"))) {
            assertEquals(
                    List.of(), left.filter(f -> f.toString().endsWith(".part")).toList());
        }
    }

    private Process startSupervisor(int workers) throws IOException {
        return new ProcessBuilder(supervisorLine(workers))
                .redirectErrorStream(true)
                .start();
    }

    private List<String> supervisorLine(int workers) {
        return FakeNight.line(
                64,
                FakeNight.class.getName(),
                "supervisor",
                clips().toString(),
                out().toString(),
                Integer.toString(workers));
    }

    private void awaitBegun() throws InterruptedException {
        while (!Files.exists(out().resolve("begun"))) {
            Thread.sleep(20);
        }
    }

    private FakeNight night() throws InputException, IOException {
        return new FakeNight(clips(), out());
    }

    private Path clips() {
        return folder.resolve("clips");
    }

    private Path out() {
        return folder.resolve("results");
    }

    private void clip(String name, String... words) throws IOException {
        Files.createDirectories(clips());
        Files.writeString(clips().resolve(name), String.join("\n", words) + "\n");
    }

    private String row(String clip) throws IOException {
        return Files.readAllLines(out().resolve("clips.csv")).stream()
                .filter(line -> line.startsWith(clip + ","))
                .findFirst()
                .orElseThrow();
    }

    private List<String> begun() throws IOException {
        return Files.exists(out().resolve("begun")) ? Files.readAllLines(out().resolve("begun")) : List.of();
    }

    private String log() throws IOException {
        return Files.readString(out().resolve("run.log"));
    }
}
