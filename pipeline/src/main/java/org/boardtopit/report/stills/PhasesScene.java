package org.boardtopit.report.stills;

import java.util.List;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/**
 * The runway as the camera sees it with the athlete at every contact and in every flight, and what lies between the contacts along it.
 *
 * @param widthPx of the part with the runway
 * @param heightPx of the same
 * @param figures in the order of time
 * @param feet where the toes stood, px of the picture
 * @param spans from foot to foot
 * @param metres where the whole metres lie along the runway; none without metres
 */
public record PhasesScene(
        int widthPx, int heightPx, List<Figure> figures, List<Point2> feet, List<Span> spans, List<Metre> metres) {

    /**
     * The athlete in one frame.
     *
     * @param frameToPicture from px of the frame to px of the picture
     * @param staturePx standing height in px of the picture
     */
    public record Figure(int frameIndex, Homography frameToPicture, FramePose pose, double staturePx) {}

    /**
     * One phase.
     *
     * @param fromX where it begins in the picture; larger than toX when the athlete runs to the left
     * @param distance such as {@code 5.21 m}; may be empty
     * @param share such as {@code 35.1 %}; may be empty
     */
    public record Span(PhaseName name, String word, double fromX, double toX, String distance, String share) {}

    /** A whole metre from the take-off line. */
    public record Metre(int metres, double x) {}

    public PhasesScene {
        figures = List.copyOf(figures);
        feet = List.copyOf(feet);
        spans = List.copyOf(spans);
        metres = List.copyOf(metres);
        if (widthPx < 1 || heightPx < 1 || figures.isEmpty()) {
            throw new IllegalArgumentException("a phase picture needs a size and figures, was %d x %d with %d"
                    .formatted(widthPx, heightPx, figures.size()));
        }
    }
}
