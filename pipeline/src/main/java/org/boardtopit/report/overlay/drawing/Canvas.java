package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;
import static org.bytedeco.opencv.global.opencv_core.addWeighted;
import static org.bytedeco.opencv.global.opencv_imgproc.LINE_8;
import static org.bytedeco.opencv.global.opencv_imgproc.LINE_AA;

import java.nio.ByteBuffer;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import org.boardtopit.report.overlay.Box;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Point;
import org.bytedeco.opencv.opencv_core.Rect;
import org.bytedeco.opencv.opencv_core.Scalar;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * Anti-aliased drawing on one frame's own pixels, in the project's pixel coordinates (the first pixel's centre is 0.5, 0.5)
 * and with sub-pixel places.
 *
 * <p>Drawing that leaves the picture is cut off; a place that is unknown or absurdly far outside draws nothing. The native
 * objects are made once and used again. Use from one thread.
 */
final class Canvas implements AutoCloseable {
    /** OpenCV's fixed point: places are given in sixteenths of a pixel. */
    private static final int SHIFT = 4;

    private static final double ONE = 1 << SHIFT;
    /** Beyond this the fixed-point numbers could run over. */
    private static final double FARTHEST_PX = 50_000;

    /** Smaller letters cannot be read and are left out. */
    private static final double SMALLEST_CAP_PX = 4;

    private static final int SPRITES_KEPT = 128;

    private final int widthPx;
    private final int heightPx;
    private final Point from = new Point();
    private final Point to = new Point();
    private final Point corners = new Point(3);
    private final Size axes = new Size();
    private final Lettering lettering = new Lettering();
    private final Map<SpriteKey, TextSprite> sprites = new LinkedHashMap<>(2 * SPRITES_KEPT, 0.75f, true);
    private final Map<Ink, Scalar> colours = new EnumMap<>(Ink.class);
    private final Mat background = new Mat();
    private Mat picture = new Mat();
    private ByteBuffer pixels = ByteBuffer.allocateDirect(0);

    Canvas(int widthPx, int heightPx) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        for (Ink ink : Ink.values()) {
            int rgb = ink.rgb();
            colours.put(ink, new Scalar(rgb & 0xff, (rgb >> 8) & 0xff, rgb >> 16, 0));
        }
    }

    int widthPx() {
        return widthPx;
    }

    int heightPx() {
        return heightPx;
    }

    /** From now on drawing goes to these pixels. */
    void drawOn(ByteBuffer bgr) {
        picture.close();
        // The pointer keeps the buffer reachable; a duplicate, because its position decides where the pixels start.
        ByteBuffer whole = bgr.duplicate();
        whole.clear();
        pixels = whole;
        picture = new Mat(heightPx, widthPx, CV_8UC3, new BytePointer(whole));
    }

    /** From now on drawing goes to this picture, which stays the caller's. */
    void drawOn(Mat own) {
        picture.close();
        picture = new Mat(own);
        pixels = picture.createBuffer();
    }

    Mat picture() {
        return picture;
    }

    void line(double x1, double y1, double x2, double y2, int thickness, Ink ink) {
        if (isNear(x1, y1) && isNear(x2, y2)) {
            opencv_imgproc.line(picture, at(from, x1, y1), at(to, x2, y2), colours.get(ink), thickness, LINE_AA, SHIFT);
        }
    }

    /** Strokes with gaps, the first stroke starting at the first point. */
    void dashedLine(double x1, double y1, double x2, double y2, double stroke, double gap, int thickness, Ink ink) {
        double length = Math.hypot(x2 - x1, y2 - y1);
        if (!isNear(x1, y1) || !isNear(x2, y2) || length == 0) {
            return;
        }
        double ux = (x2 - x1) / length;
        double uy = (y2 - y1) / length;
        for (double s = 0; s < length; s += stroke + gap) {
            double e = Math.min(length, s + stroke);
            line(x1 + s * ux, y1 + s * uy, x1 + e * ux, y1 + e * uy, thickness, ink);
        }
    }

    void disc(double x, double y, double radius, Ink ink) {
        if (isNear(x, y)) {
            opencv_imgproc.circle(picture, at(from, x, y), fixed(radius), colours.get(ink), -1, LINE_AA, SHIFT);
        }
    }

    void ring(double x, double y, double radius, int thickness, Ink ink) {
        if (isNear(x, y)) {
            opencv_imgproc.circle(picture, at(from, x, y), fixed(radius), colours.get(ink), thickness, LINE_AA, SHIFT);
        }
    }

    /** An arc from one direction to another, degrees clockwise from the x axis as seen in the picture. */
    void arc(double x, double y, double radius, double startDeg, double endDeg, int thickness, Ink ink) {
        if (isNear(x, y)) {
            axes.width(fixed(radius)).height(fixed(radius));
            opencv_imgproc.ellipse(
                    picture, at(from, x, y), axes, 0, startDeg, endDeg, colours.get(ink), thickness, LINE_AA, SHIFT);
        }
    }

    void triangle(double x1, double y1, double x2, double y2, double x3, double y3, Ink ink) {
        if (isNear(x1, y1) && isNear(x2, y2) && isNear(x3, y3)) {
            at(corners.position(0), x1, y1);
            at(corners.position(1), x2, y2);
            at(corners.position(2), x3, y3);
            corners.position(0);
            opencv_imgproc.fillConvexPoly(picture, corners, 3, colours.get(ink), LINE_AA, SHIFT);
        }
    }

    void fill(Box box, Ink ink) {
        int left = (int) Math.round(box.left());
        int top = (int) Math.round(box.top());
        int right = (int) Math.round(box.right());
        int bottom = (int) Math.round(box.bottom());
        if (right > left && bottom > top) {
            opencv_imgproc.rectangle(
                    picture, from.x(left).y(top), to.x(right - 1).y(bottom - 1), colours.get(ink), -1, LINE_8, 0);
        }
    }

    /** Darkens a part of the picture; strength 0 leaves it, 1 makes it black. */
    void shade(Box box, double strength) {
        try (Mat part = part(box)) {
            if (part != null) {
                part.convertTo(part, -1, 1 - strength, 0);
            }
        }
    }

    /** Draws something that shows through: strength 0 leaves the picture, 1 is ordinary drawing. Not nested. */
    void faintly(Box box, double strength, Runnable drawing) {
        try (Mat part = part(box)) {
            if (part == null || strength >= 1) {
                drawing.run();
                return;
            }
            part.copyTo(background);
            drawing.run();
            addWeighted(part, strength, background, 1 - strength, 0, part);
        }
    }

    /** Copies a picture to a place of its size on whole pixels; nothing when that place is not wholly inside. */
    void stamp(Mat image, Box place) {
        if (new Box(0, 0, widthPx, heightPx).contains(place)) {
            try (Mat part = part(place)) {
                image.copyTo(part);
            }
        }
    }

    Lettering lettering() {
        return lettering;
    }

    /** Text with an outline, its capitals capPx high, standing on the base line from x on. ASCII, the degree sign and plus-minus. */
    void text(String text, double x, double baseline, double capPx, Ink ink) {
        if (capPx >= SMALLEST_CAP_PX && isNear(x, baseline)) {
            sprite(text, capPx)
                    .layOn(
                            pixels,
                            widthPx,
                            heightPx,
                            (int) Math.round(x),
                            (int) Math.round(baseline),
                            ink.rgb(),
                            Ink.OUTLINE.rgb());
        }
    }

    /** Text that changes with every frame, put together from single letters, so that few are kept. */
    void changingText(String text, double x, double baseline, double capPx, Ink ink) {
        double scale = lettering.scaleFor(capPx);
        double pen = x;
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) != ' ') {
                text(text.substring(i, i + 1), pen, baseline, capPx, ink);
            }
            pen += lettering.advance(text, i, i + 1) * scale;
        }
    }

    private TextSprite sprite(String text, double capPx) {
        TextSprite kept = sprites.computeIfAbsent(
                new SpriteKey(text, capPx), key -> new TextSprite(key.text(), key.capPx(), lettering));
        if (sprites.size() > SPRITES_KEPT) {
            Iterator<TextSprite> eldest = sprites.values().iterator();
            eldest.next();
            eldest.remove();
        }
        return kept;
    }

    private record SpriteKey(String text, double capPx) {}

    /** The part of the picture inside a box, or null when they do not meet. The caller closes it. */
    private Mat part(Box box) {
        int left = (int) Math.max(0, Math.floor(box.left()));
        int top = (int) Math.max(0, Math.floor(box.top()));
        int right = (int) Math.min(widthPx, Math.ceil(box.right()));
        int bottom = (int) Math.min(heightPx, Math.ceil(box.bottom()));
        if (right <= left || bottom <= top) {
            return null;
        }
        try (Rect rect = new Rect(left, top, right - left, bottom - top)) {
            return new Mat(picture, rect);
        }
    }

    private static boolean isNear(double x, double y) {
        // False for NaN as well.
        return Math.abs(x) < FARTHEST_PX && Math.abs(y) < FARTHEST_PX;
    }

    private static Point at(Point point, double x, double y) {
        // OpenCV counts from the centre of the first pixel, this project from its outer corner.
        return point.x((int) Math.round((x - 0.5) * ONE)).y((int) Math.round((y - 0.5) * ONE));
    }

    private static int fixed(double length) {
        return (int) Math.max(1, Math.round(length * ONE));
    }

    @Override
    public void close() {
        picture.close();
        background.close();
        colours.values().forEach(Scalar::close);
        from.close();
        to.close();
        corners.close();
        axes.close();
    }
}
