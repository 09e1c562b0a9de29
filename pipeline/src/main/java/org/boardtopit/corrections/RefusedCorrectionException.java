package org.boardtopit.corrections;

import org.boardtopit.clips.Correction;

/**
 * A correction that cannot be true of its clip. Unchecked because it is thrown from the middle of the measuring, where nobody can
 * decide; whoever has the file of corrections tells the analyst.
 */
public final class RefusedCorrectionException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final int line;
    private final String column;

    RefusedCorrectionException(Correction correction, String column, String reason) {
        super(reason);
        this.line = correction.line();
        this.column = column;
    }

    /** Line of the file of corrections, counted from 1. */
    public int line() {
        return line;
    }

    /** Its column. */
    public String column() {
        return column;
    }
}
