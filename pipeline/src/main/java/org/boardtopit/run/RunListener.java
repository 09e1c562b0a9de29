package org.boardtopit.run;

import java.util.List;
import org.boardtopit.report.tables.ClipRow;

/** Is told how a run goes; called from the thread that runs it. What it throws ends the run. */
public interface RunListener {

    /** A clip goes on; called often. */
    void progress(Progress progress);

    /**
     * A clip is done, measured or not, and the tables have it.
     *
     * @param warnings of a measured clip, one sentence each
     * @param number of the clip, from 1
     * @param clips how many there are
     */
    void clipDone(ClipRow row, List<String> warnings, int number, int clips);

    /** The run goes on, but the user should know at once; one line. */
    void trouble(String what);
}
