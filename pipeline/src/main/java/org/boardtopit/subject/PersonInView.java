package org.boardtopit.subject;

import org.boardtopit.models.DetectedPerson;
import org.boardtopit.signal.Point2;

/**
 * Somebody in one frame, whoever it is: nothing here tells one person from another.
 *
 * @param frame index of the frame
 * @param hips middle between the hips, in pixels of the frame
 * @param head middle of the head, in pixels of the frame; may lie outside the picture
 * @param staturePx standing height in pixels, above 0
 */
public record PersonInView(int frame, Point2 hips, Point2 head, double staturePx) {
    /**
     * From the middle between the shoulders to the middle of the head, in standing heights: shoulder joints at 0.818, chin at
     * 0.870 and crown at 1 of it (Winter after Drillis and Contini, from memory).
     */
    private static final double SHOULDERS_TO_HEAD = 0.117;

    public PersonInView {
        if (frame < 0 || !(staturePx > 0) || !hips.isKnown() || !head.isKnown()) {
            throw new IllegalArgumentException("a person in view needs a frame, hips, a head and a stature, was "
                    + frame + ", " + hips + ", " + head + ", " + staturePx);
        }
    }

    /** What the detector found in a square crop of a frame; the head lies on from the hips beyond the shoulders. */
    static PersonInView of(DetectedPerson person, int frame, double leftPx, double topPx, double scale) {
        Point2 hips = new Point2(leftPx + person.hipXPx() * scale, topPx + person.hipYPx() * scale);
        Point2 shoulders = new Point2(leftPx + person.shoulderXPx() * scale, topPx + person.shoulderYPx() * scale);
        double stature = person.sizePx() * scale / AthleteTracker.CIRCLE_STATURES;
        double trunk = shoulders.distanceTo(hips);
        Point2 up = trunk > 0 ? shoulders.minus(hips).times(1 / trunk) : new Point2(0, -1);
        return new PersonInView(frame, hips, shoulders.plus(up.times(SHOULDERS_TO_HEAD * stature)), stature);
    }
}
