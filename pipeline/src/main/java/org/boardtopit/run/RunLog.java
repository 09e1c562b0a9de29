package org.boardtopit.run;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * What happened, line by line, in the file run.log: for the volunteer in the morning, and with the traces of faults, indented,
 * for those who mend the program. Every start of a run adds to it. A line is in the file before the next thing begins. May
 * be used from several threads.
 */
public final class RunLog {
    public static final String FILE_NAME = "run.log";

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ssxxx", Locale.ROOT);

    private final Path file;
    private final Clock clock;
    private IOException failure;

    public RunLog(Path folder) {
        this(folder, Clock.system(ZoneId.systemDefault()));
    }

    RunLog(Path folder, Clock clock) {
        this.file = folder.resolve(FILE_NAME);
        this.clock = clock;
    }

    /** One event. A log that cannot be written stops nothing; {@link #failure()} tells. */
    public void add(String event) {
        append(OffsetDateTime.now(clock).format(TIME) + "  " + oneLine(event) + "\n");
    }

    /** A fault of the program, with its trace. */
    public void add(String event, Throwable fault) {
        StringWriter text = new StringWriter();
        fault.printStackTrace(new PrintWriter(text, true));
        add(event, text.toString());
    }

    /** An event with text that belongs to it, indented. */
    public void add(String event, String details) {
        StringBuilder text = new StringBuilder();
        details.lines()
                .forEach(line -> text.append("    ").append(oneLine(line)).append('\n'));
        append(OffsetDateTime.now(clock).format(TIME) + "  " + oneLine(event) + "\n" + text);
    }

    private synchronized void append(String text) {
        try {
            Files.writeString(file, text, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
            failure = null;
        } catch (IOException e) {
            failure = e;
        }
    }

    /** What kept the last event from being written, or null. */
    synchronized IOException failure() {
        return failure;
    }

    /** Names of files may hold line ends. */
    private static String oneLine(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> shown.appendCodePoint(Character.isISOControl(c) && c != '\t' ? '?' : c));
        return shown.toString();
    }
}
