package org.boardtopit.ground.opencv;

import java.util.Optional;
import org.boardtopit.video.FramePixels.Luma;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * The brightness of a frame: the one that is stored where it is, without a detour by the colours, spread from the narrow range to
 * 0 to 255; else computed from the colours.
 */
final class FrameGrey implements AutoCloseable {
    private static final double NARROW_BLACK = 16;
    private static final double NARROW_WHITE = 235;

    private final BytePointer pixels;
    private final Mat stored;
    private final boolean narrow;
    private Mat whole; // made when it is asked for

    private FrameGrey(BytePointer pixels, Mat stored, boolean narrow) {
        this.pixels = pixels;
        this.stored = stored;
        this.narrow = narrow;
    }

    /** Of a frame, and valid as long as it. */
    static FrameGrey of(VideoFrame frame) {
        Optional<Luma> luma = frame.luma();
        if (luma.isEmpty()) {
            return ofColours(frame);
        }
        BytePointer plane = new BytePointer(luma.get().plane());
        Mat stored = new Mat(
                frame.heightPx(),
                frame.widthPx(),
                opencv_core.CV_8UC1,
                plane,
                luma.get().strideBytes());
        return new FrameGrey(plane, stored, !luma.get().fullRange());
    }

    private static FrameGrey ofColours(VideoFrame frame) {
        Mat grey = new Mat();
        try (BytePointer colours = new BytePointer(frame.bgr());
                Mat bgr = new Mat(frame.heightPx(), frame.widthPx(), opencv_core.CV_8UC3, colours)) {
            opencv_imgproc.cvtColor(bgr, grey, opencv_imgproc.COLOR_BGR2GRAY);
        }
        return new FrameGrey(null, grey, false);
    }

    /**
     * Every pixel the mean of a square of them; what is left over at the right and lower edge is left out. The caller closes it.
     * The brightness is spread first: rounded after the mean it would be coarser than the mean is.
     *
     * @param step side of the square
     */
    Mat reduced(int step) {
        Mat small = new Mat();
        int width = stored.cols() / step;
        int height = stored.rows() / step;
        try (Rect even = new Rect(0, 0, width * step, height * step);
                Mat part = new Mat(whole(), even);
                Size size = new Size(width, height)) {
            opencv_imgproc.resize(part, small, size, 0, 0, opencv_imgproc.INTER_AREA);
        }
        return small;
    }

    /** In the frame's own size; stays this object's. */
    Mat whole() {
        if (whole == null) {
            whole = new Mat();
            stored.copyTo(whole);
            spread(whole, whole);
        }
        return whole;
    }

    private void spread(Mat from, Mat to) {
        if (narrow) {
            double factor = 255 / (NARROW_WHITE - NARROW_BLACK);
            from.convertTo(to, -1, factor, -NARROW_BLACK * factor);
        }
    }

    @Override
    public void close() {
        if (whole != null) {
            whole.close();
        }
        stored.close();
        if (pixels != null) {
            pixels.close();
        }
    }
}
