package org.boardtopit.run.workers;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.run.ClipFingerprints;
import org.boardtopit.run.ClipMeasurer;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.ClipResult;
import org.boardtopit.run.NotMeasuredNowException;
import org.boardtopit.run.RunLog;
import org.boardtopit.run.StageListener;
import org.boardtopit.run.StoredResult;
import org.boardtopit.run.StoredResults;
import org.boardtopit.run.StoringMeasurer;
import org.boardtopit.run.WorkerFaultException;

/**
 * Has clips measured by worker processes, as many at once as threads call it, up to the plan.
 *
 * <p>A worker that dies or hangs is written to the log with the stage it was in, and its clip is tried once more in a fresh worker
 * with gentler settings ({@link WorkerPlan#gentler()}); if that one dies too, the clip is not measured now. The numbers do not
 * depend on which worker measured, nor with how many threads.
 *
 * <p>Whoever opened it closes it. A worker whose supervisor is gone ends by itself.
 */
public final class WorkerFleet implements ClipMeasurer, AutoCloseable {
    /** Ctrl-C ends workers and supervisor together; what the workers' end means is clear only then. */
    private static final long AFTER_DEATH_MS = 500;

    private final WorkerStarter starter;
    private final WorkerPlan plan;
    private final TimeLimits limits;
    private final String setup;
    private final AttemptViews views;
    private final ClipFingerprints fingerprints;
    private final StoredResults results;
    private final Path work;
    private final RunLog log;
    private final Deque<WorkerProcess> idle = new ArrayDeque<>();
    private final Set<WorkerProcess> all = new HashSet<>();
    private Duration workedByEnded = Duration.ZERO;
    private boolean closed;
    private volatile boolean stopping;

    /**
     * A fleet without a worker yet.
     *
     * @param setup one line that the workers understand
     * @param out output folder
     */
    public WorkerFleet(
            WorkerStarter starter,
            WorkerPlan plan,
            TimeLimits limits,
            String setup,
            AttemptViews views,
            ClipFingerprints fingerprints,
            Path out) {
        this.starter = starter;
        this.plan = plan;
        this.limits = limits;
        this.setup = setup;
        this.views = views;
        this.fingerprints = fingerprints;
        this.results = new StoredResults(out);
        this.work = out.resolve("work");
        this.log = new RunLog(out);
    }

    /**
     * Starts the first worker, and with it tests whether this machine can measure. It also unpacks the native libraries, by
     * itself: two at once would get in each other's way.
     *
     * @throws NetworkUnfitException when it cannot; the message says why
     */
    public void startFirst() throws NetworkUnfitException {
        try {
            giveBack(startAtSecondTry());
        } catch (WorkerDiedException e) {
            log.add("the first worker " + e.getMessage(), e.lastWords());
            throw new NetworkUnfitException("the process that measures cannot be started: it " + e.getMessage() + "; "
                    + RunLog.FILE_NAME + " has more");
        }
    }

    private WorkerProcess startAtSecondTry() throws NetworkUnfitException, WorkerDiedException {
        try {
            return start(plan);
        } catch (WorkerDiedException e) {
            log.add("the first worker " + e.getMessage() + "; trying once more", e.lastWords());
            return start(plan);
        }
    }

    /** From now on the process is being stopped: the end of a worker is no clip's fault. */
    public void stopping() {
        stopping = true;
    }

    @Override
    public ClipResult measure(Clip clip, StageListener listener) throws ClipNotMeasuredException {
        WorkerJob job = job(clip);
        try {
            return measure(job, take(), false, listener);
        } catch (WorkerDiedException first) {
            note(clip, first, "; trying once more, gently");
            return measureGently(job, first, listener);
        } catch (NetworkUnfitException e) {
            throw new NotMeasuredNowException("start", e.getMessage(), e);
        }
    }

    private WorkerJob job(Clip clip) throws NotMeasuredNowException {
        try {
            List<Clip> joined = WorkerJob.joined(views, clip);
            return new WorkerJob(clip, joined, fingerprints.of(clip, joined));
        } catch (IOException e) {
            throw StoringMeasurer.cannotRead(clip, e);
        }
    }

    private ClipResult measureGently(WorkerJob job, WorkerDiedException first, StageListener listener)
            throws ClipNotMeasuredException {
        try {
            return measure(job, start(plan.gentler()), true, listener);
        } catch (WorkerDiedException second) {
            note(job.clip(), second, "; given up until the next start");
            throw new NotMeasuredNowException(
                    second.stage(),
                    "the process that measured it " + second.getMessage() + ", and the time before it "
                            + first.getMessage() + " (" + first.stage()
                            + "); start the same command again to try again",
                    second);
        } catch (NetworkUnfitException e) {
            throw new NotMeasuredNowException("start", e.getMessage(), e);
        }
    }

    /** Waits, so that nothing is recorded of a clip while the whole process is being stopped. */
    private void note(Clip clip, WorkerDiedException death, String then) {
        try {
            Thread.sleep(AFTER_DEATH_MS);
            if (stopping) {
                TimeUnit.DAYS.sleep(1); // the process ends in this time
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        log.add(
                clip.fileName() + ": stage " + death.stage() + ", its worker " + death.getMessage() + then,
                death.lastWords());
    }

    private ClipResult measure(WorkerJob job, WorkerProcess worker, boolean once, StageListener listener)
            throws WorkerDiedException, ClipNotMeasuredException {
        WorkerMessage last;
        try {
            last = worker.measure(job, limits, listener);
        } catch (WorkerDiedException | RuntimeException e) {
            end(worker);
            throw e;
        }
        if (once) {
            end(worker);
        } else {
            giveBack(worker);
        }
        return outcome(job, last);
    }

    private ClipResult outcome(WorkerJob job, WorkerMessage last) throws ClipNotMeasuredException {
        switch (last.kind()) {
            case NOT_NOW -> throw new NotMeasuredNowException(last.stage(), last.text(), null);
            case FAULT -> throw new WorkerFaultException(last.text(), last.details());
            default -> {
                Optional<StoredResult> stored = results.find(job.clip(), job.fingerprint());
                if (stored.isEmpty()) {
                    throw new NotMeasuredNowException(
                            "store", "its result in the folder work was taken away or damaged at once", null);
                }
                return of(stored.get());
            }
        }
    }

    private static ClipResult of(StoredResult stored) throws ClipNotMeasuredException {
        if (stored.result().isPresent()) {
            return stored.result().get().took(stored.seconds());
        }
        throw new ClipNotMeasuredException(stored.stage(), stored.reason(), stored.seconds(), null);
    }

    private WorkerProcess take() throws NetworkUnfitException, WorkerDiedException {
        synchronized (this) {
            while (!idle.isEmpty()) {
                WorkerProcess worker = idle.pop();
                if (worker.isAlive()) {
                    return worker;
                }
                end(worker);
            }
        }
        return start(plan);
    }

    private WorkerProcess start(WorkerPlan with) throws NetworkUnfitException, WorkerDiedException {
        WorkerProcess worker;
        synchronized (this) {
            if (closed) {
                throw new IllegalStateException("the fleet is closed");
            }
            try {
                worker = new WorkerProcess(starter, with, work, setup);
            } catch (IOException e) {
                throw new WorkerDiedException("start", "could not be started (" + e.getMessage() + ")", "");
            }
            all.add(worker);
        }
        try {
            worker.awaitReady();
        } catch (NetworkUnfitException | WorkerDiedException | RuntimeException e) {
            end(worker);
            throw e;
        }
        return worker;
    }

    private synchronized void giveBack(WorkerProcess worker) {
        idle.push(worker);
    }

    /** Processor time of all workers so far, as far as the system tells. */
    public synchronized Duration worked() {
        return all.stream().map(worker -> worker.worked().orElse(Duration.ZERO)).reduce(workedByEnded, Duration::plus);
    }

    private synchronized void end(WorkerProcess worker) {
        if (all.remove(worker)) {
            workedByEnded = workedByEnded.plus(worker.worked().orElse(Duration.ZERO));
        }
        worker.close();
    }

    @Override
    public synchronized void close() {
        closed = true;
        all.forEach(WorkerProcess::close);
        all.clear();
        idle.clear();
    }
}
