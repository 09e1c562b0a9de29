package org.boardtopit.report.overlay.drawing;

import java.util.List;
import org.boardtopit.report.overlay.FramePose;

/** How tall the athlete is in the pictures of a clip. */
final class AthleteSize {
    private AthleteSize() {}

    /**
     * The upper quartile of the larger side of the box around the points, in px: in most frames of a jump the body is bent
     * or stretched, never longer than it is. NaN when the athlete is never seen.
     */
    static double of(List<FramePose> frames) {
        double[] sizes = frames.stream()
                .flatMap(frame -> frame.bounds().stream())
                .mapToDouble(box -> Math.max(box.width(), box.height()))
                .sorted()
                .toArray();
        return sizes.length == 0 ? Double.NaN : sizes[(3 * sizes.length) / 4];
    }
}
