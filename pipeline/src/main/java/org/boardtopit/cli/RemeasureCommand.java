package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.boardtopit.clips.InputException;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.report.page.PageWriter;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.report.tables.WrittenRun;
import org.boardtopit.run.MeetRunner;
import org.boardtopit.run.Progress;
import org.boardtopit.run.RefusedHereException;
import org.boardtopit.run.Remeasuring;
import org.boardtopit.run.RunComparisons;
import org.boardtopit.run.RunFacts;
import org.boardtopit.run.RunInputs;
import org.boardtopit.run.RunListener;
import org.boardtopit.run.RunLock;
import org.boardtopit.run.RunSummary;
import org.boardtopit.season.AthleteRegister;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The analyst's job: results anew with corrections, in seconds. */
@Command(
        name = "remeasure",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Makes results anew with an analyst's corrections, without reading the clips again.",
        description = {
            "",
            "Measures, tables and the pictures of changed clips are made anew from what is",
            "kept in the folder work. The sheets count as they are now. All corrections",
            "are checked first; one that cannot be true is refused with its line, and",
            "nothing is changed (docs/corrections.md).",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  With results/corrections.csv:",
            "    boardtopit remeasure results",
            "  With the worksheet that review wrote, filled in:",
            "    boardtopit remeasure results --corrections results/review.csv",
            "",
            "Exit codes: 0 all clips measured, 1 some not measured, 2 wrong input or a",
            "refused correction, 3 a fault of the program."
        })
final class RemeasureCommand implements Callable<Integer> {
    private final Surroundings surroundings;

    @Parameters(paramLabel = "OUT", description = "Folder of results.")
    private Path out;

    @Option(
            names = "--corrections",
            paramLabel = "FILE",
            description = "The corrections. Default: those of the last start, else corrections.csv in OUT.")
    private Path correctionFile;

    @Option(names = "--quiet", description = "Say nothing but errors.")
    private boolean quiet;

    RemeasureCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException, NetworkUnfitException, IOException {
        RunInputs.of(out); // before the lock makes a folder work where there was none
        try (RunLock lock = RunLock.take(out)) {
            OutputFolder.requireNotTidied(out);
            lock.results().removeHalfWritten();
            KeptResults kept = KeptResults.in(out, correctionFile, surroundings.engine());
            warn(kept);
            return ExitCode.of(remeasure(kept));
        }
    }

    private void warn(KeptResults kept) {
        if (!quiet) {
            kept.list().warningLines().forEach(surroundings.console()::warning);
            String unread = kept.corrections().warning(out);
            if (!unread.isEmpty()) {
                surroundings.console().warning(unread);
            }
        }
    }

    private RunSummary remeasure(KeptResults kept) throws InputException, NetworkUnfitException, IOException {
        Instant startedAt = Instant.now();
        News news = new News();
        Remeasuring remeasuring = kept.remeasuring();
        try {
            remeasuring.find(kept.measurers(false), news);
        } catch (RefusedHereException e) {
            throw kept.refused(e);
        }
        boolean overlay = kept.inputs().overlay();
        remeasuring.keep(overlay ? Optional.of(kept.measurers(true)) : Optional.empty(), news);
        remembered(kept).write(out);
        MeetRunner runner = new MeetRunner(
                        remeasuring.others(),
                        new TableWriter(out, kept.meet().tables()),
                        out,
                        facts(startedAt, kept),
                        news)
                .with(new PageWriter(out, kept.meet()))
                .with(new RunComparisons(
                        overlay ? kept.meet().comparisons() : Set.of(),
                        ComparisonOfRun.whatIsMissing(surroundings, out, news::comparing)));
        RunSummary summary = runner.run(kept.list(), remeasuring.results());
        summary(summary, remeasuring.changed().size(), startedAt);
        return summary;
    }

    private static RunInputs remembered(KeptResults kept) {
        RunInputs then = kept.inputs();
        return new RunInputs(
                then.clips(),
                then.skipped(),
                then.meet(),
                then.networks(),
                kept.corrections().elsewhere(),
                then.settings(),
                then.overlay());
    }

    private RunFacts facts(Instant startedAt, KeptResults kept) throws NetworkUnfitException, IOException {
        Map<String, Object> settings =
                WrittenRun.in(out).map(WrittenRun::settings).orElseGet(LinkedHashMap::new);
        settings.put(MadeWith.CORRECTIONS, kept.corrections().fileName());
        settings.put("remeasured_at", startedAt.truncatedTo(ChronoUnit.SECONDS).toString());
        return new RunFacts(
                startedAt,
                MadeWith.versions(surroundings.engine()),
                MadeWith.hashes(kept.settings(), kept.store()),
                settings,
                AthleteRegister.of(kept.meet()));
    }

    private void summary(RunSummary summary, int changed, Instant startedAt) {
        if (quiet) {
            return;
        }
        double seconds = ChronoUnit.MILLIS.between(startedAt, Instant.now()) / 1e3;
        surroundings
                .console()
                .say("Measured " + changed + " of " + summary.clips() + (summary.clips() == 1 ? " clip" : " clips")
                        + " anew in " + Spoken.duration(seconds) + "; "
                        + (summary.notMeasured() == 0
                                ? "the tables in " + out + " have all of them"
                                : summary.notMeasured() + " not measured, clips.csv says which and why"));
    }

    /** One line for a clip that is measured or drawn anew. */
    private final class News implements Remeasuring.Listener, RunListener {
        @Override
        public void at(String clip, String what, int number, int of) {
            if (!quiet) {
                surroundings.console().say("[" + number + "/" + of + "] " + clip + ": " + what);
            }
        }

        void comparing(String a, String b) {
            if (!quiet) {
                surroundings.console().say("Comparing " + a + " with " + b);
            }
        }

        @Override
        public void trouble(String what) {
            surroundings.console().warning(what);
        }

        @Override
        public void begun(int kept, int clips) {
            // What is kept and what is not has been told by then.
        }

        @Override
        public void progress(Progress progress) {
            // Only tables are written.
        }

        @Override
        public void clipDone(ClipRow row, List<String> warnings, int number, int clips) {
            if (row.outcome() == Outcome.NOT_MEASURED) {
                surroundings.console().error(row.clip() + ": not measured (" + row.stage() + "): " + row.reason());
            }
        }
    }
}
