package org.boardtopit.run;

/**
 * A clip cannot be measured for a reason that is not the clip's: the disk is full, the file was taken away, the process that
 * measured it died. Nothing is stored of it, so that the next start of the run tries again.
 */
public class NotMeasuredNowException extends ClipNotMeasuredException {
    private static final long serialVersionUID = 1L;

    /** One clip's failure, for now. */
    public NotMeasuredNowException(String stage, String reason, Throwable cause) {
        super(stage, reason, cause);
    }
}
