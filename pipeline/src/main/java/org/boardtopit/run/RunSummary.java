package org.boardtopit.run;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What became of the clips of a run.
 *
 * @param measured clips with results, those with warnings included
 * @param withWarnings of these, the ones with warnings
 * @param notMeasured clips without results that should have some, bugs included
 * @param bugs of these, the ones on which the program itself failed
 * @param withheld clips that were not opened because the athlete did not agree
 * @param skipped files that are no clips
 * @param kept clips of all of these that an earlier start of the run had done
 * @param seconds the run took
 * @param secondsByStage of all clips together, in the order of the stages
 */
public record RunSummary(
        int measured,
        int withWarnings,
        int notMeasured,
        int bugs,
        int withheld,
        int skipped,
        int kept,
        double seconds,
        Map<String, Double> secondsByStage) {

    public RunSummary {
        secondsByStage = Collections.unmodifiableMap(new LinkedHashMap<>(secondsByStage));
        if (withWarnings > measured || bugs > notMeasured) {
            throw new IllegalArgumentException("a part is larger than its whole: " + withWarnings + " of " + measured
                    + ", " + bugs + " of " + notMeasured);
        }
    }

    /** All clips, withheld ones included. */
    public int clips() {
        return measured + notMeasured + withheld;
    }
}
