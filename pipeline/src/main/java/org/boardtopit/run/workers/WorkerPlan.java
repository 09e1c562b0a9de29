package org.boardtopit.run.workers;

import java.util.Locale;
import org.boardtopit.clips.RunSettings;

/**
 * How many workers measure at once, and with what each.
 *
 * @param workers processes
 * @param threads of each for the network, for decoding and for encoding
 * @param heapMiB Java heap of each; frames and networks live outside of it
 */
public record WorkerPlan(int workers, int threads, int heapMiB) {
    private static final int MOST_WORKERS = RunSettings.MOST_WORKERS;

    /** A long clip needs some hundred bytes a frame; the launcher's own limit, measured to be enough for ten minutes. */
    public static final int HEAP_MIB = 512;

    /** Resident memory of a worker on 1080p was measured at 0.8 GiB; twice that leaves room for 4K. */
    private static final long WORKER_BYTES = 1600L << 20;

    /** For the system and the supervisor. */
    private static final long RESERVED_BYTES = 1L << 30;

    /** Half of the stages run on one thread, so many narrow workers use a machine better than few wide ones. */
    private static final int THREADS_OF_WIDE_MACHINES = 2;

    private static final int WIDE_MACHINE_CORES = 8;

    /** Beyond it a worker's other stages keep the threads waiting; a first guess, not tuned. */
    private static final int MOST_CHOSEN_THREADS = 8;

    public WorkerPlan {
        if (workers < 1 || workers > MOST_WORKERS || threads < 1 || heapMiB < 1) {
            throw new IllegalArgumentException(
                    "workers must be 1 to 64 and threads 1 or more, were " + workers + ", " + threads);
        }
    }

    /**
     * Chooses what is not said.
     *
     * @param cores processors of this machine
     * @param memoryBytes memory of this machine
     * @param workers wanted; 0 to choose
     * @param threads wanted for each worker; 0 to choose
     * @param clips that are to be measured; more workers would stand idle
     */
    public static WorkerPlan choose(int cores, long memoryBytes, int workers, int threads, int clips) {
        int wide = cores >= WIDE_MACHINE_CORES ? THREADS_OF_WIDE_MACHINES : 1;
        int byCores = Math.max(1, cores / (threads > 0 ? threads : wide));
        int byMemory = (int) Math.max(1, Math.min(MOST_WORKERS, (memoryBytes - RESERVED_BYTES) / WORKER_BYTES));
        int chosen = workers > 0 ? workers : Math.min(byCores, byMemory);
        int count = Math.max(1, Math.min(Math.min(chosen, MOST_WORKERS), clips));
        int each = threads > 0 ? threads : Math.max(1, Math.min(MOST_CHOSEN_THREADS, cores / count));
        return new WorkerPlan(count, each, HEAP_MIB);
    }

    /** For a clip on which a worker died: one thread, in which nothing can race, and twice the heap. Same numbers. */
    public WorkerPlan gentler() {
        return new WorkerPlan(1, 1, 2 * heapMiB);
    }

    /** For people. */
    public String inWords(int cores, long memoryBytes) {
        return String.format(
                Locale.ROOT,
                "%d worker%s of %d thread%s and %d MB of Java heap each (%d processor%s, %.1f GB of memory)",
                workers,
                workers == 1 ? "" : "s",
                threads,
                threads == 1 ? "" : "s",
                heapMiB,
                cores,
                cores == 1 ? "" : "s",
                memoryBytes / 1e9);
    }
}
