package org.boardtopit.run.workers;

import java.io.IOException;
import java.nio.file.Path;

/** Starts a process that runs a {@link WorkerLoop}. */
@FunctionalInterface
public interface WorkerStarter {
    /**
     * The process, with its standard output and error as one stream. The caller ends it.
     *
     * @param plan threads and heap of the worker
     * @param token of its channel
     * @param work folder for what a crash leaves behind
     */
    Process start(WorkerPlan plan, String token, Path work) throws IOException;
}
