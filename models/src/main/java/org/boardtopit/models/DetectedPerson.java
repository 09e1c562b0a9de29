package org.boardtopit.models;

/**
 * A person in a picture, in px of that picture: (0, 0) is the outer corner of its first pixel, x to the right, y down.
 *
 * @param score how sure the detector is, 0 to 1
 * @param hipXPx middle between the hips
 * @param hipYPx middle between the hips
 * @param shoulderXPx middle between the shoulders
 * @param shoulderYPx middle between the shoulders
 * @param sizePx diameter of the circle around the middle of the hips that holds the whole body, arms along it
 */
public record DetectedPerson(
        double score, double hipXPx, double hipYPx, double shoulderXPx, double shoulderYPx, double sizePx) {

    public DetectedPerson {
        if (!(score >= 0 && score <= 1)) {
            throw new IllegalArgumentException("score must be 0 to 1, was " + score);
        }
        if (!(sizePx >= 0)) {
            throw new IllegalArgumentException("sizePx must not be negative, was " + sizePx);
        }
    }
}
