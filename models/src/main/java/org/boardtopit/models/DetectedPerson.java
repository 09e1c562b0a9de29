package org.boardtopit.models;

/**
 * A person in a picture, in px of that picture: (0, 0) is the outer corner of its first pixel, x to the right, y down.
 *
 * @param score how sure the detector is, 0 to 1
 * @param leftPx left edge of the box, which holds the head and the upper body
 * @param topPx upper edge
 * @param widthPx of the box
 * @param heightPx of the box
 * @param hipXPx middle between the hips
 * @param hipYPx middle between the hips
 * @param sizePx diameter of the circle around the hips that holds the whole body
 */
public record DetectedPerson(
        double score,
        double leftPx,
        double topPx,
        double widthPx,
        double heightPx,
        double hipXPx,
        double hipYPx,
        double sizePx) {

    public DetectedPerson {
        if (!(score >= 0 && score <= 1)) {
            throw new IllegalArgumentException("score must be 0 to 1, was " + score);
        }
        if (!(sizePx >= 0)) {
            throw new IllegalArgumentException("sizePx must not be negative, was " + sizePx);
        }
    }
}
