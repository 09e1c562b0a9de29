package org.boardtopit.report.tables;

import org.boardtopit.clips.Label;

/** Which way the athlete goes in the picture. */
public enum Direction implements Label {
    LEFT_TO_RIGHT("left_to_right"),
    RIGHT_TO_LEFT("right_to_left");

    private final String label;

    Direction(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
