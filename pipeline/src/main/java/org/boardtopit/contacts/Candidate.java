package org.boardtopit.contacts;

/**
 * A stretch in which a foot moves slowly over the ground: perhaps a contact.
 *
 * @param touchdownS rough start, seconds
 * @param toeOffS rough end
 * @param slowness least ankle speed over running speed: 0 stands still, near 0.5 hardly slower than the body
 * @param alongM where the toe is in the middle of it
 * @param heightM height of the toe over the ground there
 */
record Candidate(Foot foot, double touchdownS, double toeOffS, double slowness, double alongM, double heightM) {

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
