package org.boardtopit.report.overlay.drawing;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoFrame;

/** Frames of one colour, and questions about what was painted on them. */
final class Pixels {
    private static final int GUARD_BYTES = 4096;
    private static final byte GUARD = 0x5a;

    private final ByteBuffer all;
    private final VideoFrame frame;

    /** A frame of one grey, inside a larger buffer that nobody may touch. */
    Pixels(int index, long timestampUs, int widthPx, int heightPx, int grey) {
        int bytes = widthPx * heightPx * 3;
        all = ByteBuffer.allocateDirect(bytes + 2 * GUARD_BYTES);
        for (int i = 0; i < all.capacity(); i++) {
            all.put(i, GUARD);
        }
        ByteBuffer inner = all.slice(GUARD_BYTES, bytes);
        for (int i = 0; i < bytes; i++) {
            inner.put(i, (byte) grey);
        }
        frame = new VideoFrame(index, timestampUs, widthPx, heightPx, inner);
    }

    VideoFrame frame() {
        return frame;
    }

    Pixels painted(OverlayPainter painter) {
        painter.paint(frame);
        return this;
    }

    int rgb(int x, int y) {
        int place = 3 * (y * frame.widthPx() + x);
        return (frame.bgr().get(place) & 0xff)
                | (frame.bgr().get(place + 1) & 0xff) << 8
                | (frame.bgr().get(place + 2) & 0xff) << 16;
    }

    /** Pixels of exactly this colour in a part of the picture, as their centres. */
    List<Point2> of(Ink ink, int left, int top, int right, int bottom) {
        List<Point2> found = new ArrayList<>();
        for (int y = top; y < bottom; y++) {
            for (int x = left; x < right; x++) {
                if (rgb(x, y) == ink.rgb()) {
                    found.add(new Point2(x + 0.5, y + 0.5));
                }
            }
        }
        return found;
    }

    /** Number of pixels above a line of the picture that are much lighter than the frame's grey. */
    int lightAbove(int bottom) {
        int count = 0;
        for (int y = 0; y < bottom; y++) {
            for (int x = 0; x < frame.widthPx(); x++) {
                count += (rgb(x, y) & 0xff) > 0xb0 ? 1 : 0;
            }
        }
        return count;
    }

    List<Point2> of(Ink ink) {
        return of(ink, 0, 0, frame.widthPx(), frame.heightPx());
    }

    static Point2 centre(List<Point2> points) {
        return points.stream().reduce(new Point2(0, 0), Point2::plus).times(1.0 / points.size());
    }

    boolean guardsAreUntouched() {
        for (int i = 0; i < GUARD_BYTES; i++) {
            if (all.get(i) != GUARD || all.get(all.capacity() - 1 - i) != GUARD) {
                return false;
            }
        }
        return true;
    }

    boolean isAll(int grey) {
        return of(frame.bgr(), grey);
    }

    private static boolean of(ByteBuffer bytes, int value) {
        for (int i = 0; i < bytes.capacity(); i++) {
            if ((bytes.get(i) & 0xff) != value) {
                return false;
            }
        }
        return true;
    }

    boolean equalsPixelsOf(Pixels other) {
        return frame.bgr()
                .duplicate()
                .clear()
                .equals(other.frame.bgr().duplicate().clear());
    }
}
