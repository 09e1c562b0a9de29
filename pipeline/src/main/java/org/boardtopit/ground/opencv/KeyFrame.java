package org.boardtopit.ground.opencv;

import static org.bytedeco.opencv.global.opencv_video.OPTFLOW_USE_INITIAL_FLOW;
import static org.bytedeco.opencv.global.opencv_video.calcOpticalFlowPyrLK;

import java.util.Arrays;
import java.util.Optional;
import org.boardtopit.ground.PointPairs;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;
import org.bytedeco.javacpp.indexer.FloatIndexer;
import org.bytedeco.javacpp.indexer.UByteIndexer;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_core.TermCriteria;

/**
 * A frame whose corners are looked for in the frames around it.
 *
 * <p>Method: corners of Shi and Tomasi 1994, followed by the pyramidal method of Lucas and Kanade (Bouguet 2001), from where
 * the last frame's homography puts them; RANSAC homography over the matches. Following every frame from the same key frame
 * keeps the error from adding up. Homographies here are between pixels of grey working
 * pictures counted as everywhere in the project (outer corner); OpenCV's own coordinates, half a pixel less, stay inside.
 */
final class KeyFrame implements AutoCloseable {
    private static final int MAX_CORNERS = 260;
    private static final int WINDOW_PX = 17;
    /** The last frame's homography starts the search within a few pixels, so two halvings are enough. */
    private static final int LEVELS = 2;

    /** After pictures without background the view may be anywhere near: five halvings reach half a picture. */
    private static final int FAR_LEVELS = 5;

    /** Half the side of the square whose brightness is compared. */
    private static final int PATCH_PX = 6;

    private static final int MIN_INLIERS = 30;
    private static final double RANSAC_PX = 1.0;

    private final Mat grey;
    private final Mat corners;
    private final int cornerCount;

    KeyFrame(Mat grey) {
        this.grey = grey.clone();
        this.corners = new Mat();
        opencv_imgproc.goodFeaturesToTrack(
                grey, corners, MAX_CORNERS, 0.005, grey.cols() / 100.0 + 2, new Mat(), 5, false, 0.04);
        this.cornerCount = corners.empty() ? 0 : (int) corners.total();
    }

    /** Where a later picture lies: key frame to picture, with the points that agree. */
    record Match(Homography toPicture, PointPairs agreeing, int corners, double residualPx) {
        int inliers() {
            return agreeing.count();
        }

        double share() {
            return corners == 0 ? 0 : inliers() / (double) corners;
        }
    }

    /** Looks for the corners in a picture, starting from a first guess; empty when too few are found. */
    Optional<Match> match(Mat picture, Homography guess) {
        return match(picture, guess, LEVELS);
    }

    /** The same with a wide search; slower, for a view that was lost. */
    Optional<Match> matchFar(Mat picture, Homography guess) {
        return match(picture, guess, FAR_LEVELS);
    }

    private Optional<Match> match(Mat picture, Homography guess, int levels) {
        if (cornerCount < MIN_INLIERS) {
            return Optional.empty();
        }
        try (Mat found = guessed(guess);
                Mat asBright = new Mat();
                Mat status = new Mat();
                Mat error = new Mat();
                Size window = new Size(WINDOW_PX, WINDOW_PX);
                TermCriteria stop = new TermCriteria(TermCriteria.COUNT + TermCriteria.EPS, 20, 0.02)) {
            picture.convertTo(asBright, -1, gain(picture, found), 0);
            calcOpticalFlowPyrLK(
                    grey,
                    asBright,
                    corners,
                    found,
                    status,
                    error,
                    window,
                    levels,
                    stop,
                    OPTFLOW_USE_INITIAL_FLOW,
                    1e-4);
            return fitted(found, status, picture);
        }
    }

    private Mat guessed(Homography guess) {
        Mat found = corners.clone();
        try (FloatIndexer to = found.createIndexer()) {
            for (int i = 0; i < cornerCount; i++) {
                Point2 p = guess.apply(to.get(i, 0, 0) + 0.5, to.get(i, 0, 1) + 0.5);
                to.put(i, 0, 0, (float) (p.x() - 0.5));
                to.put(i, 0, 1, (float) (p.y() - 0.5));
            }
        }
        return found;
    }

    /**
     * The method of Lucas and Kanade takes the light for constant, and a camera's exposure is not: by how much to brighten the
     * picture so that around the corners it is as bright as the key frame.
     */
    private double gain(Mat picture, Mat found) {
        double[] ratios = new double[cornerCount];
        int n = 0;
        try (UByteIndexer here = grey.createIndexer();
                UByteIndexer there = picture.createIndexer();
                FloatIndexer from = corners.createIndexer();
                FloatIndexer to = found.createIndexer()) {
            for (int i = 0; i < cornerCount; i++) {
                double a = around(here, grey, from.get(i, 0, 0), from.get(i, 0, 1));
                double b = around(there, picture, to.get(i, 0, 0), to.get(i, 0, 1));
                if (a > 0 && b > 0) {
                    ratios[n++] = a / b;
                }
            }
        }
        return n < MIN_INLIERS ? 1 : OrderStatistics.median(Arrays.copyOf(ratios, n));
    }

    /** Mean of a small square, 0 outside the picture. */
    private static double around(UByteIndexer pixels, Mat picture, float atX, float atY) {
        int x = Math.round(atX);
        int y = Math.round(atY);
        if (x < PATCH_PX || y < PATCH_PX || x >= picture.cols() - PATCH_PX || y >= picture.rows() - PATCH_PX) {
            return 0;
        }
        int sum = 0;
        for (int dy = -PATCH_PX; dy <= PATCH_PX; dy += 2) {
            for (int dx = -PATCH_PX; dx <= PATCH_PX; dx += 2) {
                sum += pixels.get(y + dy, x + dx);
            }
        }
        return sum;
    }

    private Optional<Match> fitted(Mat found, Mat status, Mat picture) {
        float[] from = new float[2 * cornerCount];
        float[] to = new float[2 * cornerCount];
        int n = 0;
        try (FloatIndexer a = corners.createIndexer();
                FloatIndexer b = found.createIndexer();
                UByteIndexer ok = status.createIndexer()) {
            for (int i = 0; i < cornerCount; i++) {
                float x = b.get(i, 0, 0);
                float y = b.get(i, 0, 1);
                boolean inside = x >= 2 && y >= 2 && x < picture.cols() - 2 && y < picture.rows() - 2;
                if (inside && ok.get(i) != 0) {
                    from[2 * n] = a.get(i, 0, 0) + 0.5f;
                    from[2 * n + 1] = a.get(i, 0, 1) + 0.5f;
                    to[2 * n] = x + 0.5f;
                    to[2 * n + 1] = y + 0.5f;
                    n++;
                }
            }
        }
        return RansacHomography.fit(from, to, n, RANSAC_PX, MIN_INLIERS)
                .map(fit -> new Match(fit.homography(), fit.agreeing(), cornerCount, fit.residualPx()));
    }

    Mat grey() {
        return grey;
    }

    int cornerCount() {
        return cornerCount;
    }

    @Override
    public void close() {
        grey.close();
        corners.close();
    }
}
