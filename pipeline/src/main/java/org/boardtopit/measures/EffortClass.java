package org.boardtopit.measures;

import org.boardtopit.clips.Label;

/** How the effort is spread over the phases, by the rule in {@link Effort}. */
public enum EffortClass implements Label {
    HOP_DOMINATED("hop_dominated"),
    BALANCED("balanced"),
    JUMP_DOMINATED("jump_dominated"),
    /** The step leads by two points or more. The rule has no name for it, for it does not happen: look at the contacts. */
    STEP_LARGEST("step_largest");

    private final String label;

    EffortClass(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
