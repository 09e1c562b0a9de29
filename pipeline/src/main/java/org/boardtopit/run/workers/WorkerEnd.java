package org.boardtopit.run.workers;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How a process ended, in words for the volunteer. */
final class WorkerEnd {
    /** A shell and Java both give 128 plus the number of the signal (POSIX numbers; MEM-H). */
    private static final int SIGNAL = 128;

    private static final Map<Integer, String> SIGNALS = Map.of(
            4, "crashed in native code",
            6, "crashed in native code",
            7, "crashed in native code",
            8, "crashed in native code",
            9, "was killed, by the system when memory ran out or by somebody",
            11, "crashed in native code",
            15, "was stopped by somebody");

    /** What Java prints when native code crashes; it then ends with code 1 when it is to leave no core file (SEEN, JDK 17). */
    private static final String CRASH = "A fatal error has been detected by the Java Runtime Environment";

    private static final Pattern CRASH_KIND = Pattern.compile("#\\s+(SIG[A-Z]+|EXCEPTION_[A-Z_]+)");

    private WorkerEnd() {}

    static String inWords(int exitValue, String lastWords) {
        if (lastWords.contains("OutOfMemoryError") || lastWords.contains("insufficient memory")) {
            return "ran out of memory";
        }
        if (lastWords.contains(CRASH)) {
            Matcher kind = CRASH_KIND.matcher(lastWords);
            return "crashed in native code" + (kind.find() ? " (" + kind.group(1) + ")" : "");
        }
        String signal = SIGNALS.get(exitValue - SIGNAL);
        return signal == null
                ? "ended unasked with code " + exitValue
                : signal + " (signal " + (exitValue - SIGNAL) + ")";
    }
}
