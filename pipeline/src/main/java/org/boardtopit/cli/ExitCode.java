package org.boardtopit.cli;

import org.boardtopit.run.RunSummary;

/** What the process tells its caller; README.md lists them. */
final class ExitCode {
    /** All clips that were to be measured are. */
    static final int DONE = 0;

    /** Some clips are not measured; clips.csv says why. */
    static final int SOME_NOT_MEASURED = 1;

    /** Something the user can put right: arguments, sheets, folders, networks. */
    static final int INPUT = 2;

    /** A bug, also one that cost a single clip only. */
    static final int BUG = 3;

    private ExitCode() {}

    static int of(RunSummary summary) {
        if (summary.bugs() > 0) {
            return BUG;
        }
        return summary.notMeasured() > 0 ? SOME_NOT_MEASURED : DONE;
    }
}
