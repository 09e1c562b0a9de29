package org.boardtopit.frontal;

/**
 * How the clock of a clip goes against that of the one from the side.
 *
 * @param seconds what has to be added to a time of the side clip to have the time in the other one
 * @param sdS standard deviation
 */
public record ClockOffset(double seconds, double sdS) {
    public ClockOffset {
        if (!Double.isFinite(seconds) || !(sdS > 0)) {
            throw new IllegalArgumentException("an offset is finite and has an sd, was " + seconds + ", " + sdS);
        }
    }
}
