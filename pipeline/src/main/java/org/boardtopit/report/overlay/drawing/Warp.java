package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.BORDER_CONSTANT;
import static org.bytedeco.opencv.global.opencv_core.CV_64FC1;
import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_CUBIC;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_LINEAR;
import static org.bytedeco.opencv.global.opencv_imgproc.WARP_INVERSE_MAP;

import java.nio.ByteBuffer;
import java.nio.DoubleBuffer;
import org.boardtopit.signal.Homography;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;

/** Takes pictures out of a frame: every pixel comes from the frame's own in one step, so nothing is softened twice. */
final class Warp {
    private Warp() {}

    /** The frame's pixels as a picture, not copied; valid as long as the frame. The caller closes it. */
    static Mat pixels(VideoFrame frame) {
        ByteBuffer whole = frame.bgr().duplicate();
        whole.clear();
        return new Mat(frame.heightPx(), frame.widthPx(), CV_8UC3, new BytePointer(whole));
    }

    /**
     * Fills a picture of the same kind; what the frame does not show gets the colour.
     *
     * @param pictureToFrame px of the picture to px of the frame
     * @param target is of the size of the picture already
     */
    static void fill(Mat frame, Homography pictureToFrame, Mat target, Ink outside) {
        int rgb = outside.rgb();
        try (Scalar colour = new Scalar(rgb & 0xff, (rgb >> 8) & 0xff, rgb >> 16, 0)) {
            fill(frame, pictureToFrame, target, INTER_CUBIC, colour);
        }
    }

    /** Fills a picture of one channel; what the frame does not show becomes 0. */
    static void fillWithZero(Mat frame, Homography pictureToFrame, Mat target) {
        try (Scalar none = new Scalar(0, 0, 0, 0)) {
            fill(frame, pictureToFrame, target, INTER_LINEAR, none);
        }
    }

    private static void fill(Mat frame, Homography pictureToFrame, Mat target, int how, Scalar outside) {
        // OpenCV counts from the centre of the first pixel, this project from its outer corner.
        Homography fromCorner = new Homography(1, 0, -0.5, 0, 1, -0.5, 0, 0, 1);
        Homography toCorner = new Homography(1, 0, 0.5, 0, 1, 0.5, 0, 0, 1);
        Homography centres = fromCorner.after(pictureToFrame.after(toCorner));
        try (Mat map = new Mat(3, 3, CV_64FC1);
                Size size = new Size(target.cols(), target.rows())) {
            map.<DoubleBuffer>createBuffer().put(centres.toArray());
            opencv_imgproc.warpPerspective(frame, target, map, size, how | WARP_INVERSE_MAP, BORDER_CONSTANT, outside);
        }
    }
}
