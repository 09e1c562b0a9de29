package org.boardtopit.accuracy;

/**
 * Whether the contacts were found.
 *
 * @param sequences attempts
 * @param sequencesRight attempts of which board, hop landing and step landing have the right foot at about the right time and
 *     the pit was found
 * @param approachTrue approach contacts that happen wholly in the picture
 * @param approachFound of these, found with the right foot
 * @param approachWrongFoot of these, found with the wrong foot
 * @param invented approach contacts where there is none
 */
record ContactScore(
        int sequences, int sequencesRight, int approachTrue, int approachFound, int approachWrongFoot, int invented) {

    static final ContactScore NOTHING = new ContactScore(0, 0, 0, 0, 0, 0);

    ContactScore plus(ContactScore other) {
        return new ContactScore(
                sequences + other.sequences,
                sequencesRight + other.sequencesRight,
                approachTrue + other.approachTrue,
                approachFound + other.approachFound,
                approachWrongFoot + other.approachWrongFoot,
                invented + other.invented);
    }
}
