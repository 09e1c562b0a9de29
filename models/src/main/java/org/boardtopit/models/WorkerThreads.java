package org.boardtopit.models;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Lets all workers of a network work at once, each on a thread of its own, as a run does. */
final class WorkerThreads {
    private WorkerThreads() {}

    /** What one worker does. */
    interface Task<R> {
        R run(NetworkWorker worker) throws NetworkUnfitException;
    }

    /**
     * Runs the task on every worker and waits for all.
     *
     * @return the results in the order of the workers
     * @throws NetworkUnfitException the first worker's that failed, in their order
     */
    static <R> List<R> runAll(NetworkCard card, List<? extends NetworkWorker> workers, Task<R> task)
            throws NetworkUnfitException {
        ExecutorService threads = Executors.newFixedThreadPool(workers.size());
        try {
            List<Future<R>> running = new ArrayList<>();
            for (NetworkWorker worker : workers) {
                running.add(threads.submit(() -> task.run(worker)));
            }
            return results(card, running);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new NetworkUnfitException("testing network " + card.name() + " was interrupted", e);
        } finally {
            threads.shutdownNow();
        }
    }

    /** Waits for all, also after a failure: nothing native may be closed under a worker. */
    private static <R> List<R> results(NetworkCard card, List<Future<R>> running)
            throws InterruptedException, NetworkUnfitException {
        List<R> results = new ArrayList<>();
        NetworkUnfitException first = null;
        for (Future<R> one : running) {
            try {
                results.add(one.get());
            } catch (ExecutionException e) {
                first = first == null ? unfit(card, e.getCause()) : first;
            }
        }
        if (first != null) {
            throw first;
        }
        return results;
    }

    private static NetworkUnfitException unfit(NetworkCard card, Throwable cause) {
        return cause instanceof NetworkUnfitException unfit
                ? unfit
                : new NetworkUnfitException("network " + card.name() + " fails: " + cause.getMessage(), cause);
    }
}
