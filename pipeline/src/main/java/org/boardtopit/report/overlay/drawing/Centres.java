package org.boardtopit.report.overlay.drawing;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.signal.Point2;

/** The middle of the athlete in each frame, as a moving mean over neighbouring frames so that it does not jitter. */
final class Centres {
    private static final int REACH = 6;

    private final List<FramePose> frames;
    private final List<Point2> smooth = new ArrayList<>();

    Centres(List<FramePose> frames) {
        this.frames = frames;
        List<Point2> raw = frames.stream().map(Centres::middle).toList();
        for (int i = 0; i < raw.size(); i++) {
            smooth.add(mean(raw, i));
        }
    }

    private static Point2 middle(FramePose frame) {
        return frame.bounds().map(b -> new Point2(b.centreX(), b.centreY())).orElse(Point2.UNKNOWN);
    }

    /** The same number on both sides, so that steady movement is not delayed or cut at the ends. */
    private static Point2 mean(List<Point2> raw, int i) {
        if (!raw.get(i).isKnown()) {
            return Point2.UNKNOWN;
        }
        Point2 sum = raw.get(i);
        int count = 1;
        for (int d = 1; d <= REACH && i - d >= 0 && i + d < raw.size(); d++) {
            if (!raw.get(i - d).isKnown() || !raw.get(i + d).isKnown()) {
                break;
            }
            sum = sum.plus(raw.get(i - d)).plus(raw.get(i + d));
            count += 2;
        }
        return sum.times(1.0 / count);
    }

    /** By frame index; unknown when the athlete is not seen there. */
    Point2 at(int frameIndex) {
        int low = 0;
        int high = frames.size() - 1;
        while (low <= high) {
            int middle = (low + high) >>> 1;
            int found = frames.get(middle).frameIndex();
            if (found == frameIndex) {
                return smooth.get(middle);
            }
            if (found < frameIndex) {
                low = middle + 1;
            } else {
                high = middle - 1;
            }
        }
        return Point2.UNKNOWN;
    }
}
