package org.boardtopit.phases;

import org.boardtopit.clips.Label;

/** A part of the attempt, in the order of time; those of a drill are named after its pattern. */
public enum PhaseName implements Label {
    APPROACH("approach"),
    HOP("hop"),
    STEP("step"),
    JUMP("jump"),
    SKIP("skip"),
    LANDING("landing");

    private final String label;

    PhaseName(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
