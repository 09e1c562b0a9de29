package org.boardtopit.ground.opencv;

import java.util.Arrays;
import java.util.Optional;
import org.boardtopit.signal.Homography;
import org.bytedeco.javacpp.FloatPointer;
import org.bytedeco.javacpp.indexer.DoubleIndexer;
import org.bytedeco.javacpp.indexer.UByteIndexer;
import org.bytedeco.opencv.global.opencv_calib3d;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;

/** A homography between matched points of which some are wrong. */
final class RansacHomography {
    private RansacHomography() {}

    /**
     * A fitted map.
     *
     * @param spreadXPx how far the agreeing points reach in x, from the 5th to the 95th percentile
     */
    record Fit(Homography homography, int inliers, double residualPx, double spreadXPx) {}

    /** From n points (x, y interleaved); empty when fewer than {@code minInliers} agree within {@code thresholdPx}. */
    static Optional<Fit> fit(float[] from, float[] to, int n, double thresholdPx, int minInliers) {
        if (n < minInliers) {
            return Optional.empty();
        }
        try (FloatPointer fromPointer = new FloatPointer(Arrays.copyOf(from, 2 * n));
                FloatPointer toPointer = new FloatPointer(Arrays.copyOf(to, 2 * n));
                Mat a = new Mat(n, 1, opencv_core.CV_32FC2, fromPointer);
                Mat b = new Mat(n, 1, opencv_core.CV_32FC2, toPointer);
                Mat mask = new Mat()) {
            // MAGSAC weighs by residual, so that the result does not hang on the threshold; it is seeded inside OpenCV.
            try (Mat h =
                    opencv_calib3d.findHomography(a, b, opencv_calib3d.USAC_MAGSAC, thresholdPx, mask, 2000, 0.999)) {
                return h.empty() ? Optional.empty() : accepted(h, mask, from, to, n, minInliers);
            }
        }
    }

    private static Optional<Fit> accepted(Mat h, Mat mask, float[] from, float[] to, int n, int minInliers) {
        double[] rows = new double[9];
        try (DoubleIndexer values = h.createIndexer()) {
            for (int i = 0; i < 9; i++) {
                rows[i] = values.get(i / 3, i % 3);
            }
        }
        if (Arrays.stream(rows).anyMatch(v -> !Double.isFinite(v))) {
            return Optional.empty();
        }
        Homography homography = Homography.of(rows);
        double[] distance = new double[n];
        double[] agreeingX = new double[n];
        int inliers = 0;
        try (UByteIndexer ok = mask.createIndexer()) {
            for (int i = 0; i < n; i++) {
                if (ok.get(i) != 0) {
                    var p = homography.apply(from[2 * i], from[2 * i + 1]);
                    agreeingX[inliers] = from[2 * i];
                    distance[inliers++] = Math.hypot(p.x() - to[2 * i], p.y() - to[2 * i + 1]);
                }
            }
        }
        if (inliers < minInliers) {
            return Optional.empty();
        }
        double[] sorted = Arrays.copyOf(distance, inliers);
        Arrays.sort(sorted);
        double[] x = Arrays.copyOf(agreeingX, inliers);
        Arrays.sort(x);
        double spread = x[(int) (0.95 * (inliers - 1))] - x[(int) (0.05 * (inliers - 1))];
        return Optional.of(new Fit(homography, inliers, sorted[inliers / 2], spread));
    }
}
