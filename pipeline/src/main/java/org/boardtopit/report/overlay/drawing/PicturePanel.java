package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.BORDER_CONSTANT;
import static org.bytedeco.opencv.global.opencv_core.BORDER_TRANSPARENT;
import static org.bytedeco.opencv.global.opencv_core.CV_64F;
import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_LINEAR;
import static org.bytedeco.opencv.global.opencv_imgproc.warpPerspective;

import java.nio.DoubleBuffer;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;

/** A part of a larger picture with a canvas of its own, so that what is drawn on it cannot run into the part beside it. */
final class PicturePanel implements AutoCloseable {
    private final Box place;
    private final Canvas canvas;
    private final Mat picture;
    private final Mat map = new Mat(3, 3, CV_64F);
    private final Size size;
    private final Scalar outside;

    /**
     * A panel.
     *
     * @param place whole px of the larger picture
     */
    PicturePanel(Box place) {
        this.place = place;
        int width = (int) place.width();
        int height = (int) place.height();
        canvas = new Canvas(width, height);
        picture = new Mat(height, width, CV_8UC3);
        size = new Size(width, height);
        int rgb = Ink.PANEL.rgb();
        outside = new Scalar(rgb & 0xff, (rgb >> 8) & 0xff, rgb >> 16, 0);
        canvas.drawOn(picture);
        canvas.fill(new Box(0, 0, width, height), Ink.PANEL);
    }

    Canvas canvas() {
        return canvas;
    }

    /** From px of the larger picture to those of the panel. */
    Point2 inside(Point2 p) {
        return new Point2(p.x() - place.left(), p.y() - place.top());
    }

    /**
     * Lays a frame on the panel.
     *
     * @param toWhole from px of the frame to px of the larger picture
     * @param clear true to empty what the frame does not reach, false to leave it as it was
     */
    void lay(VideoFrame frame, Homography toWhole, boolean clear) {
        // OpenCV counts from the centre of the first pixel, this project from its outer corner.
        Homography toCentres = new Homography(1, 0, -place.left() - 0.5, 0, 1, -place.top() - 0.5, 0, 0, 1);
        Homography fromCentres = new Homography(1, 0, 0.5, 0, 1, 0.5, 0, 0, 1);
        map.<DoubleBuffer>createBuffer()
                .put(toCentres.after(toWhole.after(fromCentres)).toArray());
        try (Mat source = Warp.pixels(frame)) {
            int border = clear ? BORDER_CONSTANT : BORDER_TRANSPARENT;
            warpPerspective(source, picture, map, size, INTER_LINEAR, border, outside);
        }
    }

    /** Takes over what another panel of the same size shows, darkened: 0 as it is, 1 black. */
    void takeFaintly(PicturePanel other, double strength) {
        other.picture.convertTo(picture, -1, 1 - strength, 0);
    }

    void stampOn(Canvas whole) {
        whole.stamp(picture, place);
    }

    @Override
    public void close() {
        canvas.close();
        picture.close();
        map.close();
        size.close();
        outside.close();
    }
}
