package org.boardtopit.accuracy;

import java.util.Locale;
import org.boardtopit.models.BodyPoint;

/**
 * One point of one frame against its truth.
 *
 * @param repaired false for the larger mode as the network names it, true for what the motion's repair makes of it
 * @param px distance in pixels of the frame
 * @param staturePct the same in per cent of the standing height at that place
 * @param ratio distance over the stated standard deviation per axis; NaN when none was stated
 */
record PointError(BodyPoint point, Part part, boolean repaired, double px, double staturePct, double ratio) {

    /** Both sides of the body go by one name, such as ankle. */
    String joint() {
        return point.name().toLowerCase(Locale.ROOT).replace("left_", "").replace("right_", "");
    }
}
