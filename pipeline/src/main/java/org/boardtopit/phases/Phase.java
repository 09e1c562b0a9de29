package org.boardtopit.phases;

/**
 * A part of the attempt.
 *
 * @param startS seconds from the first frame
 * @param endS end, not before the start
 */
public record Phase(PhaseName name, double startS, double endS) {

    public Phase {
        if (!(endS >= startS)) {
            throw new IllegalArgumentException("endS must not be before startS, was " + startS + " > " + endS);
        }
    }
}
