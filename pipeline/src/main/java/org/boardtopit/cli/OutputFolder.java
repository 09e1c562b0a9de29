package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.clips.InputException;
import org.boardtopit.report.tables.WrittenRun;

/** The folder for results. */
final class OutputFolder {
    private OutputFolder() {}

    /** Makes it and tries to write into it: better now than after the first clip. Touches nothing that is in it. */
    static void prepare(Path folder) throws InputException {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new InputException(folder, "the output must go to a folder, this is a file");
        }
        try {
            Files.createDirectories(folder);
            Files.delete(Files.createTempFile(folder, "write-test", ".part"));
        } catch (IOException e) {
            throw new InputException(
                    folder, "nothing can be written there (" + e.getClass().getSimpleName() + ")");
        }
    }

    /**
     * Refuses a folder that was tidied: names and pictures that somebody had removed, because their time was over or because
     * they were asked to, must not come back by starting yesterday's command again.
     */
    static void requireNotTidied(Path folder) throws InputException, IOException {
        Optional<String> day = WrittenRun.in(folder).flatMap(WrittenRun::tidiedOn);
        if (day.isPresent()) {
            throw new InputException(
                    folder,
                    "pictures, landmarks and names were removed from these results on " + day.get()
                            + " (boardtopit tidy) and would come back; take another --out if they may");
        }
    }
}
