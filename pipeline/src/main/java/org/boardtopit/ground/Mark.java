package org.boardtopit.ground;

import org.boardtopit.signal.Point2;

/**
 * A place on the ground whose position is known in metres and that somebody has pointed at in the reference picture.
 *
 * @param name what the club calls it
 * @param alongM distance from the take-off line towards the pit
 * @param acrossM distance from the centre line of the runway, to either side (the sign convention is found, not assumed)
 * @param pixel place in the reference picture
 */
public record Mark(String name, double alongM, double acrossM, Point2 pixel) {

    public Mark {
        if (!Double.isFinite(alongM) || !Double.isFinite(acrossM) || !pixel.isKnown()) {
            throw new IllegalArgumentException("mark '" + name + "' needs finite numbers");
        }
    }
}
