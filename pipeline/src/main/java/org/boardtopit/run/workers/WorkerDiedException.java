package org.boardtopit.run.workers;

/** A worker ended or was ended while it had a clip; the message says how. */
final class WorkerDiedException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String stage;
    private final String lastWords;

    WorkerDiedException(String stage, String how, String lastWords) {
        super(how);
        this.stage = stage;
        this.lastWords = lastWords;
    }

    /** In which stage of the clip; start when it was in none. */
    String stage() {
        return stage;
    }

    /** The last lines that the process printed. */
    String lastWords() {
        return lastWords;
    }
}
