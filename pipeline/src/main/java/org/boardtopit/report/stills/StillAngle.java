package org.boardtopit.report.stills;

import java.util.Objects;
import org.boardtopit.signal.Point2;

/**
 * One angle and where on the body it is measured, in {@linkplain org.boardtopit.report.stills still metres}.
 *
 * @param word what it is called
 * @param value with its plus-minus, ready to be read
 * @param arcM radius of the arc between the arms
 * @param toVertical true when the second arm is no part of the body but the vertical or the horizontal
 */
public record StillAngle(
        String word, String value, Point2 vertex, Point2 firstArm, Point2 secondArm, double arcM, boolean toVertical) {

    public StillAngle {
        Objects.requireNonNull(word, "word");
        Objects.requireNonNull(value, "value");
        if (!(arcM > 0)) {
            throw new IllegalArgumentException("the arc of " + word + " needs a radius, was " + arcM);
        }
        if (!vertex.isKnown() || !firstArm.isKnown() || !secondArm.isKnown()) {
            throw new IllegalArgumentException("the angle " + word + " needs three known points");
        }
    }
}
