package org.boardtopit.accuracy;

import java.util.Locale;
import org.boardtopit.models.BodyPoint;

/**
 * One point of one frame against its truth.
 *
 * @param stage what is held against the truth
 * @param px distance in pixels of the frame
 * @param staturePct the same in per cent of the standing height at that place
 * @param ratio distance over the stated standard deviation per axis; NaN when none was stated
 */
record PointError(BodyPoint point, Part part, Stage stage, double px, double staturePct, double ratio) {

    /** How far the points have come. */
    enum Stage {
        /** The larger mode, as the network names it. */
        SEEN("as seen"),
        /** What the motion's repair makes of it. */
        REPAIRED("repaired"),
        /** What the fit over the whole clip makes of that. */
        FITTED("fitted");

        private final String label;

        Stage(String label) {
            this.label = label;
        }

        String label() {
            return label;
        }
    }

    /** Both sides of the body go by one name, such as ankle. */
    String joint() {
        return point.name().toLowerCase(Locale.ROOT).replace("left_", "").replace("right_", "");
    }
}
