package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.boardtopit.cli.MeasurerFactory.OpenMeasurer;
import org.boardtopit.cli.MeasurerFactory.Setup;
import org.boardtopit.cli.RunNews.Wordiness;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.clips.Safeguards;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.observations.RuleSet;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.report.tables.WrittenRun;
import org.boardtopit.run.MeetRunner;
import org.boardtopit.run.RunFacts;
import org.boardtopit.run.RunSummary;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The main job: measures clips into an output folder. */
@Command(
        name = "process",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Measures clips and writes tables and overlay videos.",
        description = {
            "",
            "Everything is read and checked before the first clip is opened. A clip",
            "that cannot be measured gets a line in clips.csv that says why, and the",
            "run goes on. The tables are complete after every clip: a run that is",
            "stopped keeps what it has measured.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  A folder of clips, nothing else known (times, angles, no metres from marks):",
            "    boardtopit process clips --out results",
            "  A competition with its sheets (docs/inputs.md):",
            "    boardtopit process clips --meet meet.yaml --out results",
            "  Two clips, tables only:",
            "    boardtopit process a.mp4 b.mov --out results --no-overlay",
            "",
            "Exit codes: 0 all clips measured, 1 some not measured, 2 wrong input,",
            "3 a fault of the program."
        })
final class ProcessCommand implements Callable<Integer> {
    private final Surroundings surroundings;

    @Parameters(arity = "1..*", paramLabel = "CLIPS", description = "Folders of clips and single clips.")
    private List<Path> clips;

    @Option(names = "--meet", paramLabel = "FILE", description = "The competition's meet.yaml.")
    private Path meetFile;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "Folder for the results; made when it is not there. Earlier results in it are replaced.")
    private Path out;

    @Mixin
    private LandmarkOptions landmarks;

    @Option(names = "--no-overlay", description = "Make no overlay videos.")
    private boolean noOverlay;

    @ArgGroup
    private Loudness loudness = new Loudness();

    /** One of the two, or neither. */
    private static final class Loudness {
        @Option(names = "--quiet", description = "Say nothing but errors.")
        private boolean quiet;

        @Option(
                names = "--verbose",
                description = "Say the warnings of every clip, what was skipped and where the time went.")
        private boolean verbose;

        private Wordiness wordiness() {
            return quiet ? Wordiness.QUIET : verbose ? Wordiness.VERBOSE : Wordiness.NORMAL;
        }
    }

    ProcessCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException, NetworkUnfitException, IOException {
        MeetSheet meet = meetFile == null ? MeetSheet.NONE : MeetSheetReader.read(meetFile);
        RuleSet rules = RuleSetReader.of(meet);
        RunSettings settings = landmarks.settings(meet.settings());
        NetworkStore store = landmarks.networks().store(surroundings.engine());
        ClipList list = ClipList.join(ClipFolder.list(clips, out, meet.inputFiles()), meet);
        OutputFolder.prepare(out);
        RunNews news = new RunNews(surroundings.console(), loudness.wordiness());
        news.inputs(list);
        warnOfRetention(meet.safeguards());
        RunFacts facts = facts(Instant.now(), meet, settings, store);
        Setup setup = new Setup(meet, rules, settings, store, out, !noOverlay, list.views());
        try (OpenMeasurer measurer = surroundings.measurers().open(setup)) {
            TableWriter tables = new TableWriter(out, meet.tables());
            RunSummary summary = run(new MeetRunner(measurer, tables, out, facts, news), list);
            news.summary(summary, out, !noOverlay);
            return ExitCode.of(summary);
        }
    }

    private void warnOfRetention(Safeguards safeguards) {
        if (safeguards.hasExpired(LocalDate.now(ZoneId.systemDefault()))) {
            surroundings
                    .console()
                    .warning("the retention date " + safeguards.retention().orElseThrow() + " of " + meetFile
                            + " has passed; delete the clips, and see: boardtopit tidy " + out);
        }
    }

    private RunSummary run(MeetRunner runner, ClipList list) throws IOException {
        StopNotice notice = StopNotice.post(surroundings.console(), out);
        try {
            return runner.run(list);
        } finally {
            notice.withdraw();
        }
    }

    private static String word(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT);
    }

    private RunFacts facts(Instant startedAt, MeetSheet meet, RunSettings settings, NetworkStore store)
            throws NetworkUnfitException {
        Map<String, String> versions = new LinkedHashMap<>();
        versions.put("boardtopit", Version.number());
        versions.put("java", Runtime.version().toString());
        versions.put("system", System.getProperty("os.name") + " " + System.getProperty("os.arch"));
        versions.put("network_engine", surroundings.engine().description());
        Map<String, String> hashes = new LinkedHashMap<>();
        for (String name : List.of(settings.network(), NetworkStore.DEFAULT_DETECTOR)) {
            hashes.put(name, store.card(name).sha256());
        }
        Map<String, Object> used = new LinkedHashMap<>();
        used.put("clips", clips.stream().map(Path::toString).toList());
        used.put("meet", meetFile == null ? null : meetFile.toString());
        used.put("network", settings.network());
        used.put("threads", settings.threads());
        used.put("effort", settings.effort().label());
        used.put("overlay", !noOverlay);
        used.put("observations", meet.observationRules().map(Path::toString).orElse("built-in"));
        Safeguards safeguards = meet.safeguards();
        used.put("consent", word(safeguards.consent()));
        used.put("faces", word(safeguards.faces()));
        used.put("names", word(safeguards.names()));
        used.put(
                WrittenRun.RETENTION,
                safeguards.retention().map(LocalDate::toString).orElse(null));
        return new RunFacts(startedAt, versions, hashes, used);
    }
}
