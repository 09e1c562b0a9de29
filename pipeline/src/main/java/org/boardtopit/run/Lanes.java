package org.boardtopit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Threads that take work from one queue until it is empty; one lane is the caller's own thread. */
final class Lanes {
    private final int count;

    Lanes(int count) {
        this.count = count;
    }

    /** Runs the work once on every lane and waits for all; what one of them throws ends the others and is thrown here. */
    void runAll(Runnable work) {
        if (count == 1) {
            work.run();
            return;
        }
        AtomicInteger number = new AtomicInteger();
        ExecutorService threads = Executors.newFixedThreadPool(count, task -> {
            Thread thread = new Thread(task, "lane-" + number.incrementAndGet());
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<?>> running = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                running.add(threads.submit(work));
            }
            for (Future<?> one : running) {
                one.get();
            }
        } catch (ExecutionException e) {
            throw unchecked(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the run was interrupted", e);
        } finally {
            threads.shutdownNow();
        }
    }

    private static RuntimeException unchecked(Throwable thrown) {
        if (thrown instanceof Error error) {
            throw error;
        }
        return thrown instanceof RuntimeException bug ? bug : new IllegalStateException(thrown);
    }
}
