package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC1;
import static org.bytedeco.opencv.global.opencv_imgproc.FONT_HERSHEY_SIMPLEX;
import static org.bytedeco.opencv.global.opencv_imgproc.INTER_AREA;
import static org.bytedeco.opencv.global.opencv_imgproc.LINE_8;
import static org.bytedeco.opencv.global.opencv_imgproc.circle;
import static org.bytedeco.opencv.global.opencv_imgproc.putText;
import static org.bytedeco.opencv.global.opencv_imgproc.rectangle;
import static org.bytedeco.opencv.global.opencv_imgproc.resize;

import java.nio.ByteBuffer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Point;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * A piece of text as two masks, its letters and the outline around them, ready to be laid on a picture many times.
 *
 * <p>Drawing outlined letters takes OpenCV most of a millisecond a line, laying a mask takes a few microseconds. The masks
 * are drawn four times too large and averaged down, which also allows strokes of any width.
 */
final class TextSprite {
    private static final int OVERSAMPLING = 4;
    /** Half the distance of the dots of an umlaut at scale 1. */
    private static final double DOTS_APART = 4.8;
    /** A plus-minus is made of both signs, moved apart; at scale 1 their bars are 9 above the base line. */
    private static final double PLUS_RISE = 3;

    private static final double MINUS_FALL = 8;

    private final int widthPx;
    private final int heightPx;
    private final int padPx;
    private final int baselinePx;
    private final byte[] letters;
    private final byte[] outline;

    /** Text of ASCII, umlauts, degree signs and plus-minus, capitals capPx high. */
    TextSprite(String text, double capPx, Lettering lettering) {
        double strokePx = Math.max(1.15, capPx / 8.5);
        double rimPx = Math.max(1.1, capPx / 9);
        padPx = (int) Math.ceil(rimPx + strokePx / 2) + 1;
        baselinePx = padPx + (int) Math.ceil(capPx * tallest(text));
        widthPx = (int) Math.ceil(lettering.widthPx(text, capPx)) + 2 * padPx;
        heightPx = baselinePx + (int) Math.ceil(capPx * 0.4) + padPx;
        letters = mask(text, capPx, strokePx, lettering);
        outline = mask(text, capPx, strokePx + 2 * rimPx, lettering);
    }

    /** Height of the text above its baseline in capitals: the dots of a capital umlaut stand above it. */
    private static double tallest(String text) {
        boolean dots = text.chars().anyMatch(c -> Lettering.isUmlaut((char) c) && Character.isUpperCase(c));
        return dots ? Lettering.DOTS_ABOVE_CAPITAL / Lettering.CAP_HEIGHT : 1;
    }

    private byte[] mask(String text, double capPx, double strokePx, Lettering lettering) {
        int stroke = Math.max(1, (int) Math.round(strokePx * OVERSAMPLING));
        byte[] coverage = new byte[widthPx * heightPx];
        try (Mat large = new Mat(heightPx * OVERSAMPLING, widthPx * OVERSAMPLING, CV_8UC1);
                Mat small = new Mat();
                Size size = new Size(widthPx, heightPx);
                Scalar black = new Scalar(0);
                Scalar white = new Scalar(255);
                Point corner = new Point(0, 0);
                Point end = new Point(large.cols(), large.rows())) {
            rectangle(large, corner, end, black, -1, LINE_8, 0);
            write(text, capPx * OVERSAMPLING, stroke, lettering, large, white);
            resize(large, small, size, 0, 0, INTER_AREA);
            small.<ByteBuffer>createBuffer().get(0, coverage);
        }
        return coverage;
    }

    private void write(String text, double cap, int stroke, Lettering lettering, Mat large, Scalar white) {
        double scale = lettering.scaleFor(cap);
        double pen = padPx * OVERSAMPLING;
        double baseline = baselinePx * OVERSAMPLING;
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) == Lettering.DEGREE) {
                degree(pen, baseline - cap, Lettering.DEGREE_RADIUS * scale, stroke, large, white);
            } else if (text.charAt(i) == Lettering.PLUS_MINUS) {
                letter("+", pen, baseline - PLUS_RISE * scale, scale, stroke, large, white);
                letter("-", pen, baseline + MINUS_FALL * scale, scale, stroke, large, white);
            } else {
                char c = text.charAt(i);
                letter(String.valueOf(Lettering.withoutDots(c)), pen, baseline, scale, stroke, large, white);
                if (Lettering.isUmlaut(c)) {
                    double middle = pen + lettering.advance(text, i, i + 1) * scale / 2;
                    dots(c, middle, baseline, scale, stroke, large, white);
                }
            }
            pen += lettering.advance(text, i, i + 1) * scale;
        }
    }

    private static void letter(
            String letter, double x, double baseline, double scale, int stroke, Mat large, Scalar white) {
        try (Point at = new Point((int) Math.round(x), (int) Math.round(baseline))) {
            putText(large, letter, at, FONT_HERSHEY_SIMPLEX, scale, white, stroke, LINE_8, false);
        }
    }

    /** The letters have no dots above them: two, as thick as a stroke. */
    private static void dots(
            char umlaut, double middle, double baseline, double scale, int stroke, Mat large, Scalar white) {
        double above = Character.isUpperCase(umlaut) ? Lettering.DOTS_ABOVE_CAPITAL : Lettering.DOTS_ABOVE_SMALL;
        int y = (int) Math.round(baseline - above * scale);
        for (int side = -1; side <= 1; side += 2) {
            try (Point at = new Point((int) Math.round(middle + side * DOTS_APART * scale), y)) {
                circle(large, at, Math.max(1, (int) Math.round(0.55 * stroke)), white, -1, LINE_8, 0);
            }
        }
    }

    /** The letters have no degree sign: a small ring. */
    private static void degree(double x, double top, double radius, int stroke, Mat large, Scalar white) {
        try (Point at = new Point((int) Math.round(x + 1.8 * radius), (int) Math.round(top + radius))) {
            circle(large, at, (int) Math.round(radius), white, stroke, LINE_8, 0);
        }
    }

    /**
     * Lays the text on a picture of blue, green, red bytes without padding; what leaves it is cut off.
     *
     * @param x where the first letter's room begins
     * @param baseline where the letters stand
     */
    void layOn(ByteBuffer bgr, int pictureWidthPx, int pictureHeightPx, int x, int baseline, int rgb, int outlineRgb) {
        int left = x - padPx;
        int top = baseline - baselinePx;
        int fromColumn = Math.max(0, -left);
        int toColumn = Math.min(widthPx, pictureWidthPx - left);
        int toRow = Math.min(heightPx, pictureHeightPx - top);
        for (int row = Math.max(0, -top); row < toRow; row++) {
            int pixel = 3 * ((top + row) * pictureWidthPx + left + fromColumn);
            int cell = row * widthPx + fromColumn;
            for (int column = fromColumn; column < toColumn; column++, cell++, pixel += 3) {
                int rim = outline[cell] & 0xff;
                if (rim != 0) {
                    int ink = letters[cell] & 0xff;
                    blend(bgr, pixel, rim, outlineRgb & 0xff, ink, rgb & 0xff);
                    blend(bgr, pixel + 1, rim, (outlineRgb >> 8) & 0xff, ink, (rgb >> 8) & 0xff);
                    blend(bgr, pixel + 2, rim, outlineRgb >> 16, ink, rgb >> 16);
                }
            }
        }
    }

    private static void blend(ByteBuffer bgr, int place, int rim, int rimColour, int ink, int inkColour) {
        int below = bgr.get(place) & 0xff;
        int outlined = below + ((rimColour - below) * rim) / 255;
        bgr.put(place, (byte) (outlined + ((inkColour - outlined) * ink) / 255));
    }
}
