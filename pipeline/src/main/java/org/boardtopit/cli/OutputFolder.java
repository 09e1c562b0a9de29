package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.boardtopit.clips.InputException;

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
}
