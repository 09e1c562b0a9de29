package org.boardtopit.report.tables;

import org.boardtopit.clips.Label;

/** What became of a clip. */
public enum Outcome implements Label {
    MEASURED("measured"),
    MEASURED_WITH_WARNINGS("measured_with_warnings"),
    NOT_MEASURED("not_measured"),
    /** The athlete did not agree. */
    WITHHELD("withheld"),
    /** Not a clip, or left out on purpose. */
    SKIPPED("skipped");

    private final String label;

    Outcome(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
