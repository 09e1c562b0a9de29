package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import org.boardtopit.cli.MeasurerFactory.OpenMeasurer;
import org.boardtopit.cli.MeasurerFactory.Setup;
import org.boardtopit.cli.RunNews.Wordiness;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.clips.Safeguards;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.observations.RuleSet;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.report.page.PageWriter;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.report.tables.WrittenRun;
import org.boardtopit.run.ClipDigests;
import org.boardtopit.run.ClipFingerprints;
import org.boardtopit.run.ClipMeasurer;
import org.boardtopit.run.ClipResult;
import org.boardtopit.run.MeetRunner;
import org.boardtopit.run.RememberedDigests;
import org.boardtopit.run.RunComparisons;
import org.boardtopit.run.RunFacts;
import org.boardtopit.run.RunInputs;
import org.boardtopit.run.RunLock;
import org.boardtopit.run.RunSummary;
import org.boardtopit.run.StageListener;
import org.boardtopit.run.StoredResult;
import org.boardtopit.run.StoredResults;
import org.boardtopit.run.StoringMeasurer;
import org.boardtopit.run.workers.TimeLimits;
import org.boardtopit.run.workers.WorkerFleet;
import org.boardtopit.run.workers.WorkerJob;
import org.boardtopit.run.workers.WorkerPlan;
import org.boardtopit.run.workers.WorkerStarter;
import org.boardtopit.season.AthleteRegister;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The main job: measures clips into an output folder. */
@Command(
        name = "process",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Measures clips and writes tables, overlay videos, stills and a page.",
        description = {
            "",
            "Everything is read and checked before the first clip is opened. A clip",
            "that cannot be measured gets a line in clips.csv that says why, and the",
            "run goes on. The tables are complete after every clip: a run that is",
            "stopped, however, goes on with the next clip when the same command is",
            "started again (docs/operations.md).",
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

    @Spec
    private CommandSpec command;

    @Mixin
    private ClipOptions inputs;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "Folder for the results; made when it is not there. What it holds of the same clips is kept.")
    private Path out;

    @Mixin
    private LandmarkOptions landmarks;

    @Option(
            names = "--corrections",
            paramLabel = "FILE",
            description = "An analyst's corrections. Default: those of the last start, else corrections.csv in DIR.")
    private Path correctionFile;

    @Option(names = "--no-overlay", description = "Make no overlay videos, stills and comparisons.")
    private boolean noOverlay;

    @Option(
            names = "--workers",
            paramLabel = "N",
            description = "Processes that measure side by side, 1 to 64. Default: chosen for this machine.")
    private Integer workers;

    @Option(names = "--again", description = "Measure all clips anew, also those that an earlier start has done.")
    private boolean again;

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
        MeetSheet meet = inputs.meet();
        RuleSet rules = RuleSetReader.of(meet);
        RunSettings settings = landmarks.settings(meet.settings());
        NetworkStore store = landmarks.networks().store(surroundings.engine());
        ClipFolder folder = ClipFolder.list(inputs.clips(), out, inputFiles(meet));
        CorrectionFile corrections = CorrectionFile.of(correctionFile, RunInputs.find(out), out);
        ClipList list = corrections.joined(ClipList.join(folder, meet));
        requireWorkers();
        OutputFolder.prepare(out);
        RunNews news = new RunNews(surroundings.console(), loudness.wordiness());
        news.inputs(list);
        if (!corrections.warning(out).isEmpty()) {
            surroundings.console().warning(corrections.warning(out));
        }
        warnOfRetention(meet.safeguards());
        try (RunLock lock = RunLock.take(out)) {
            OutputFolder.requireNotTidied(out);
            RememberedDigests digests = new RememberedDigests(out);
            ClipFingerprints fingerprints =
                    Fingerprinting.of(meet, settings, store, ClipDigests.reading(out, digests::of));
            prepare(lock.results(), list);
            told(list, settings, corrections).write(out);
            Map<String, StoredResult> kept = EarlierResults.of(list, fingerprints, out, !noOverlay);
            Night night = new Night(meet, rules, settings, store, list, corrections, fingerprints, kept, news);
            RunSummary summary = night.run();
            digests.store();
            news.summary(summary, out, !noOverlay);
            return ExitCode.of(summary);
        }
    }

    /** Corrections may lie among the clips; in the output folder they are at home. */
    private Set<Path> inputFiles(MeetSheet meet) {
        Set<Path> files = new HashSet<>(meet.inputFiles());
        if (correctionFile != null) {
            Path file = correctionFile.toAbsolutePath().normalize();
            if (!out.toAbsolutePath().normalize().equals(file.getParent())) {
                files.add(file);
            }
        }
        return files;
    }

    private RunInputs told(ClipList list, RunSettings settings, CorrectionFile corrections) {
        return new RunInputs(
                list.clips().stream().map(Clip::file).toList(),
                list.skipped(),
                inputs.meetFile(),
                landmarks.networks().folder(),
                corrections.elsewhere(),
                settings,
                !noOverlay);
    }

    private void requireWorkers() {
        if (workers != null && (workers < 1 || workers > RunSettings.MOST_WORKERS)) {
            throw new ParameterException(
                    command.commandLine(),
                    "--workers must be from 1 to " + RunSettings.MOST_WORKERS + ", was " + workers);
        }
    }

    private void prepare(StoredResults results, ClipList list) throws IOException {
        results.removeHalfWritten();
        if (again) {
            for (Clip clip : list.clips()) {
                results.forget(clip);
            }
        }
    }

    /** One run, its inputs read and its folder locked. */
    private final class Night {
        private final MeetSheet meet;
        private final RuleSet rules;
        private final RunSettings settings;
        private final NetworkStore store;
        private final ClipList list;
        private final CorrectionFile corrections;
        private final ClipFingerprints fingerprints;
        private final Map<String, StoredResult> kept;
        private final RunNews news;
        private final Instant startedAt = Instant.now();

        Night(
                MeetSheet meet,
                RuleSet rules,
                RunSettings settings,
                NetworkStore store,
                ClipList list,
                CorrectionFile corrections,
                ClipFingerprints fingerprints,
                Map<String, StoredResult> kept,
                RunNews news) {
            this.meet = meet;
            this.rules = rules;
            this.settings = settings;
            this.store = store;
            this.list = list;
            this.corrections = corrections;
            this.fingerprints = fingerprints;
            this.kept = kept;
            this.news = news;
        }

        RunSummary run() throws NetworkUnfitException, IOException {
            int clips = (int) list.clips().stream()
                    .filter(clip -> clip.isAgreed() && !kept.containsKey(clip.name()))
                    .count();
            if (clips == 0) {
                return measure(Night::nothingToMeasure, 1, 0, settings.threads());
            }
            return surroundings.workers().isPresent()
                    ? inWorkers(surroundings.workers().get(), clips)
                    : inThisProcess();
        }

        /** All clips are kept or withheld. */
        private static ClipResult nothingToMeasure(Clip clip, StageListener listener) {
            throw new IllegalStateException(clip.fileName() + " should be done already");
        }

        private RunSummary inThisProcess() throws NetworkUnfitException, IOException {
            Setup setup = new Setup(meet, rules, settings, store, out, !noOverlay, list.views());
            try (OpenMeasurer measurer = surroundings.measurers().open(setup)) {
                AttemptViews views = list.views();
                ClipMeasurer storing = new StoringMeasurer(
                        measurer, out, clip -> fingerprints.of(clip, WorkerJob.joined(views, clip)));
                return measure(storing, 1, 0, settings.threads());
            }
        }

        private RunSummary inWorkers(WorkerStarter starter, int clips) throws NetworkUnfitException, IOException {
            Machine machine = Machine.here();
            WorkerPlan plan = WorkerPlan.choose(
                    machine.cores(),
                    machine.memoryBytes(),
                    workers != null ? workers : settings.workers(),
                    landmarks.networks().threadsSaid(meet.settings()),
                    clips);
            news.plan(plan.inWords(machine.cores(), machine.memoryBytes()));
            String setup = new WorkerSetup(meet, landmarks.networks().folder(), settings, out, !noOverlay).line();
            try (WorkerFleet fleet =
                    new WorkerFleet(starter, plan, TimeLimits.DEFAULT, setup, list.views(), fingerprints, out)) {
                Thread stopping = new Thread(fleet::stopping, "stopping");
                Runtime.getRuntime().addShutdownHook(stopping);
                fleet.startFirst();
                RunSummary summary = measure(fleet, plan.workers(), plan.workers(), plan.threads());
                removeHook(stopping);
                return summary;
            }
        }

        private RunSummary measure(ClipMeasurer measurer, int lanes, int processes, int threads)
                throws NetworkUnfitException, IOException {
            TableWriter tables = new TableWriter(out, meet.tables());
            RunFacts facts = facts(startedAt, meet, settings, store, corrections, processes, threads);
            MeetRunner runner = new MeetRunner(measurer, lanes, tables, out, facts, news)
                    .with(new PageWriter(out, meet))
                    .with(new RunComparisons(
                            noOverlay ? Set.of() : meet.comparisons(),
                            ComparisonOfRun.whatIsMissing(surroundings, out, news::comparing)));
            StopNotice notice = StopNotice.post(surroundings.console(), out);
            try {
                return runner.run(list, kept);
            } finally {
                notice.withdraw();
            }
        }
    }

    static void removeHook(Thread hook) {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException e) {
            // The process is being stopped just now, and the hook has done its work.
        }
    }

    private void warnOfRetention(Safeguards safeguards) {
        if (safeguards.hasExpired(LocalDate.now(ZoneId.systemDefault()))) {
            surroundings
                    .console()
                    .warning("the retention date " + safeguards.retention().orElseThrow() + " of "
                            + inputs.meetFile().map(Path::toString).orElse("meet.yaml")
                            + " has passed; delete the clips, and see: boardtopit tidy " + out);
        }
    }

    private static String word(Enum<?> choice) {
        return choice.name().toLowerCase(Locale.ROOT);
    }

    private RunFacts facts(
            Instant startedAt,
            MeetSheet meet,
            RunSettings settings,
            NetworkStore store,
            CorrectionFile corrections,
            int processes,
            int threads)
            throws NetworkUnfitException {
        Map<String, Object> used = new LinkedHashMap<>();
        used.put("clips", inputs.clips().stream().map(Path::toString).toList());
        used.put("meet", inputs.meetFile().map(Path::toString).orElse(null));
        used.put(MadeWith.CORRECTIONS, corrections.fileName());
        used.put("network", settings.network());
        used.put("workers", processes);
        used.put("threads", threads);
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
        return new RunFacts(
                startedAt,
                MadeWith.versions(surroundings.engine()),
                MadeWith.hashes(settings, store),
                used,
                AthleteRegister.of(meet));
    }
}
