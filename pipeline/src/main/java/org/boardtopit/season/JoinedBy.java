package org.boardtopit.season;

import org.boardtopit.clips.Label;

/** By what an athlete was known again from one competition to the next, the surest first. */
public enum JoinedBy implements Label {
    ID("id"),
    NAME_AND_BORN("name_and_born"),
    /** The year of birth is missing on at least one side, and no one else has the name. */
    NAME("name"),
    /** Only when the user says that bibs stay. */
    BIB("bib"),
    /** Seen in one competition only. */
    NOTHING("nothing");

    private final String label;

    JoinedBy(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }
}
