package org.boardtopit.run.workers;

import java.util.Map;

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

    private WorkerEnd() {}

    static String inWords(int exitValue, String lastWords) {
        if (lastWords.contains("OutOfMemoryError") || lastWords.contains("insufficient memory")) {
            return "ran out of memory";
        }
        String signal = SIGNALS.get(exitValue - SIGNAL);
        return signal == null
                ? "ended unasked with code " + exitValue
                : signal + " (signal " + (exitValue - SIGNAL) + ")";
    }
}
