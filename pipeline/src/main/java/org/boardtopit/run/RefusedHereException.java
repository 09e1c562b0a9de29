package org.boardtopit.run;

import org.boardtopit.corrections.RefusedCorrectionException;

/** A correction that cannot be true of its clip: nothing is measured of it until somebody has put the line right. */
public final class RefusedHereException extends NotMeasuredNowException {
    private static final long serialVersionUID = 1L;

    private final int line;
    private final String column;

    RefusedHereException(RefusedCorrectionException refused) {
        super(
                "corrections",
                "corrections, line " + refused.line() + ", column " + refused.column() + ": " + refused.getMessage(),
                refused);
        this.line = refused.line();
        this.column = refused.column();
    }

    /** Line of the file of corrections, counted from 1. */
    public int line() {
        return line;
    }

    /** Its column. */
    public String column() {
        return column;
    }

    /** What is wrong with it, without the place. */
    public String problem() {
        return getCause().getMessage();
    }
}
