package org.boardtopit.report.tables;

/** The foot, or feet, on the ground. */
public enum Foot implements Label {
    LEFT("L"),
    RIGHT("R"),
    /** Into the pit. */
    BOTH("both");

    private final String label;

    Foot(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
