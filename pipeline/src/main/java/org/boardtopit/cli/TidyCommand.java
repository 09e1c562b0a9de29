package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.boardtopit.clips.InputException;
import org.boardtopit.report.tables.WrittenRun;
import org.boardtopit.run.RunLock;
import org.boardtopit.run.Tidying;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes pictures, landmarks and names out of an output folder when their time is over. */
@Command(
        name = "tidy",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Removes pictures, landmarks and names from results whose retention date has passed.",
        description = {
            "",
            "The date is that of the key retention in meet.yaml when the results were",
            "made. Tables stay, with athletes numbered and without bibs. The clips",
            "themselves are not touched: where they are, only you know. From then on",
            "process refuses the folder, so that nothing comes back by mistake.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "    boardtopit tidy results --dry-run",
            "    boardtopit tidy results",
            "    boardtopit tidy results --now",
            "",
            "Exit codes: 0 done, or not yet due; 2 wrong input, 3 a fault of the program."
        })
final class TidyCommand implements Callable<Integer> {
    private final Surroundings surroundings;

    @Parameters(paramLabel = "OUT", description = "Folder of results.")
    private Path folder;

    @Option(names = "--now", description = "Do it before the date, or when there is none.")
    private boolean now;

    @Option(names = "--dry-run", description = "Only say what would be removed.")
    private boolean dryRun;

    TidyCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException, IOException {
        WrittenRun run = resultsIn(folder);
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        Optional<LocalDate> last = run.retention();
        boolean due = now || last.filter(day -> day.isBefore(today)).isPresent();
        Console console = surroundings.console();
        if (!due) {
            console.say(last.map(day -> "May be kept until " + day + ".")
                            .orElse("There is no retention date (docs/safeguarding.md).")
                    + " Nothing is removed; --now does it all the same.");
        }
        if (dryRun) {
            tell("would be removed", new Tidying(folder, run).look());
        } else if (due) {
            // Not while a run writes into it: what is removed would come back.
            try (RunLock lock = RunLock.take(folder)) {
                tell("removed", new Tidying(folder, resultsIn(folder)).tidy(today, lock));
            }
        }
        return ExitCode.DONE;
    }

    private static WrittenRun resultsIn(Path folder) throws InputException, IOException {
        if (!Files.isDirectory(folder)) {
            throw new InputException(folder, "there is no such folder");
        }
        return WrittenRun.in(folder)
                .orElseThrow(() -> new InputException(
                        folder,
                        "not a folder of results: it has no run.json of this program, so nothing in it is touched"));
    }

    private void tell(String done, Tidying.Removed removed) {
        Console console = surroundings.console();
        console.say("Pictures " + done + ": " + removed.pictures());
        console.say("Files read from clips " + done + ": " + removed.landmarks());
        console.say("Rows with names or bibs that " + (dryRun ? "would be" : "were") + " cleared: " + removed.names());
    }
}
