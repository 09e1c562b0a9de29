package org.boardtopit.pose;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack.Square;

/**
 * What the network saw: 33 points per frame, each as up to two modes (place, standard deviation, mass).
 *
 * <p>Places are pixels of the upright frame. The standard deviation is per axis, in pixels of the frame. The mass is the
 * share of the heat map near the mode, 0 to 1; a second mode of small mass means little, and none at all has mass 0.
 */
public final class PoseTrack {
    /** Numbers kept per point: x, y, sd, mass of the larger mode, then of the second. */
    public static final int NUMBERS = 8;

    private final List<Optional<FramePose>> frames;

    public PoseTrack(List<Optional<FramePose>> frames) {
        this.frames = Collections.unmodifiableList(new ArrayList<>(frames));
    }

    public int frameCount() {
        return frames.size();
    }

    /** Empty where the athlete was not in view. */
    public Optional<FramePose> at(int frame) {
        return frames.get(frame);
    }

    /** The points of one frame. */
    public static final class FramePose {
        private final Square square;
        private final float[] numbers;

        /**
         * Takes over the numbers of all 33 points, {@link #NUMBERS} each.
         *
         * @param square where the network looked
         */
        public FramePose(Square square, float[] numbers) {
            if (numbers.length != BodyPoint.COUNT * NUMBERS) {
                throw new IllegalArgumentException(
                        "a pose has " + BodyPoint.COUNT * NUMBERS + " numbers, was " + numbers.length);
            }
            this.square = square;
            this.numbers = numbers.clone();
        }

        public Square square() {
            return square;
        }

        /** Place of a point; {@code mode} 0 is the larger, 1 the second. Unknown when the mode has no mass. */
        public Point2 place(BodyPoint point, int mode) {
            int i = offset(point, mode);
            return numbers[i + 3] > 0 ? new Point2(numbers[i], numbers[i + 1]) : Point2.UNKNOWN;
        }

        public double sdPx(BodyPoint point, int mode) {
            return numbers[offset(point, mode) + 2];
        }

        public double mass(BodyPoint point, int mode) {
            return numbers[offset(point, mode) + 3];
        }

        /** A copy of all numbers, for storing. */
        public float[] toArray() {
            return numbers.clone();
        }

        private static int offset(BodyPoint point, int mode) {
            return point.index() * NUMBERS + 4 * mode;
        }
    }
}
