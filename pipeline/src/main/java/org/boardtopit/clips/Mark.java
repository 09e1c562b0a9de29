package org.boardtopit.clips;

import org.boardtopit.signal.Point2;

/**
 * A point of the runway that somebody has pointed at in a camera's reference picture.
 *
 * @param name what it is, such as "board front near"
 * @param alongM metres from the take-off line, towards the pit positive
 * @param acrossM metres from the middle of the runway, to the athlete's left positive; whoever fits a camera finds out by
 *     itself when somebody counted to the right
 * @param pixel place in the reference picture; (0, 0) is the outer corner of the top-left pixel
 */
public record Mark(String name, double alongM, double acrossM, Point2 pixel) {

    public Mark {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a mark needs a name");
        }
        if (!Double.isFinite(alongM) || !Double.isFinite(acrossM) || !pixel.isKnown()) {
            throw new IllegalArgumentException("mark '" + name + "' needs finite numbers");
        }
    }
}
