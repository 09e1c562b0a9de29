package org.boardtopit.ground;

/** The marks of a camera do not determine where it stands. The message says what is wrong with them. */
public class CalibrationException extends Exception {
    private static final long serialVersionUID = 1L;

    public CalibrationException(String message) {
        super(message);
    }
}
