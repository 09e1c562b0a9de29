package org.boardtopit.contacts;

/**
 * A stretch in which a foot moves slowly over the ground: perhaps a contact.
 *
 * @param touchdownS rough start, seconds
 * @param toeOffS rough end
 * @param slowness least ankle speed over running speed: 0 stands still, near 0.5 hardly slower than the body
 * @param alongM where the toe is in the middle of it
 * @param heightM height of the toe over the ground there
 * @param fromFirst true when the foot stood already when it was first seen: when it came down is not known
 * @param toLast true when it still stood when it was last seen
 */
record Candidate(
        Foot foot,
        double touchdownS,
        double toeOffS,
        double slowness,
        double alongM,
        double heightM,
        boolean fromFirst,
        boolean toLast) {

    /** A stretch of which both ends were seen. */
    Candidate(Foot foot, double touchdownS, double toeOffS, double slowness, double alongM, double heightM) {
        this(foot, touchdownS, toeOffS, slowness, alongM, heightM, false, false);
    }

    double middleS() {
        return (touchdownS + toeOffS) / 2;
    }

    boolean overlaps(Candidate other) {
        return touchdownS < other.toeOffS && other.touchdownS < toeOffS;
    }

    /** How much like a contact, 0 to 1. */
    double strength() {
        return Math.max(0.1, Math.min(1, 1.2 - 2 * slowness));
    }
}
