package org.boardtopit.cli;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.boardtopit.cli.MeasurerFactory.OpenMeasurer;
import org.boardtopit.cli.MeasurerFactory.Setup;
import org.boardtopit.cli.NightBench.Figures;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkTiming;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.observations.RuleSet;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.pose.Look;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.OutputFiles;
import org.boardtopit.run.StageTimes;
import org.boardtopit.run.workers.WorkerPlan;
import org.boardtopit.run.workers.WorkerStarter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/**
 * How long a clip takes, against the time that the landmark network alone needs for as many pictures.
 *
 * <p>The network is timed before and after the clip, on as many threads, so that a machine that grows slower in between
 * shows in both. The clip is measured twice from its file to its overlay, nothing kept in between: the first time as it is by
 * a run of one clip, with the native libraries to load and the code to compile on the way, the second time as it is in a run
 * of many. Opening and testing the networks is left out of both.
 *
 * <p>With workers it is a run of many clips in processes of their own ({@link NightBench}), with overlays and without, start and
 * tables included. Processor time is told beside the time of the clock, because it hardly depends on what else the machine does.
 */
@Command(
        name = "bench",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Measures how long a clip takes on this machine.",
        description = {
            "",
            "Measures how long one clip takes, overlay included, against the time that",
            "the landmark network alone needs for its frames on the same threads.",
            "With --workers: how long a run of many clips takes in worker processes,",
            "with overlays and without, from its start to its last table.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "    boardtopit bench",
            "    boardtopit bench clip.mp4 --meet meet.yaml --threads 2",
            "  A night with two worker processes, with overlays and without:",
            "    boardtopit bench --workers 2 --clips 16"
        })
final class BenchCommand implements Callable<Integer> {
    private static final int PICTURES_PER_WORKER = 100;
    private static final String SAMPLE_MEET = "sample-config/competition/meet.yaml";
    private static final String SAMPLE_CLIPS = "sample-config/competition";
    private static final String SAMPLE_CLIP = SAMPLE_CLIPS + "/A1_static_720p60.mp4";
    private static final int CLIPS_PER_WORKER = 4;

    private final Surroundings surroundings;

    @Spec
    private CommandSpec command;

    @Parameters(
            arity = "0..1",
            paramLabel = "CLIP",
            description = "The clip; with --workers it may be a folder. Default: the sample competition.")
    private Path clipFile;

    @Option(names = "--meet", paramLabel = "FILE", description = "The competition's meet.yaml.")
    private Path meetFile;

    @Option(
            names = "--workers",
            paramLabel = "N",
            description = "Measure a run in so many processes, 1 to 64, of --threads threads each (default: 1).")
    private Integer workers;

    @Option(
            names = "--clips",
            paramLabel = "N",
            description = "Clips of that run, the same ones again and again. Default: four for each worker.")
    private Integer clipCount;

    @Mixin
    private LandmarkOptions landmarks;

    BenchCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException, NetworkUnfitException, IOException {
        takeSampleIfNothingIsSaid();
        MeetSheet meet = meetFile == null ? MeetSheet.NONE : MeetSheetReader.read(meetFile);
        RunSettings settings = landmarks.settings(meet.settings());
        NetworkStore store = landmarks.networks().store(surroundings.engine());
        Path out = Files.createTempDirectory("boardtopit-bench");
        try {
            ClipList list = ClipList.join(ClipFolder.list(List.of(clipFile), out, meet.inputFiles()), meet);
            if (workers != null) {
                return benchNight(list.clips(), meet, settings, store, out);
            }
            if (list.clips().size() != 1) {
                throw new InputException(
                        clipFile, "name one clip, there are " + list.clips().size());
            }
            return bench(list.clips().get(0), new Setup(meet, RuleSetReader.of(meet), settings, store, out, true));
        } finally {
            OutputFiles.delete(out);
        }
    }

    private void takeSampleIfNothingIsSaid() {
        if (clipFile == null) {
            Path home =
                    surroundings.home().orElseThrow(() -> new ParameterException(command.commandLine(), "which clip?"));
            clipFile = home.resolve(workers == null ? SAMPLE_CLIP : SAMPLE_CLIPS);
            meetFile = meetFile == null ? home.resolve(SAMPLE_MEET) : meetFile;
        }
    }

    private int bench(Clip clip, Setup setup) throws NetworkUnfitException, InputException, IOException {
        NetworkTiming before = timeNetwork(setup);
        StageTimes times = StageTimes.ofThisProcess(BenchCommand::ownWorkNs);
        double firstS;
        double laterS;
        ClipRow row;
        try (OpenMeasurer measurer = surroundings.measurers().open(setup)) {
            firstS = seconds(measurer, clip, new StageTimes());
            OutputFiles.delete(setup.out());
            Files.createDirectories(setup.out());
            long startNs = System.nanoTime();
            row = measurer.measure(clip, times).clip();
            times.pause();
            laterS = (System.nanoTime() - startNs) * 1e-9;
        } catch (ClipNotMeasuredException e) {
            surroundings.console().error(clip.fileName() + ": not measured (" + e.stage() + "): " + e.getMessage());
            return ExitCode.SOME_NOT_MEASURED;
        }
        report(row, setup.settings(), new NetworkTiming[] {before, timeNetwork(setup)}, firstS, laterS, times);
        return ExitCode.DONE;
    }

    private int benchNight(List<Clip> clips, MeetSheet meet, RunSettings settings, NetworkStore store, Path out)
            throws NetworkUnfitException, InputException, IOException {
        List<Clip> copies = NightBench.copies(clips, clipCount());
        WorkerStarter starter = surroundings
                .workers()
                .orElseThrow(() -> new ParameterException(command.commandLine(), "there are no workers here"));
        int said = landmarks.networks().threadsSaid(meet.settings());
        WorkerPlan plan = new WorkerPlan(workers, Math.max(1, said), WorkerPlan.HEAP_MIB);
        NightBench night = new NightBench(starter, plan, landmarks.networks().folder(), BenchCommand::ownWorkNs);
        RuleSet rules = RuleSetReader.of(meet);
        int threads = plan.workers() * plan.threads();
        try {
            NetworkTiming before = store.time(settings.network(), threads, PICTURES_PER_WORKER);
            Figures with = night.run(copies, new Setup(meet, rules, settings, store, out.resolve("with"), true));
            NetworkTiming between = store.time(settings.network(), threads, PICTURES_PER_WORKER);
            Figures without = night.run(copies, new Setup(meet, rules, settings, store, out.resolve("without"), false));
            NetworkTiming after = store.time(settings.network(), threads, PICTURES_PER_WORKER);
            new NightReport(this::say, Look.of(settings.effort()).size(), List.of(before, between, after))
                    .report(copies.size(), plan, with, without);
            return ExitCode.DONE;
        } catch (ClipNotMeasuredException e) {
            surroundings.console().error("not measured (" + e.stage() + "): " + e.getMessage());
            return ExitCode.SOME_NOT_MEASURED;
        }
    }

    private int clipCount() {
        if (workers < 1 || workers > RunSettings.MOST_WORKERS) {
            throw new ParameterException(
                    command.commandLine(),
                    "--workers must be from 1 to " + RunSettings.MOST_WORKERS + ", was " + workers);
        }
        int count = clipCount == null ? CLIPS_PER_WORKER * workers : clipCount;
        if (count < workers) {
            throw new ParameterException(
                    command.commandLine(), "--clips must be at least one for each worker, was " + count);
        }
        return count;
    }

    private static long ownWorkNs() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean known
                ? known.getProcessCpuTime()
                : 0;
    }

    private static double seconds(OpenMeasurer measurer, Clip clip, StageTimes times) throws ClipNotMeasuredException {
        long startNs = System.nanoTime();
        measurer.measure(clip, times);
        return (System.nanoTime() - startNs) * 1e-9;
    }

    private static NetworkTiming timeNetwork(Setup setup) throws NetworkUnfitException {
        RunSettings settings = setup.settings();
        return setup.networks().time(settings.network(), settings.threads(), PICTURES_PER_WORKER);
    }

    private void report(
            ClipRow row,
            RunSettings settings,
            NetworkTiming[] timings,
            double firstS,
            double laterS,
            StageTimes times) {
        int looks = Look.of(settings.effort()).size();
        double aloneS = 0;
        for (NetworkTiming timing : timings) {
            aloneS += looks * row.frames() / timing.picturesPerSecond() / timings.length;
        }
        say("Clip: %s, %d frames, %d x %d", row.clip(), row.frames(), row.widthPx(), row.heightPx());
        say(
                "Network %s alone, %d looks at each frame, %d threads: %.2f s",
                settings.network(), looks, settings.threads(), aloneS);
        say("Whole clip, overlay included: %.2f s", laterS);
        say("Ratio: %.2f", laterS / aloneS);
        say("As the first clip of a run: %.2f s, ratio %.2f", firstS, firstS / aloneS);
        say("Stages:                  clock   share  processors");
        Map<String, Double> worked = times.processorSecondsByStage();
        times.secondsByStage()
                .forEach((stage, took) ->
                        say("  %-20s %7.2f s %5.1f %% %7.2f s", stage, took, 100 * took / laterS, worked.get(stage)));
    }

    private void say(String format, Object... values) {
        surroundings.console().say(String.format(Locale.ROOT, format, values));
    }
}
