package org.boardtopit.measures;

import org.boardtopit.clips.Label;

/** How the arms go with a take-off. */
public enum ArmAction implements Label {
    /** One arm swings forward with the free leg, the other back. */
    SINGLE("single"),
    /** Both swing forward together. */
    DOUBLE("double"),
    /** They go on as in running: against each other, with a smaller swing. */
    RUNNING("running"),
    /** Neither clearly together nor clearly against each other. */
    MIXED("mixed"),
    /** The far arm is hidden or its points are too unsure. */
    NOT_SEEN("not_seen");

    private final String label;

    ArmAction(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
