package org.boardtopit.contacts;

import org.boardtopit.clips.Label;
import org.boardtopit.models.BodyPoint;

/** A foot of the athlete, or both together in the pit. */
public enum Foot implements Label {
    LEFT("L"),
    RIGHT("R"),
    BOTH("both");

    private final String label;

    Foot(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }

    public Foot other() {
        return this == LEFT ? RIGHT : this == RIGHT ? LEFT : BOTH;
    }

    public BodyPoint hip() {
        return this == LEFT ? BodyPoint.LEFT_HIP : BodyPoint.RIGHT_HIP;
    }

    public BodyPoint knee() {
        return this == LEFT ? BodyPoint.LEFT_KNEE : BodyPoint.RIGHT_KNEE;
    }

    public BodyPoint ankle() {
        return this == LEFT ? BodyPoint.LEFT_ANKLE : BodyPoint.RIGHT_ANKLE;
    }

    public BodyPoint heel() {
        return this == LEFT ? BodyPoint.LEFT_HEEL : BodyPoint.RIGHT_HEEL;
    }

    public BodyPoint toe() {
        return this == LEFT ? BodyPoint.LEFT_TOE : BodyPoint.RIGHT_TOE;
    }
}
