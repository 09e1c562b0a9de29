package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.Correction;
import org.boardtopit.clips.Correction.Field;
import org.boardtopit.clips.CorrectionReader;
import org.boardtopit.clips.InputException;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.report.ReviewSheet;
import org.boardtopit.report.tables.ReviewRow;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.run.ClipResult;
import org.boardtopit.run.RefusedHereException;
import org.boardtopit.run.Remeasuring;
import org.boardtopit.run.RunInputs;
import org.boardtopit.run.RunLock;
import org.boardtopit.run.StoredResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the worksheet for the analyst. */
@Command(
        name = "review",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Writes a worksheet of all touchdowns and toe-offs, the doubtful ones first.",
        description = {
            "",
            "The file review.csv in OUT has a row for every event as the program found it,",
            "and the corrections in force in their places. Fill in value, by and note",
            "where the program was wrong, then: boardtopit remeasure OUT --corrections",
            "OUT/review.csv (docs/corrections.md).",
            ""
        },
        footer = {
            "",
            "Example:",
            "    boardtopit review results",
            "",
            "Exit codes: 0 done, 2 wrong input, 3 a fault of the program."
        })
final class ReviewCommand implements Callable<Integer> {
    private final Surroundings surroundings;

    @Parameters(paramLabel = "OUT", description = "Folder of results.")
    private Path out;

    @Option(
            names = "--corrections",
            paramLabel = "FILE",
            description = "The corrections in force. Default: those of the last start, else corrections.csv in OUT.")
    private Path correctionFile;

    ReviewCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException, NetworkUnfitException, IOException {
        RunInputs.of(out); // before the lock makes a folder work where there was none
        try (RunLock lock = RunLock.take(out)) {
            lock.results().removeHalfWritten();
            KeptResults kept = KeptResults.in(out, correctionFile, surroundings.engine());
            requireNoUnusedWork(kept);
            ReviewSheet sheet = sheet(kept);
            Path file = new TableWriter(out, kept.meet().tables()).write(ReviewRow.TABLE, sheet.rows());
            surroundings
                    .console()
                    .say("Worksheet: " + file + ", " + sheet.rows().size() + " rows");
            return ExitCode.DONE;
        }
    }

    /** Nobody's work is written over: what was filled in must be in force, and so come back in the new worksheet. */
    private void requireNoUnusedWork(KeptResults kept) throws InputException {
        Path file = out.resolve(ReviewRow.TABLE.fileName());
        if (!Files.exists(file)) {
            return;
        }
        Set<List<String>> inForce = new HashSet<>();
        kept.list().clips().forEach(clip -> clip.corrections().forEach(c -> inForce.add(key(clip, c))));
        for (Clip clip : CorrectionReader.read(file).joined(kept.list()).clips()) {
            for (Correction correction : clip.corrections()) {
                if (!inForce.contains(key(clip, correction))) {
                    throw new InputException(
                            file,
                            correction.line(),
                            "value",
                            "this correction is not in force, and a new worksheet would lose it: use it with remeasure "
                                    + out + " --corrections " + file + ", or move the file away");
                }
            }
        }
    }

    /** A contact may be called by its number here and by its kind there. */
    private static List<String> key(Clip clip, Correction c) {
        return List.of(clip.name(), c.field().label(), c.text(), c.by(), c.note());
    }

    private ReviewSheet sheet(KeptResults kept) throws InputException, NetworkUnfitException, IOException {
        KeptResults asFound = kept.with(asFound(kept.list()));
        Remeasuring remeasuring = asFound.remeasuring();
        try {
            remeasuring.find(asFound.measurers(false), new Silent());
        } catch (RefusedHereException e) {
            throw kept.refused(e);
        }
        ReviewSheet sheet = new ReviewSheet();
        for (Clip clip : kept.list().clips()) {
            Optional<ClipResult> result = Optional.ofNullable(
                            remeasuring.results().get(clip.name()))
                    .flatMap(StoredResult::result)
                    .filter(r -> r.joinedTo().isEmpty());
            if (result.isPresent()) {
                sheet.add(result.get().attempt(), result.get().contacts(), clip.corrections());
            } else {
                sheet.add(clip.fileName(), clip.corrections());
            }
        }
        return sheet;
    }

    /** With only those corrections that say where the athlete is: contacts are numbered as they are found then. */
    private static ClipList asFound(ClipList list) {
        List<Clip> clips = list.clips().stream()
                .map(clip -> clip.with(clip.corrections().stream()
                        .filter(c -> c.field() == Field.NOT_THE_ATHLETE)
                        .toList()))
                .toList();
        return new ClipList(clips, list.skipped(), list.warnings(), list.gone());
    }

    /** Measuring what is not stored takes a second each. */
    private static final class Silent implements Remeasuring.Listener {
        @Override
        public void at(String clip, String what, int number, int of) {
            // The worksheet tells.
        }

        @Override
        public void trouble(String what) {
            // Nothing is drawn here.
        }
    }
}
