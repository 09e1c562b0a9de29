package org.boardtopit.run;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/**
 * Adds up how long each stage takes: a stage lasts from the first word of it until the first word of another, or until
 * {@link #pause()}. Use from one thread.
 */
public final class StageTimes implements StageListener {
    private final LongSupplier nanoTime;
    private final Map<String, Long> nanosByStage = new LinkedHashMap<>();
    private String stage;
    private long sinceNs;

    public StageTimes() {
        this(System::nanoTime);
    }

    StageTimes(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
    }

    @Override
    public void at(String name, double share) {
        if (!name.equals(stage)) {
            pause();
            stage = name;
            sinceNs = nanoTime.getAsLong();
        }
    }

    /** Ends the stage at work; time that passes until the next word of a stage belongs to none. */
    public void pause() {
        if (stage != null) {
            nanosByStage.merge(stage, nanoTime.getAsLong() - sinceNs, Long::sum);
            stage = null;
        }
    }

    /** Adds the stages of another that have ended. */
    void add(StageTimes other) {
        other.nanosByStage.forEach((name, nanos) -> nanosByStage.merge(name, nanos, Long::sum));
    }

    /** Seconds of the stages that have ended, in the order in which they were first heard of. */
    public Map<String, Double> secondsByStage() {
        Map<String, Double> seconds = new LinkedHashMap<>();
        nanosByStage.forEach((name, nanos) -> seconds.put(name, nanos * 1e-9));
        return seconds;
    }
}
