package org.boardtopit.subject;

import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack.Square;

/**
 * A person in one picture.
 *
 * @param body hips and, as the side, the standing height, in pixels of the frame
 * @param fixed hips in the fixed picture
 * @param fixedStaturePx standing height in the fixed picture
 * @param worth how much a picture of this person speaks for the athlete, 0 to 1
 * @param looksUndetected for how many looks only the landmark network has seen this person
 */
record SightedPerson(
        int frame, double timeS, Square body, Point2 fixed, double fixedStaturePx, double worth, int looksUndetected) {

    SightedPerson withBody(Square other) {
        return new SightedPerson(frame, timeS, other, fixed, fixedStaturePx, worth, looksUndetected);
    }
}
