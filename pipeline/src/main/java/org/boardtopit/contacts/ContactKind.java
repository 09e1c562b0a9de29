package org.boardtopit.contacts;

/** What a contact with the ground is in the attempt. */
public enum ContactKind {
    APPROACH("approach"),
    BOARD("board"),
    HOP_LANDING("hop_landing"),
    STEP_LANDING("step_landing"),
    PIT("pit");

    private final String label;

    ContactKind(String label) {
        this.label = label;
    }

    /** As the tables print it. */
    public String label() {
        return label;
    }
}
