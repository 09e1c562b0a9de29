package org.boardtopit.report.tables;

/** How the distance is shared out over the three phases (Hay 1992). */
public enum EffortClass implements Label {
    /** The hop leads the next largest phase by 2 points or more. */
    HOP_DOMINATED("hop_dominated"),
    /** The largest phase leads by less than 2 points. */
    BALANCED("balanced"),
    /** The jump leads the next largest phase by 2 points or more. */
    JUMP_DOMINATED("jump_dominated"),
    /** Not a class of Hay's: the step is the largest, so the contacts need a look. */
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
