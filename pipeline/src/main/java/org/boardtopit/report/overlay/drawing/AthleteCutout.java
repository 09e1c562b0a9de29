package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;
import static org.bytedeco.opencv.global.opencv_core.absdiff;
import static org.bytedeco.opencv.global.opencv_core.bitwise_and;
import static org.bytedeco.opencv.global.opencv_core.bitwise_or;
import static org.bytedeco.opencv.global.opencv_imgproc.COLOR_BGR2GRAY;
import static org.bytedeco.opencv.global.opencv_imgproc.GaussianBlur;
import static org.bytedeco.opencv.global.opencv_imgproc.LINE_AA;
import static org.bytedeco.opencv.global.opencv_imgproc.THRESH_BINARY;
import static org.bytedeco.opencv.global.opencv_imgproc.cvtColor;
import static org.bytedeco.opencv.global.opencv_imgproc.line;
import static org.bytedeco.opencv.global.opencv_imgproc.threshold;

import java.nio.ByteBuffer;
import org.boardtopit.signal.Homography;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Point;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * The athlete of one frame cut out with a soft edge: what lies under the body's strokes, and what around them differs from the empty
 * runway. A body that is not where the points say is cut wrong; the still of the same instant shows it whole.
 */
final class AthleteCutout {
    /** Around the strokes, in standing heights: hair, cloth, a hand that blurs. */
    private static final double ROOM_STATURES = 0.05;
    /** Grey levels by which a pixel of the body differs from the runway behind it; above the noise of a phone at dusk. */
    private static final double DIFFERENT = 18;

    private static final double SOFT_STATURES = 0.008;

    private AthleteCutout() {}

    /** Lays the athlete of a layer on a picture. */
    static void lay(PhasePicture.Layer layer, Mat empty, Mat target) {
        try (Mat core = shape(layer, -0.012);
                Mat around = shape(layer, ROOM_STATURES);
                Mat different = new Mat()) {
            difference(layer.pixels(), empty, different);
            bitwise_and(different, around, different);
            bitwise_or(different, core, different);
            bitwise_and(different, layer.seen(), different);
            soften(different, SOFT_STATURES * layer.figure().staturePx());
            blend(layer.pixels(), different, target);
        }
    }

    private static void difference(Mat pixels, Mat empty, Mat mask) {
        try (Mat apart = new Mat()) {
            absdiff(pixels, empty, apart);
            cvtColor(apart, mask, COLOR_BGR2GRAY);
            threshold(mask, mask, DIFFERENT, 255, THRESH_BINARY);
        }
    }

    private static void soften(Mat mask, double sigmaPx) {
        double sigma = Math.max(0.8, sigmaPx);
        try (Size any = new Size(0, 0)) {
            GaussianBlur(mask, mask, any, sigma);
        }
    }

    /** 255 under the strokes of the body, made thicker by a share of the standing height. The caller closes it. */
    static Mat shape(PhasePicture.Layer layer, double roomStatures) {
        Homography map = layer.figure().frameToPicture();
        double stature = layer.figure().staturePx();
        Mat shape;
        try (Scalar black = new Scalar(0)) {
            shape = new Mat(layer.pixels().rows(), layer.pixels().cols(), CV_8UC1, black);
        }
        try (Scalar white = new Scalar(255);
                Point from = new Point();
                Point to = new Point()) {
            for (BodyShape.Stroke stroke :
                    BodyShape.strokes(layer.figure().pose(), p -> p.isKnown() ? map.apply(p) : p)) {
                int thick = (int) Math.max(1, Math.round(2 * (stroke.radius() + roomStatures) * stature));
                from.x((int) Math.round(stroke.from().x()))
                        .y((int) Math.round(stroke.from().y()));
                to.x((int) Math.round(stroke.to().x()))
                        .y((int) Math.round(stroke.to().y()));
                line(shape, from, to, white, thick, LINE_AA, 0);
            }
        }
        return shape;
    }

    private static void blend(Mat pixels, Mat mask, Mat target) {
        int width = target.cols();
        byte[] over = new byte[3 * width];
        byte[] under = new byte[3 * width];
        byte[] share = new byte[width];
        ByteBuffer from = pixels.createBuffer();
        ByteBuffer masks = mask.createBuffer();
        ByteBuffer to = target.createBuffer();
        for (int y = 0; y < target.rows(); y++) {
            masks.get(y * width, share);
            from.get(3 * y * width, over);
            to.get(y * (int) target.step(), under);
            for (int i = 0; i < under.length; i++) {
                int alpha = share[i / 3] & 0xff;
                int below = under[i] & 0xff;
                under[i] = (byte) (below + (((over[i] & 0xff) - below) * alpha) / 255);
            }
            to.put(y * (int) target.step(), under);
        }
    }
}
