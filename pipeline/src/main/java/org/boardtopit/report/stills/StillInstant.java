package org.boardtopit.report.stills;

import org.boardtopit.clips.Label;

/** When a still is taken. */
public enum StillInstant implements Label {
    TOUCHDOWN("touchdown", 0),
    /** Half-way between touchdown and toe-off. */
    MID_SUPPORT("mid_support", 1),
    TOE_OFF("toe_off", 2),
    /** Half-way between a toe-off and the touchdown after it. */
    FLIGHT("flight", 3);

    private final String label;
    private final int row;

    StillInstant(String label, int row) {
        this.label = label;
        this.row = row;
    }

    /** Which row of the strip it has, from the top, counted from 0. */
    public int row() {
        return row;
    }

    /** A part of the file's name. */
    @Override
    public String label() {
        return label;
    }
}
