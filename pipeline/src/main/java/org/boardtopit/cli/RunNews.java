package org.boardtopit.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boardtopit.clips.ClipList;
import org.boardtopit.report.stills.StillNames;
import org.boardtopit.report.tables.AthleteRow;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.PhaseRow;
import org.boardtopit.run.Progress;
import org.boardtopit.run.RunListener;
import org.boardtopit.run.RunSummary;

/** Tells the user how a run goes: a line for every clip, and on a terminal a bar that moves. */
final class RunNews implements RunListener {
    /** How much is told. */
    enum Wordiness {
        QUIET,
        NORMAL,
        VERBOSE
    }

    private final Console console;
    private final Wordiness wordiness;
    private final ProgressBar bar;

    RunNews(Console console, Wordiness wordiness) {
        this.console = console;
        this.wordiness = wordiness;
        this.bar = new ProgressBar(console.out());
    }

    @Override
    public void begun(int kept, int clips) {
        if (kept > 0 && wordiness != Wordiness.QUIET) {
            console.say(kept + " of " + clips + (clips == 1 ? " clip is" : " clips are")
                    + " done by an earlier start and kept; --again measures all anew");
        }
    }

    /** With what the clips are measured. */
    void plan(String inWords) {
        if (wordiness != Wordiness.QUIET) {
            console.say("Measuring with " + inWords);
        }
    }

    @Override
    public void progress(Progress progress) {
        if (console.terminal() && wordiness != Wordiness.QUIET) {
            bar.show(progress);
        }
    }

    @Override
    public void clipDone(ClipRow row, List<String> warnings, int number, int clips) {
        bar.clear();
        if (row.outcome() == Outcome.NOT_MEASURED) {
            console.error(row.clip() + ": not measured (" + row.stage() + "): " + row.reason());
        } else if (wordiness != Wordiness.QUIET) {
            console.say("[" + number + "/" + clips + "] " + row.clip() + ": " + whatBecame(row));
        }
        if (wordiness == Wordiness.VERBOSE) {
            warnings.forEach(warning -> console.say("    " + warning));
        }
    }

    private static String whatBecame(ClipRow row) {
        return switch (row.outcome()) {
            case MEASURED -> "measured in " + Spoken.duration(row.seconds());
            case MEASURED_WITH_WARNINGS -> "measured with warnings in " + Spoken.duration(row.seconds());
            default -> row.outcome().label() + ": " + row.reason();
        };
    }

    @Override
    public void trouble(String what) {
        bar.clear();
        console.warning(what);
    }

    /** A comparison is made, behind the last clip. */
    void comparing(String a, String b) {
        if (wordiness != Wordiness.QUIET) {
            console.say("Comparing " + a + " with " + b);
        }
    }

    /** The last words of a run. */
    void summary(RunSummary summary, Path out, boolean overlays) {
        if (wordiness == Wordiness.QUIET) {
            return;
        }
        console.say("");
        console.say("Measured " + summary.measured() + " of " + summary.clips()
                + (summary.clips() == 1 ? " clip in " : " clips in ") + Spoken.duration(summary.seconds())
                + exceptions(summary));
        console.say("Tables:   " + out.resolve(ClipRow.TABLE.fileName()) + ", " + AttemptRow.TABLE.fileName() + ", "
                + PhaseRow.TABLE.fileName() + ", " + ContactRow.TABLE.fileName() + ", " + IntervalRow.TABLE.fileName()
                + ", " + ObservationRow.TABLE.fileName() + ", " + AthleteRow.TABLE.fileName());
        if (overlays && summary.measured() > 0) {
            console.say("Overlays: " + out.resolve("overlays"));
            console.say("Stills:   " + out.resolve(StillNames.FOLDER));
        }
        if (wordiness == Wordiness.VERBOSE) {
            console.say("Time by stage:");
            summary.secondsByStage()
                    .forEach((stage, seconds) -> console.say("  " + stage + ": " + Spoken.duration(seconds)));
        }
    }

    /** What was wrong with the inputs without stopping the run, and in many words what was left out. */
    void inputs(ClipList list) {
        if (wordiness != Wordiness.QUIET) {
            list.warningLines().forEach(console::warning);
        }
        if (wordiness == Wordiness.VERBOSE) {
            list.skipped().forEach(file -> console.say("skipped " + file.file() + ": " + file.reason()));
        }
    }

    private static String exceptions(RunSummary summary) {
        List<String> parts = new ArrayList<>();
        addCount(parts, summary.withWarnings(), "with warnings");
        addCount(parts, summary.notMeasured(), "not measured");
        addCount(parts, summary.withheld(), "withheld");
        addCount(parts, summary.skipped(), summary.skipped() == 1 ? "other file skipped" : "other files skipped");
        return parts.isEmpty() ? "" : " (" + String.join(", ", parts) + "; clips.csv says which and why)";
    }

    private static void addCount(List<String> parts, int count, String what) {
        if (count > 0) {
            parts.add(count + " " + what);
        }
    }
}
