package org.boardtopit.measures;

import org.boardtopit.clips.Label;

/** Where metres come from. */
public enum ScaleSource implements Label {
    /** Marks of the runway on the camera's reference picture. */
    MARKS("marks"),
    /** The official distance. */
    OFFICIAL("official"),
    /** The athlete's standing height. */
    STATURE("stature"),
    /** There are no metres. */
    NONE("none");

    private final String label;

    ScaleSource(String label) {
        this.label = label;
    }

    /** True when it is known where the take-off line is: from marks, or from the mark in the sand at the official distance. */
    public boolean tellsTakeoffLine() {
        return this == MARKS || this == OFFICIAL;
    }

    @Override
    public String label() {
        return label;
    }
}
