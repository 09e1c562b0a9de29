package org.boardtopit.report.overlay;

import org.boardtopit.models.BodyPoint;

/** The athlete's own left or right. */
public enum BodySide {
    LEFT,
    RIGHT;

    public BodySide other() {
        return this == LEFT ? RIGHT : LEFT;
    }

    /** The point of this side, given the left one of the pair. */
    public BodyPoint of(BodyPoint left) {
        return this == LEFT ? left : left.otherSide();
    }
}
