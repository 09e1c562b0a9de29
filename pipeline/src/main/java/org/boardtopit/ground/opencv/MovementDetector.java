package org.boardtopit.ground.opencv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.boardtopit.ground.Movement;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * Finds what moves against the background: a pixel moves when it differs both from the picture a little before and from the
 * one a little after, once these are laid over it (three-picture differencing; common practice, no source). That leaves the
 * thing itself and neither the place it left nor the one it goes to.
 *
 * <p>The threshold follows the noise: {@value #NOISE_FACTOR} times the median difference, at least {@value #MIN_DIFFERENCE}
 * grey levels (a first guess, not tuned).
 */
final class MovementDetector implements AutoCloseable {
    private static final double NOISE_FACTOR = 5;
    private static final int MIN_DIFFERENCE = 10;
    /** Half the span that is compared; an athlete moves 0.4 m in it. */
    private static final long HALF_SPAN_US = 45_000;

    private static final int CELL = 4; // pixels of the small picture
    private static final int MAX_QUEUE = 64;

    private record Small(long timestampUs, Mat grey, Homography toFixed) {}

    private final List<Small> queue = new ArrayList<>();
    private final Movement movement;
    private final int columns;
    private final int rows;
    private final double scale; // small picture / frame
    private int next;

    MovementDetector(int smallWidthPx, int smallHeightPx, int frameWidthPx) {
        this.columns = smallWidthPx / CELL;
        this.rows = smallHeightPx / CELL;
        this.scale = smallWidthPx / (double) frameWidthPx;
        this.movement = new Movement(columns, rows, CELL / scale);
    }

    /** Takes over a small grey picture with its registration in frame pixels. */
    void add(long timestampUs, Mat smallGrey, Homography frameToFixed) {
        Mat smooth = new Mat();
        try (Size kernel = new Size(5, 5)) {
            opencv_imgproc.GaussianBlur(smallGrey, smooth, kernel, 1.0);
        }
        queue.add(new Small(timestampUs, smooth, frameToFixed));
        emit(false);
    }

    Movement finish() {
        emit(true);
        return movement;
    }

    /** Writes out every queued picture whose successor in time is there (or will never come). */
    private void emit(boolean atEnd) {
        while (next < queue.size()) {
            long nowUs = queue.get(next).timestampUs();
            boolean successorSeen = queue.get(queue.size() - 1).timestampUs() >= nowUs + HALF_SPAN_US;
            if (!atEnd && !successorSeen && queue.size() < MAX_QUEUE) {
                return;
            }
            int before = 0;
            while (before + 1 < next && queue.get(before + 1).timestampUs() <= nowUs - HALF_SPAN_US) {
                before++;
            }
            int after = next;
            while (after + 1 < queue.size() && queue.get(after).timestampUs() < nowUs + HALF_SPAN_US) {
                after++;
            }
            compare(before, next, after);
            next++;
            for (int i = 0; i < before; i++) {
                queue.remove(0).grey().close();
            }
            next -= before;
        }
    }

    private void compare(int before, int now, int after) {
        if (before == now || after == now) {
            movement.add(new int[0], new float[0]); // the first and last pictures have nothing to be compared with
            return;
        }
        try (Mat difference = difference(queue.get(now), queue.get(before));
                Mat other = difference(queue.get(now), queue.get(after))) {
            opencv_core.min(difference, other, difference);
            collect(difference);
        }
    }

    private Mat difference(Small now, Small other) {
        Homography map = now.toFixed().inverse().after(other.toFixed());
        Mat out = new Mat();
        if (isNearlyIdentity(map)) {
            opencv_core.absdiff(now.grey(), other.grey(), out);
            return out;
        }
        // From frame pixels to small pixels with OpenCV's origin at the centre of the first pixel.
        Homography toFrame = new Homography(1 / scale, 0, 0.5 / scale, 0, 1 / scale, 0.5 / scale, 0, 0, 1);
        Homography small = toFrame.inverse().after(map.after(toFrame));
        try (Mat warped = now.grey().clone(); // where the other picture does not reach, nothing moves
                DoublePointer values = new DoublePointer(small.toArray());
                Mat h = new Mat(3, 3, opencv_core.CV_64F, values);
                Size size = new Size(now.grey().cols(), now.grey().rows());
                Scalar unused = new Scalar(0)) {
            opencv_imgproc.warpPerspective(
                    other.grey(), warped, h, size, opencv_imgproc.INTER_LINEAR, opencv_core.BORDER_TRANSPARENT, unused);
            opencv_core.absdiff(now.grey(), warped, out);
        }
        return out;
    }

    /** Less than a fifth of a small pixel over the picture: noise of the matching, not worth a warp. */
    private boolean isNearlyIdentity(Homography map) {
        double width = columns * CELL / scale;
        double height = rows * CELL / scale;
        for (double x : new double[] {0, width}) {
            for (double y : new double[] {0, height}) {
                Point2 p = new Point2(x, y);
                if (map.apply(p).distanceTo(p) * scale > 0.2) {
                    return false;
                }
            }
        }
        return true;
    }

    private void collect(Mat difference) {
        int width = difference.cols();
        byte[] pixels = new byte[width * difference.rows()];
        difference.data().get(pixels);
        int[] histogram = new int[256];
        for (int i = 0; i < pixels.length; i += 3) {
            histogram[pixels[i] & 0xff]++;
        }
        int threshold = threshold(histogram);
        int[] moving = new int[columns * rows];
        for (int y = 0; y < rows * CELL; y++) {
            int row = y / CELL * columns;
            int at = y * width;
            for (int x = 0; x < columns * CELL; x++) {
                if ((pixels[at + x] & 0xff) > threshold) {
                    moving[row + x / CELL]++;
                }
            }
        }
        keep(moving);
    }

    private static int threshold(int[] histogram) {
        long total = Arrays.stream(histogram).asLongStream().sum();
        long seen = 0;
        int median = 0;
        while (median < 255 && seen + histogram[median] < total / 2) {
            seen += histogram[median++];
        }
        return (int) Math.max(MIN_DIFFERENCE, Math.round(NOISE_FACTOR * (median + 0.5)));
    }

    private void keep(int[] moving) {
        int least = 2; // a cell with one or two pixels is noise
        int[] numbers = new int[Movement.MAX_CELLS];
        float[] shares = new float[Movement.MAX_CELLS];
        int count;
        do {
            least++;
            count = 0;
            for (int v : moving) {
                count += v >= least ? 1 : 0;
            }
        } while (count > Movement.MAX_CELLS);
        count = 0;
        for (int i = 0; i < moving.length; i++) {
            if (moving[i] >= least) {
                numbers[count] = i;
                shares[count++] = moving[i] / (float) (CELL * CELL);
            }
        }
        movement.add(Arrays.copyOf(numbers, count), Arrays.copyOf(shares, count));
    }

    @Override
    public void close() {
        queue.forEach(s -> s.grey().close());
        queue.clear();
    }
}
