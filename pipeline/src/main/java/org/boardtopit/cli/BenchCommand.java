package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.boardtopit.cli.MeasurerFactory.OpenMeasurer;
import org.boardtopit.cli.MeasurerFactory.Setup;
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
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.pose.Look;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.OutputFiles;
import org.boardtopit.run.StageTimes;
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
            ""
        },
        footer = {"", "Examples:", "    boardtopit bench", "    boardtopit bench clip.mp4 --meet meet.yaml --threads 2"
        })
final class BenchCommand implements Callable<Integer> {
    private static final int PICTURES_PER_WORKER = 100;
    private static final String SAMPLE_MEET = "sample-config/competition/meet.yaml";
    private static final String SAMPLE_CLIP = "sample-config/competition/A1_static_720p60.mp4";

    private final Surroundings surroundings;

    @Spec
    private CommandSpec command;

    @Parameters(arity = "0..1", paramLabel = "CLIP", description = "The clip. Default: one of the sample competition.")
    private Path clipFile;

    @Option(names = "--meet", paramLabel = "FILE", description = "The competition's meet.yaml.")
    private Path meetFile;

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
            clipFile = home.resolve(SAMPLE_CLIP);
            meetFile = meetFile == null ? home.resolve(SAMPLE_MEET) : meetFile;
        }
    }

    private int bench(Clip clip, Setup setup) throws NetworkUnfitException, InputException, IOException {
        NetworkTiming before = timeNetwork(setup);
        StageTimes times = new StageTimes();
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
        say("Stages:");
        times.secondsByStage()
                .forEach((stage, took) -> say("  %-20s %7.2f s %5.1f %%", stage, took, 100 * took / laterS));
    }

    private void say(String format, Object... values) {
        surroundings.console().say(String.format(Locale.ROOT, format, values));
    }
}
