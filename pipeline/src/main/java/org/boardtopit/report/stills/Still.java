package org.boardtopit.report.stills;

import java.util.List;
import java.util.Objects;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.signal.Homography;

/**
 * One picture of the athlete at one instant.
 *
 * @param contact its number in contacts.csv; for a flight that of the contact before it
 * @param frameIndex the frame nearest to the instant
 * @param metresToFrame from {@linkplain org.boardtopit.report.stills still metres} to px of that frame
 * @param pose the athlete in that frame
 * @param title what and when
 * @param notes frame and distance from the instant first, then what was measured
 */
public record Still(
        int contact,
        StillInstant instant,
        int frameIndex,
        Homography metresToFrame,
        FramePose pose,
        List<StillAngle> angles,
        String title,
        List<String> notes) {

    public Still {
        Objects.requireNonNull(instant, "instant");
        Objects.requireNonNull(metresToFrame, "metresToFrame");
        Objects.requireNonNull(pose, "pose");
        Objects.requireNonNull(title, "title");
        angles = List.copyOf(angles);
        notes = List.copyOf(notes);
        if (notes.isEmpty()) {
            throw new IllegalArgumentException("a still says which frame it is");
        }
        if (contact < 0) {
            throw new IllegalArgumentException("contacts are counted from 0, was " + contact);
        }
    }
}
