package org.boardtopit.measures;

/** How the effort is spread over the phases, by the rule in {@link Effort}. */
public enum EffortClass {
    HOP_DOMINATED("hop_dominated"),
    BALANCED("balanced"),
    JUMP_DOMINATED("jump_dominated"),
    /** The step leads by two points or more. The rule has no name for it, for it does not happen: look at the contacts. */
    STEP_LARGEST("step_largest");

    private final String label;

    EffortClass(String label) {
        this.label = label;
    }

    /** As written in tables. */
    public String label() {
        return label;
    }
}
