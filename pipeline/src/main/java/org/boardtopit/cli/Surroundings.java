package org.boardtopit.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.models.TensorEngine;

/**
 * Everything outside that the commands use, so that tests can put their own in its place.
 *
 * @param engine computes networks
 * @param measurers makes what measures clips
 * @param home the folder of the program, which holds the sample competition; empty when not started by the launcher
 */
record Surroundings(Console console, TensorEngine engine, MeasurerFactory measurers, Optional<Path> home) {}
