package org.boardtopit.clips;

/** The foot on the board. */
public enum TakeoffFoot {
    LEFT("L"),
    RIGHT("R");

    private final String letter;

    TakeoffFoot(String letter) {
        this.letter = letter;
    }

    /** L or R. */
    public String letter() {
        return letter;
    }
}
