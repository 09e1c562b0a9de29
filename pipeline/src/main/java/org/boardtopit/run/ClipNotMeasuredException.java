package org.boardtopit.run;

/** A clip cannot be measured; the run goes on with the next. */
public class ClipNotMeasuredException extends Exception {
    private static final long serialVersionUID = 1L;

    private final String stage;
    private final double seconds;

    /**
     * One clip's failure.
     *
     * @param stage where it stopped, in the words of clips.csv
     * @param reason one line for the volunteer
     */
    public ClipNotMeasuredException(String stage, String reason, Throwable cause) {
        this(stage, reason, Double.NaN, cause);
    }

    /**
     * One clip's failure, which took some time.
     *
     * @param stage where it stopped, in the words of clips.csv
     * @param reason one line for the volunteer
     * @param seconds it took; NaN when nobody has measured it
     */
    public ClipNotMeasuredException(String stage, String reason, double seconds, Throwable cause) {
        super(reason, cause);
        this.stage = stage;
        this.seconds = seconds;
    }

    public String stage() {
        return stage;
    }

    /** The attempt took; NaN when it was not measured. */
    public double seconds() {
        return seconds;
    }
}
