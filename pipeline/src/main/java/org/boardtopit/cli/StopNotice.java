package org.boardtopit.cli;

import java.nio.file.Path;

/** Says, when the process is stopped in the middle of a run, that what is measured is safe. */
final class StopNotice {
    private final Thread notice;

    private StopNotice(Thread notice) {
        this.notice = notice;
    }

    /** From now on. */
    static StopNotice post(Console console, Path out) {
        Thread notice = new Thread(
                () -> {
                    console.say("");
                    console.error("stopped; what is measured so far is in " + out);
                },
                "stop-notice");
        Runtime.getRuntime().addShutdownHook(notice);
        return new StopNotice(notice);
    }

    /** The run has come to its end. */
    void withdraw() {
        try {
            Runtime.getRuntime().removeShutdownHook(notice);
        } catch (IllegalStateException e) {
            // The process is being stopped just now: the notice is on its way, and it is true.
        }
    }
}
