package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.boardtopit.accuracy.AccuracyFigures;
import org.boardtopit.accuracy.AccuracyReport;
import org.boardtopit.accuracy.ClipScore;
import org.boardtopit.accuracy.ClipScorer;
import org.boardtopit.accuracy.FiguresComparison;
import org.boardtopit.accuracy.FiguresFile;
import org.boardtopit.accuracy.Gains;
import org.boardtopit.cli.MeasurerFactory.OpenMeasurer;
import org.boardtopit.cli.MeasurerFactory.Setup;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.fit.Assumptions;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.run.ClipNotMeasuredException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Measures clips of which the truth is known, and writes how far off the measures are. */
@Command(
        name = "accuracy",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Measures how far off the measures are, on clips with known truth.",
        description = {
            "",
            "Takes every clip of the folder that has its truth beside it (docs/inputs.md",
            "describes the two files) and writes a report in Markdown and the same",
            "numbers as JSON. In a report that is there already only the part between",
            "the two comments 'measured by boardtopit accuracy' is replaced. Landmarks",
            "in the output folder are used again.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  boardtopit accuracy footage --out results",
            "  boardtopit accuracy footage --out results --report docs/accuracy.md",
            "  What got better or worse since an earlier run:",
            "    boardtopit accuracy footage --out results --compare earlier.json"
        })
final class AccuracyCommand implements Callable<Integer> {
    private static final String MEET_FILE = "meet.yaml";

    private final Surroundings surroundings;

    @Parameters(paramLabel = "FOOTAGE", description = "Folder of clips with their truth.")
    private Path footage;

    @Option(
            names = "--meet",
            paramLabel = "FILE",
            description = "The competition's meet.yaml. Default: the one in FOOTAGE, if any.")
    private Path meetFile;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "Folder for landmarks and report; made when it is not there.")
    private Path out;

    @Option(
            names = "--report",
            paramLabel = "FILE",
            description = "The report, FILE.md; the numbers go beside it, as FILE.json. Default: accuracy.md in DIR.")
    private Path report;

    @Option(
            names = "--compare",
            paramLabel = "JSON",
            description = "Numbers of an earlier run; says what is better or worse now.")
    private Path earlier;

    @Option(
            names = "--each-assumption",
            description = "Also measures with each assumption of the whole-clip fit left out, to see what it gains.")
    private boolean eachAssumption;

    @Mixin
    private LandmarkOptions landmarks;

    AccuracyCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException, NetworkUnfitException, IOException {
        MeetSheet meet = meet();
        ClipList list = ClipList.join(ClipFolder.list(List.of(footage), out, meet.inputFiles()), meet);
        Map<Clip, ClipScorer> scorers = scorers(list);
        OutputFolder.prepare(out);
        Path file = report == null ? out.resolve("accuracy.md") : report;
        AccuracyReport.check(file);
        // Read before it may be written over.
        AccuracyFigures before = earlier == null ? null : FiguresFile.read(earlier);
        Map<String, List<ClipScore>> variants = scores(meet, scorers);
        List<ClipScore> scores = variants.values().iterator().next();
        AccuracyFigures figures = AccuracyFigures.of(scores);
        Path numbers = file.resolveSibling(withoutEnding(file) + ".json");
        AccuracyReport.write(file, figures, scores, Gains.of(variants), Version.number());
        FiguresFile.write(numbers, figures, Version.number());
        surroundings.console().say("Report:  " + file);
        surroundings.console().say("Numbers: " + numbers);
        if (before != null) {
            FiguresComparison.lines(before, figures)
                    .forEach(line -> surroundings.console().say(line));
        }
        boolean all = scores.stream().allMatch(s -> s.notMeasured().isEmpty());
        return all ? ExitCode.DONE : ExitCode.SOME_NOT_MEASURED;
    }

    private MeetSheet meet() throws InputException {
        if (meetFile != null) {
            return MeetSheetReader.read(meetFile);
        }
        Path beside = footage.resolve(MEET_FILE);
        return Files.isRegularFile(beside) ? MeetSheetReader.read(beside) : MeetSheet.NONE;
    }

    /** All truth is read before the first clip is opened. */
    private Map<Clip, ClipScorer> scorers(ClipList list) throws InputException {
        Map<Clip, ClipScorer> scorers = new LinkedHashMap<>();
        for (Clip clip : list.clips()) {
            if (clip.view() != Camera.View.SIDE) {
                surroundings.console().warning(clip.fileName() + ": left out, it is not from the side");
            } else if (ClipScorer.knowsTruthOf(clip)) {
                scorers.put(clip, ClipScorer.of(clip));
            } else {
                surroundings.console().warning(clip.fileName() + ": left out, its truth is not known");
            }
        }
        if (scorers.isEmpty()) {
            throw new InputException(footage, "no clip here has its truth beside it, <clip>.truth.json");
        }
        return scorers;
    }

    /** Scores of all clips by what is assumed, all assumptions first. */
    private Map<String, List<ClipScore>> scores(MeetSheet meet, Map<Clip, ClipScorer> scorers)
            throws InputException, NetworkUnfitException {
        NetworkStore store = landmarks.networks().store(surroundings.engine());
        Setup setup = new Setup(meet, RuleSetReader.of(meet), landmarks.settings(meet.settings()), store, out, false);
        Map<String, List<ClipScore>> scores = new LinkedHashMap<>();
        int done = 0;
        try (OpenMeasurer measurer = surroundings.measurers().open(setup)) {
            for (Map.Entry<Clip, ClipScorer> entry : scorers.entrySet()) {
                score(measurer, entry.getKey(), entry.getValue())
                        .forEach((name, score) -> scores.computeIfAbsent(name, k -> new ArrayList<>())
                                .add(score));
                done++;
                surroundings
                        .console()
                        .say("[" + done + "/" + scorers.size() + "] "
                                + entry.getKey().fileName());
            }
        }
        return scores;
    }

    private Map<String, ClipScore> score(OpenMeasurer measurer, Clip clip, ClipScorer scorer) throws InputException {
        Map<String, ClipScore> scores = new LinkedHashMap<>();
        try {
            ClipLandmarks read = measurer.landmarks(clip, (stage, share) -> {});
            for (Map.Entry<String, Assumptions> variant : Assumptions.variants().entrySet()) {
                if (eachAssumption || scores.isEmpty()) {
                    scores.put(variant.getKey(), scorer.score(read, variant.getValue()));
                }
            }
            return scores;
        } catch (ClipNotMeasuredException e) {
            surroundings.console().error(clip.fileName() + ": not measured (" + e.stage() + "): " + e.getMessage());
            Assumptions.variants().keySet().stream()
                    .filter(name -> eachAssumption || scores.isEmpty())
                    .forEach(name -> scores.put(name, scorer.notMeasured(e.getMessage())));
            return scores;
        }
    }

    private static String withoutEnding(Path file) {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }
}
