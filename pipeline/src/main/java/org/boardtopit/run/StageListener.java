package org.boardtopit.run;

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
}
