package org.boardtopit.run;

import java.util.List;
import org.boardtopit.report.tables.ClipRow;

/**
 * Is told how a run goes; called by one thread at a time, also where clips are measured side by side. What it throws ends the
 * run.
 */
public interface RunListener {

    /**
     * The run begins.
     *
     * @param kept clips that an earlier start has done
     * @param clips how many there are
     */
    void begun(int kept, int clips);

    /** A clip goes on; called often. */
    void progress(Progress progress);

    /**
     * A clip is done, measured or not, and the tables have it.
     *
     * @param warnings of a measured clip, one sentence each
     * @param number of clips that are done, this one too
     * @param clips how many there are
     */
    void clipDone(ClipRow row, List<String> warnings, int number, int clips);

    /** The run goes on, but the user should know at once; one line. */
    void trouble(String what);
}
