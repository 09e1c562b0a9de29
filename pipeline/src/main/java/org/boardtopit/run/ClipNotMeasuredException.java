package org.boardtopit.run;

/** A clip cannot be measured; the run goes on with the next. */
public class ClipNotMeasuredException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String stage;

    /**
     * One clip's failure.
     *
     * @param stage where it stopped, in the words of clips.csv
     * @param reason one line for the volunteer
     */
    public ClipNotMeasuredException(String stage, String reason, Throwable cause) {
        super(reason, cause);
        this.stage = stage;
    }

    public String stage() {
        return stage;
    }
}
