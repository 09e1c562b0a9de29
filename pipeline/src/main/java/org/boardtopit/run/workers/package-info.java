/**
 * Measures clips in processes of their own, so that a crash of native code, a lack of memory or an endless loop costs one clip.
 *
 * <p>{@link org.boardtopit.run.workers.WorkerFleet} is the supervisor's side, a {@link org.boardtopit.run.ClipMeasurer} like
 * any other; {@link org.boardtopit.run.workers.WorkerLoop} is the worker's. Between them go one line of JSON for each job and
 * one for each event; results go through the folder work.
 */
package org.boardtopit.run.workers;
