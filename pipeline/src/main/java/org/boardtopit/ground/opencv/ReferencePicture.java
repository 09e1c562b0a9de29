package org.boardtopit.ground.opencv;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.boardtopit.ground.Placement;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgcodecs;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.DMatch;
import org.bytedeco.opencv.opencv_core.DMatchVectorVector;
import org.bytedeco.opencv.opencv_core.KeyPointVector;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;
import org.bytedeco.opencv.opencv_features2d.BFMatcher;
import org.bytedeco.opencv.opencv_features2d.SIFT;

/**
 * The picture of a camera position on which somebody marked the runway; frames find their place in it.
 *
 * <p>Method: SIFT features (Lowe 2004, IJCV 60:91-110, with its ratio test at 0.8), RANSAC homography. They bear the zoom
 * and the light that differ between a wide reference picture and a clip.
 */
public final class ReferencePicture implements AutoCloseable {
    /** More than the largest phone cameras take. */
    private static final long MOST_PIXELS = 250_000_000;

    private static final int MAX_FEATURES = 1500;
    private static final int MAX_WIDTH_PX = 1280;
    private static final double RATIO = 0.8;
    private static final double RANSAC_PX = 2.0;
    private static final int MIN_INLIERS = 20;
    private final int widthPx;
    private final int heightPx;
    private final double scale;
    private final Mat grey;
    private boolean described;
    private final KeyPointVector points = new KeyPointVector();
    private final Mat descriptors = new Mat();

    private ReferencePicture(Mat grey) {
        this.widthPx = grey.cols();
        this.heightPx = grey.rows();
        this.scale = Math.min(1, MAX_WIDTH_PX / (double) widthPx);
        this.grey = grey;
    }

    /** Reads a picture file (JPEG or PNG). */
    public static ReferencePicture read(Path file) throws VideoException {
        if (!Files.isReadable(file)) {
            throw new VideoException(file + ": the reference picture is missing or not readable");
        }
        // Through Java's own file access: native code is not trusted with every spelling of a path.
        byte[] bytes;
        try {
            bytes = Files.readAllBytes(file);
        } catch (IOException e) {
            throw new VideoException(file + ": the reference picture cannot be read", e);
        }
        if (bytes.length == 0) {
            throw new VideoException(file + ": not a picture but an empty file; a JPEG or PNG is needed");
        }
        requireSize(file, bytes);
        try (BytePointer pointer = new BytePointer(bytes);
                Mat buffer = new Mat(1, bytes.length, opencv_core.CV_8UC1, pointer)) {
            Mat grey = opencv_imgcodecs.imdecode(buffer, opencv_imgcodecs.IMREAD_GRAYSCALE);
            if (grey.empty()) {
                grey.close();
                throw new VideoException(file + ": not a picture; a JPEG or PNG is needed");
            }
            return new ReferencePicture(grey);
        }
    }

    /** By its head alone: a file of some kilobytes can unfold into gigabytes. */
    private static void requireSize(Path file, byte[] bytes) throws VideoException {
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(bytes))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                return; // no JPEG or PNG, which is said below
            }
            ImageReader reader = readers.next();
            reader.setInput(in);
            long pixels = (long) reader.getWidth(0) * reader.getHeight(0);
            reader.dispose();
            if (pixels > MOST_PIXELS) {
                throw new VideoException(file + ": the reference picture has " + pixels / 1_000_000
                        + " million pixels, at most " + MOST_PIXELS / 1_000_000 + " are read; make it smaller");
            }
        } catch (VideoException e) {
            throw e;
        } catch (IOException e) {
            throw new VideoException(file + ": not a picture; a JPEG or PNG is needed", e);
        }
    }

    public int widthPx() {
        return widthPx;
    }

    public int heightPx() {
        return heightPx;
    }

    /** Where a frame lies in this picture; empty when the two do not show the same place. May be called from several threads. */
    public Optional<Placement> place(VideoFrame frame) {
        try (BytePointer pixels = new BytePointer(frame.bgr());
                Mat bgr = new Mat(frame.heightPx(), frame.widthPx(), opencv_core.CV_8UC3, pixels);
                Mat full = new Mat()) {
            opencv_imgproc.cvtColor(bgr, full, opencv_imgproc.COLOR_BGR2GRAY);
            return locate(full).map(fit -> new Placement(fit.homography(), fit.inliers(), fit.residualPx()));
        }
    }

    /** Pixels of a grey picture to pixels of this one; empty when the two do not show the same place. */
    Optional<RansacHomography.Fit> locate(Mat grey) {
        describeThis();
        double s = Math.min(1, MAX_WIDTH_PX / (double) grey.cols());
        try (KeyPointVector here = new KeyPointVector();
                Mat described = new Mat();
                DMatchVectorVector pairs = new DMatchVectorVector();
                BFMatcher matcher = new BFMatcher(opencv_core.NORM_L2, false)) {
            describe(grey, s, here, described);
            if (here.size() < MIN_INLIERS || points.size() < MIN_INLIERS) {
                return Optional.empty();
            }
            matcher.knnMatch(described, descriptors, pairs, 2);
            float[] from = new float[2 * (int) pairs.size()];
            float[] to = new float[2 * (int) pairs.size()];
            int n = 0;
            for (long i = 0; i < pairs.size(); i++) {
                if (pairs.get(i).size() < 2) {
                    continue;
                }
                DMatch first = pairs.get(i).get(0);
                DMatch second = pairs.get(i).get(1);
                if (first.distance() < RATIO * second.distance()) {
                    from[2 * n] = (float) ((here.get(first.queryIdx()).pt().x() + 0.5) / s);
                    from[2 * n + 1] = (float) ((here.get(first.queryIdx()).pt().y() + 0.5) / s);
                    to[2 * n] = (float) ((points.get(first.trainIdx()).pt().x() + 0.5) / scale);
                    to[2 * n + 1] = (float) ((points.get(first.trainIdx()).pt().y() + 0.5) / scale);
                    n++;
                }
            }
            return RansacHomography.fit(from, to, n, RANSAC_PX, MIN_INLIERS)
                    .filter(fit -> isSane(fit.homography(), grey.cols(), grey.rows()));
        }
    }

    private synchronized void describeThis() {
        if (!described) {
            describe(this.grey, scale, points, descriptors); // takes a third of a second, so only when it is needed
            described = true;
        }
    }

    /** A picture of the same place is neither mirrored nor shrunk to a line: the turning of its corners is kept. */
    private static boolean isSane(Homography h, int w, int hgt) {
        var a = h.apply(0, 0);
        var b = h.apply(w, 0);
        var c = h.apply(w, hgt);
        var d = h.apply(0, hgt);
        double turn1 = cross(a, b, c);
        double turn2 = cross(b, c, d);
        double turn3 = cross(c, d, a);
        double turn4 = cross(d, a, b);
        return turn1 > 0 && turn2 > 0 && turn3 > 0 && turn4 > 0;
    }

    private static double cross(Point2 a, Point2 b, Point2 c) {
        return (b.x() - a.x()) * (c.y() - b.y()) - (b.y() - a.y()) * (c.x() - b.x());
    }

    private static void describe(Mat grey, double scale, KeyPointVector points, Mat descriptors) {
        try (SIFT sift = SIFT.create(MAX_FEATURES, 3, 0.02, 12, 1.4, false);
                Mat none = new Mat()) {
            if (scale < 1) {
                try (Mat small = new Mat();
                        Size size = new Size(
                                (int) Math.round(grey.cols() * scale), (int) Math.round(grey.rows() * scale))) {
                    opencv_imgproc.resize(grey, small, size, 0, 0, opencv_imgproc.INTER_AREA);
                    sift.detectAndCompute(small, none, points, descriptors, false);
                }
            } else {
                sift.detectAndCompute(grey, none, points, descriptors, false);
            }
        }
    }

    @Override
    public void close() {
        grey.close();
        points.close();
        descriptors.close();
    }
}
