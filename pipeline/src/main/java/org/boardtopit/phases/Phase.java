package org.boardtopit.phases;

import org.boardtopit.clips.Label;

/**
 * A part of the attempt.
 *
 * @param number 1 for the first of its name, 2 for the second; 0 when there is one only
 * @param startS seconds from the first frame
 * @param endS end, not before the start
 */
public record Phase(PhaseName name, int number, double startS, double endS) implements Label {

    public Phase {
        if (number < 0) {
            throw new IllegalArgumentException("number must not be negative, was " + number);
        }
        if (!(endS >= startS)) {
            throw new IllegalArgumentException("endS must not be before startS, was " + startS + " > " + endS);
        }
    }

    /** The only one of its name. */
    public Phase(PhaseName name, double startS, double endS) {
        this(name, 0, startS, endS);
    }

    /** The name, with the number where there are several: hop, or hop_1. */
    @Override
    public String label() {
        return number == 0 ? name.label() : name.label() + "_" + number;
    }
}
