package org.boardtopit.clips;

/** Which attempts of a competition are compared by themselves when all clips are measured. */
public enum AutomaticComparison implements Label {
    /** The best valid attempt of each athlete with the worst. */
    BEST_AND_WORST("best_and_worst"),
    /** The best attempt of a team with the best of each of the others. */
    TEAM_MATES("team_mates");

    private final String word;

    AutomaticComparison(String word) {
        this.word = word;
    }

    @Override
    public String label() {
        return word;
    }
}
