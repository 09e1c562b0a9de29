/**
 * Drives the stages for one clip and for a whole competition.
 *
 * <p>{@link org.boardtopit.run.ClipMeasurer} is the seam between the two: {@link org.boardtopit.run.MeetRunner} knows
 * nothing of how a clip is measured, and the work on one clip nothing of the others.
 */
package org.boardtopit.run;
