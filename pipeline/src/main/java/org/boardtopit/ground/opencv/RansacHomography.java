package org.boardtopit.ground.opencv;

import java.util.Arrays;
import java.util.Optional;
import org.boardtopit.ground.PointPairs;
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
     * @param agreeing the points that agree with it
     * @param residualPx median distance of these
     * @param spreadXPx how far they reach in x, from the 5th to the 95th percentile
     */
    record Fit(Homography homography, PointPairs agreeing, double residualPx, double spreadXPx) {
        int inliers() {
            return agreeing.count();
        }
    }

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
        float[] agreeingFrom = new float[2 * n];
        float[] agreeingTo = new float[2 * n];
        double[] x = new double[n];
        int inliers = 0;
        try (UByteIndexer ok = mask.createIndexer()) {
            for (int i = 0; i < n; i++) {
                if (ok.get(i) != 0) {
                    System.arraycopy(from, 2 * i, agreeingFrom, 2 * inliers, 2);
                    System.arraycopy(to, 2 * i, agreeingTo, 2 * inliers, 2);
                    x[inliers++] = from[2 * i];
                }
            }
        }
        if (inliers < minInliers) {
            return Optional.empty();
        }
        Arrays.sort(x, 0, inliers);
        double spread = x[(int) (0.95 * (inliers - 1))] - x[(int) (0.05 * (inliers - 1))];
        PointPairs agreeing =
                new PointPairs(Arrays.copyOf(agreeingFrom, 2 * inliers), Arrays.copyOf(agreeingTo, 2 * inliers));
        return Optional.of(new Fit(homography, agreeing, agreeing.medianDistancePx(homography), spread));
    }
}
