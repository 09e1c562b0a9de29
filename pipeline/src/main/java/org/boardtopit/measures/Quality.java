package org.boardtopit.measures;

import org.boardtopit.clips.Label;

/** How far the numbers of an attempt can be trusted. */
public enum Quality implements Label {
    GOOD("good"),
    USABLE("usable"),
    POOR("poor");

    private final String label;

    Quality(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
