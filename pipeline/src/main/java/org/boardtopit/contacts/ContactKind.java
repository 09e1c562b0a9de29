package org.boardtopit.contacts;

import org.boardtopit.clips.Label;

/** What a contact with the ground is in the attempt. */
public enum ContactKind implements Label {
    APPROACH("approach"),
    BOARD("board"),
    HOP_LANDING("hop_landing"),
    STEP_LANDING("step_landing"),
    PIT("pit"),
    /** A contact of a drill clip, whose pattern is not a triple jump. */
    DRILL("drill");

    private final String label;

    ContactKind(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
