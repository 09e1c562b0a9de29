package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.report.tables.WrittenRun;
import org.boardtopit.run.ClipsNotComparedException;
import org.boardtopit.run.ComparisonMaker.Made;
import org.boardtopit.run.ComparisonMaker.Wish;
import org.boardtopit.run.RunLock;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Two attempts of finished runs beside and over each other. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Makes a video of two measured attempts, aligned phase by phase, and a table of what differs.",
        description = {
            "",
            "The phases of B are stretched to those of A, so that touchdowns and",
            "toe-offs coincide. Both athletes are shown close by, side by side, and",
            "over each other on the runway of A. The table holds only differences",
            "larger than their uncertainty; the last seconds of the video show the",
            "largest of them. The clips must still be where they were measured.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "  Two attempts of one competition, by the names of their clips:",
            "    boardtopit compare IMG_0412 IMG_0431 --out results",
            "  Of two competitions; the video goes to the results of the first:",
            "    boardtopit compare may/IMG_0412 june/IMG_0077",
            "  At true speed throughout, and not in slow motion:",
            "    boardtopit compare IMG_0412 IMG_0431 --out results --true-time --slow 1",
            "",
            "The video is comparisons/A-B.mp4 (in true time A-B-true_time.mp4), the table",
            "comparisons/A-B.csv; docs/comparison.md explains both.",
            "",
            "Exit codes: 0 done, 1 these two cannot be compared, 2 wrong input,",
            "3 a fault of the program."
        })
final class CompareCommand implements Callable<Integer> {
    static final int SLOW = 4;
    private static final int MOST_SLOW = 20;

    private final Surroundings surroundings;

    @Spec
    private CommandSpec command;

    @Parameters(
            index = "0",
            paramLabel = "A",
            description = "An attempt: the name of its clip in the folder of --out, or FOLDER/CLIP.")
    private String a;

    @Parameters(index = "1", paramLabel = "B", description = "The one to be compared with it.")
    private String b;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder of results, to which the comparison goes. Default: that of A.")
    private Path out;

    @Option(names = "--true-time", description = "Stretch nothing: only the touchdown on the board coincides.")
    private boolean trueTime;

    @Option(
            names = "--slow",
            paramLabel = "N",
            description = "How many times slower than it was, 1 to " + MOST_SLOW + ". Default: ${DEFAULT-VALUE}.",
            defaultValue = "" + SLOW)
    private int slow;

    @Option(names = "--of-run", hidden = true, description = "Started by process, which holds the lock.")
    private boolean ofRun;

    CompareCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException, NetworkUnfitException, IOException {
        if (slow < 1 || slow > MOST_SLOW) {
            throw new ParameterException(
                    command.commandLine(), "--slow must be from 1 to " + MOST_SLOW + ", was " + slow);
        }
        try {
            if (ofRun) {
                new ComparisonOfRun(out, surroundings.engine()).make(a, b);
            } else {
                tell(byHand());
            }
            return ExitCode.DONE;
        } catch (ClipsNotComparedException e) {
            surroundings.console().error(e.getMessage());
            return ExitCode.SOME_NOT_MEASURED;
        }
    }

    private Made byHand() throws ClipsNotComparedException, InputException, NetworkUnfitException, IOException {
        MeasuredClip first = MeasuredClip.find(a, Optional.ofNullable(out), surroundings.engine());
        MeasuredClip second = MeasuredClip.find(b, Optional.ofNullable(out), surroundings.engine());
        first.requireOtherThan(second);
        Path target = out != null ? out : first.kept().out();
        OutputFolder.prepare(target);
        MeetSheet meet = first.kept().meet();
        Wish wish = new Wish(target, trueTime, slow, meet.language(), meet.tables());
        try (RunLock lock = RunLock.take(target)) {
            OutputFolder.requireNotTidied(target);
            lock.results().removeHalfWritten();
            Made made = ComparisonOfRun.maker(first).make(first.kept(), second.kept(), wish);
            if (WrittenRun.in(target).isPresent()) {
                new TableWriter(target, meet.tables()).describe();
            }
            return made;
        }
    }

    private void tell(Made made) {
        Console console = surroundings.console();
        console.say("Differences: " + made.differences() + " of " + made.compared()
                + " numbers differ by more than is uncertain: " + made.table());
        console.say("Video:       " + made.video());
    }
}
