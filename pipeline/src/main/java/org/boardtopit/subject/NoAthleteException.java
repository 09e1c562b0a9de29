package org.boardtopit.subject;

/** Nobody in the clip runs along a runway; the message says what was seen instead. */
public class NoAthleteException extends Exception {
    private static final long serialVersionUID = 1L;

    public NoAthleteException(String message) {
        super(message);
    }
}
