package org.boardtopit.ground;

import java.util.List;
import org.boardtopit.signal.Point2;

/**
 * What an athlete's run leaves in the fixed picture, as far as it tells where the camera stands ({@link SelfCalibration}).
 * Places are pixels of the fixed picture.
 *
 * @param falls the centre of mass between a toe-off and a touchdown, one list per flight
 * @param bodies the body in single frames
 * @param toes the toe of a foot that stands, one per contact
 */
public record RunTraces(List<List<Fall>> falls, List<Body> bodies, List<Trace> toes) {

    public RunTraces {
        falls = falls.stream().map(List::copyOf).toList();
        bodies = List.copyOf(bodies);
        toes = List.copyOf(toes);
    }

    /**
     * The centre of mass in one frame of a flight.
     *
     * @param timeS time since the toe-off
     */
    public record Fall(double timeS, Point2 centrePx) {}

    /**
     * A point of the body.
     *
     * @param acrossStature how far to the athlete's left of the middle of the body it lies, as a share of standing height
     */
    public record Trace(Point2 px, double acrossStature) {}

    /** Shoulder, hip, knee and ankle of both sides; every one of them is known. */
    public record Body(List<Trace> left, List<Trace> right) {
        public Body {
            left = List.copyOf(left);
            right = List.copyOf(right);
        }
    }
}
