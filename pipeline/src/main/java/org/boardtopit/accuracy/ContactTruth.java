package org.boardtopit.accuracy;

import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;

/**
 * A true contact with the runway. Seconds count from the first frame, metres from the take-off line.
 *
 * @param toeAlongM tip of the shoe
 * @param vxMs speed of the centre of mass along the runway at toe-off
 * @param vyMs upwards
 */
record ContactTruth(
        ContactKind kind,
        Foot foot,
        double touchdownS,
        double toeOffS,
        double toeAlongM,
        double toeAcrossM,
        InstantTruth touchdown,
        InstantTruth toeOff,
        double vxMs,
        double vyMs) {

    ContactTruth {
        if (!(touchdownS < toeOffS)) {
            throw new IllegalArgumentException("toeoff_s must come after touchdown_s, was " + toeOffS);
        }
    }
}
