package org.boardtopit.subject;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * The athlete's place in every frame: an upright square that changes smoothly, or nothing where the athlete is not in view.
 *
 * @param squares one entry per frame of the clip, in pixels of the frame
 * @param direction +1 when the athlete runs to the right in the picture, -1 to the left; from in front or behind, where
 *     nobody crosses it, +1
 */
public record SubjectTrack(List<Optional<Square>> squares, int direction) {

    /**
     * An upright square in pixels of the frame.
     *
     * @param centreXPx x of its middle
     * @param sidePx length of a side; about 1.25 times the circle around the stretched body
     */
    public record Square(double centreXPx, double centreYPx, double sidePx) {
        public Square {
            if (!(sidePx > 0) || !Double.isFinite(centreXPx) || !Double.isFinite(centreYPx)) {
                throw new IllegalArgumentException("a square needs a finite centre and a side, was " + centreXPx + ", "
                        + centreYPx + ", " + sidePx);
            }
        }
    }

    public SubjectTrack {
        squares = Collections.unmodifiableList(new ArrayList<>(squares));
        if (direction != 1 && direction != -1) {
            throw new IllegalArgumentException("direction must be 1 or -1, was " + direction);
        }
    }

    public Optional<Square> at(int frame) {
        return squares.get(frame);
    }

    /** Standing height of the athlete in a frame, in its pixels; NaN where the athlete is not in view. */
    public double staturePx(int frame) {
        return at(frame).map(s -> s.sidePx() / BodyReader.SQUARE_STATURES).orElse(Double.NaN);
    }

    public int frameCount() {
        return squares.size();
    }

    /** Share of frames with the athlete in view, 0 to 1. */
    public double seenShare() {
        return squares.isEmpty()
                ? 0
                : squares.stream().filter(Optional::isPresent).count() / (double) squares.size();
    }
}
