package org.boardtopit.frontal;

/** Two clips of an attempt cannot be laid beside each other in time; the message says why. */
public class ClocksNotAlignedException extends Exception {
    private static final long serialVersionUID = 1L;

    public ClocksNotAlignedException(String message) {
        super(message);
    }
}
