package org.boardtopit.run;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * The stack traces of a run, for those who mend the program: the file run.log. It is there only when there are any, and
 * each is on disk before the next clip begins.
 */
final class RunLog {
    static final String FILE_NAME = "run.log";

    private final Path file;

    RunLog(Path folder) {
        this.file = folder.resolve(FILE_NAME);
    }

    /** An earlier run's log would be taken for this one's. */
    void begin() throws IOException {
        Files.deleteIfExists(file);
    }

    void add(String clip, String stage, Throwable bug) throws IOException {
        StringWriter text = new StringWriter();
        PrintWriter out = new PrintWriter(text);
        out.printf("%s, stage %s%n", clip, stage);
        bug.printStackTrace(out);
        out.println();
        out.flush();
        Files.writeString(
                file, text.toString(), StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }
}
