package org.boardtopit.run;

import java.time.Duration;

/** Is told how far a clip is; called from the thread that measures it. */
@FunctionalInterface
public interface StageListener {
    /**
     * A stage goes on.
     *
     * @param stage name of the stage, for people
     * @param share how much of the clip's work is done, 0 to 1
     */
    void at(String stage, double share);

    /**
     * How long the process that measures has kept processors busy since it began; told before a stage begins and after the last
     * one, where it is known and where it is another process.
     */
    default void worked(Duration processorTime) {}
}
