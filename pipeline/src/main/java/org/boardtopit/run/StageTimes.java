package org.boardtopit.run;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongSupplier;

/**
 * Adds up how long each stage takes, and for how long it keeps processors busy: a stage lasts from the first word of it until the
 * first word of another, or until {@link #pause()}. Use from one thread.
 */
public final class StageTimes implements StageListener {
    private final LongSupplier nanoTime;
    private final LongSupplier ownWork;
    private final Map<String, Long> nanosByStage = new LinkedHashMap<>();
    private final Map<String, Long> workByStage = new LinkedHashMap<>();
    private String stage;
    private long sinceNs;
    private long workSinceNs;
    private long toldWorkNs;

    /** Of stages in another process, which tells how long it has worked. */
    public StageTimes() {
        this(System::nanoTime);
    }

    /**
     * Of stages in this process.
     *
     * @param ownWork how long this process has kept processors busy, in ns
     */
    public static StageTimes ofThisProcess(LongSupplier ownWork) {
        return new StageTimes(System::nanoTime, ownWork);
    }

    StageTimes(LongSupplier nanoTime) {
        this(nanoTime, null);
    }

    private StageTimes(LongSupplier nanoTime, LongSupplier ownWork) {
        this.nanoTime = nanoTime;
        this.ownWork = ownWork;
    }

    @Override
    public void worked(Duration processorTime) {
        toldWorkNs = processorTime.toNanos();
    }

    private long workNs() {
        return ownWork == null ? toldWorkNs : ownWork.getAsLong();
    }

    @Override
    public void at(String name, double share) {
        if (!name.equals(stage)) {
            pause();
            stage = name;
            sinceNs = nanoTime.getAsLong();
            workSinceNs = workNs();
        }
    }

    /** Ends the stage at work; time that passes until the next word of a stage belongs to none. */
    public void pause() {
        if (stage != null) {
            nanosByStage.merge(stage, nanoTime.getAsLong() - sinceNs, Long::sum);
            workByStage.merge(stage, workNs() - workSinceNs, Long::sum);
            stage = null;
        }
    }

    /** Adds the stages of another that have ended. */
    public void add(StageTimes other) {
        other.nanosByStage.forEach((name, nanos) -> nanosByStage.merge(name, nanos, Long::sum));
        other.workByStage.forEach((name, nanos) -> workByStage.merge(name, nanos, Long::sum));
    }

    /** Seconds of the stages that have ended, in the order in which they were first heard of. */
    public Map<String, Double> secondsByStage() {
        return seconds(nanosByStage);
    }

    /** Seconds of processor time, all processors together, of the same stages; 0 where nobody told. */
    public Map<String, Double> processorSecondsByStage() {
        return seconds(workByStage);
    }

    private static Map<String, Double> seconds(Map<String, Long> nanosByName) {
        Map<String, Double> seconds = new LinkedHashMap<>();
        nanosByName.forEach((name, nanos) -> seconds.put(name, nanos * 1e-9));
        return seconds;
    }
}
