package org.boardtopit.accuracy;

/** Where in the attempt a frame lies, as far as it matters for how well a point is seen. */
enum Part {
    APPROACH("approach"),
    /** A foot is down on the board or at the landings of hop and step. */
    CONTACT("contact"),
    FLIGHT("flight"),
    /** In the pit. */
    LANDING("landing");

    private final String label;

    Part(String label) {
        this.label = label;
    }

    String label() {
        return label;
    }
}
