package org.boardtopit.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.models.TensorEngine;
import org.boardtopit.run.workers.WorkerStarter;

/**
 * Everything outside that the commands use, so that tests can put their own in its place.
 *
 * @param engine computes networks
 * @param measurers makes what measures clips in this process
 * @param workers starts the processes that measure the clips of a run; empty to measure them in this one
 * @param home the folder of the program, which holds the sample competition; empty when not started by the launcher
 */
record Surroundings(
        Console console,
        TensorEngine engine,
        MeasurerFactory measurers,
        Optional<WorkerStarter> workers,
        Optional<Path> home) {}
