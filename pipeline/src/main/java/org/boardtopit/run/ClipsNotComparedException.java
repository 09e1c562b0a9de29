package org.boardtopit.run;

/** Two attempts cannot be compared; the message is one line that says why, and what to do about it where something can be done. */
public final class ClipsNotComparedException extends Exception {
    private static final long serialVersionUID = 1L;

    public ClipsNotComparedException(String message) {
        super(message);
    }

    public ClipsNotComparedException(String message, Throwable cause) {
        super(message, cause);
    }
}
