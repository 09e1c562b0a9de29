package org.boardtopit.clips;

/** How much work the landmark network is given for each frame. */
public enum Effort implements Label {
    QUICK("quick"),
    NORMAL("normal"),
    THOROUGH("thorough");

    private final String word;

    Effort(String word) {
        this.word = word;
    }

    @Override
    public String label() {
        return word;
    }
}
