package org.boardtopit.report.overlay;

import java.util.List;
import java.util.Objects;

/**
 * The athlete at one touchdown with the angles measured there: drawn on the body at that frame, then left standing on the
 * runway for a moment while the athlete moves on.
 *
 * @param title such as "hop landing L"
 * @param timeUs the measured instant of touchdown
 * @param pose the frame nearest to it
 * @param angles in the planes of that frame; may be empty
 */
public record TouchdownFigure(String title, long timeUs, FramePose pose, List<AngleCallout> angles) {

    /** How long a figure stays when nothing else happens. A first guess: long enough for the eye, shorter than a flight. */
    public static final long HOLD_US = 500_000;

    /** The last part of the hold, during which the figure fades. */
    public static final long FADE_US = 200_000;

    public TouchdownFigure {
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(pose, "pose");
        angles = List.copyOf(angles);
    }

    /** From when on it is shown: the frame nearest to the touchdown may lie just before it. */
    public long startUs() {
        return Math.min(timeUs, pose.timestampUs());
    }

    /** How strongly it is shown at a time when no later touchdown cuts it off: 0 (not) to 1. */
    public double strengthAt(long atUs) {
        long remainingUs = startUs() + HOLD_US - atUs;
        if (atUs < startUs() || remainingUs <= 0) {
            return 0;
        }
        return Math.min(1, (double) remainingUs / FADE_US);
    }
}
