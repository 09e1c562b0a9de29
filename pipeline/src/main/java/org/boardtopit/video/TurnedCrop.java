package org.boardtopit.video;

import java.nio.ByteBuffer;

/**
 * Cuts a square that stands askew out of a frame and scales it to the size a network wants; the sibling of {@link SquareCrop}
 * for squares that are turned.
 *
 * <p>Bilinear; where the picture is shrunk, the mean of as many bilinear samples as pixels are merged. What lies outside the
 * frame is black. Keeps work space between calls: one instance per thread.
 */
public final class TurnedCrop {
    private final int sidePx;
    private final float[] sums = new float[3];
    private byte[] source = new byte[0];
    private int x0;
    private int y0;
    private int width;
    private int height;

    /**
     * For crops of one size.
     *
     * @param sidePx side of the crop in its own pixels
     */
    public TurnedCrop(int sidePx) {
        this.sidePx = sidePx;
    }

    /**
     * Fills {@code rgb} with the square around a centre: rows from the top, red, green, blue.
     *
     * @param centreXPx middle of the square in pixels of the frame
     * @param squarePx side of the square in pixels of the frame
     * @param turnDeg by how much the square is turned clockwise in the frame; what is in it appears turned the other way
     */
    public void cut(
            VideoFrame frame, double centreXPx, double centreYPx, double squarePx, double turnDeg, ByteBuffer rgb) {
        double step = squarePx / sidePx;
        int samples = (int) Math.max(1, Math.ceil(step - 0.2)); // as SquareCrop
        double cos = Math.cos(Math.toRadians(turnDeg)) * step / samples;
        double sin = Math.sin(Math.toRadians(turnDeg)) * step / samples;
        double half = squarePx / step * samples / 2;
        copySurroundings(frame, centreXPx, centreYPx, squarePx);
        float share = 1f / (samples * samples);
        for (int y = 0; y < sidePx; y++) {
            for (int x = 0; x < sidePx; x++) {
                sums[0] = 0;
                sums[1] = 0;
                sums[2] = 0;
                for (int k = 0; k < samples * samples; k++) {
                    double u = x * samples + k % samples + 0.5 - half;
                    double v = y * samples + k / samples + 0.5 - half;
                    add(frame, centreXPx + cos * u - sin * v - 0.5, centreYPx + sin * u + cos * v - 0.5);
                }
                int at = 3 * (y * sidePx + x);
                rgb.put(at, (byte) (int) (sums[2] * share + 0.5f));
                rgb.put(at + 1, (byte) (int) (sums[1] * share + 0.5f));
                rgb.put(at + 2, (byte) (int) (sums[0] * share + 0.5f));
            }
        }
    }

    /** The upright rectangle that holds the square, however it is turned; reading it in rows is the fast way. */
    private void copySurroundings(VideoFrame frame, double centreXPx, double centreYPx, double squarePx) {
        double reach = squarePx / Math.sqrt(2) + 1;
        x0 = clamp((int) Math.floor(centreXPx - reach), frame.widthPx());
        y0 = clamp((int) Math.floor(centreYPx - reach), frame.heightPx());
        width = clamp((int) Math.ceil(centreXPx + reach), frame.widthPx()) - x0 + 1;
        height = clamp((int) Math.ceil(centreYPx + reach), frame.heightPx()) - y0 + 1;
        if (source.length < 3 * width * height) {
            source = new byte[3 * width * height];
        }
        for (int y = 0; y < height; y++) {
            frame.bgr().get(3 * ((y0 + y) * frame.widthPx() + x0), source, 3 * y * width, 3 * width);
        }
    }

    /** Adds the sample at a place, given in columns and rows of pixel centres. */
    private void add(VideoFrame frame, double column, double row) {
        if (column < -0.5 || row < -0.5 || column > frame.widthPx() - 0.5 || row > frame.heightPx() - 0.5) {
            return;
        }
        double c = Math.max(0, Math.min(width - 1.0, column - x0));
        double r = Math.max(0, Math.min(height - 1.0, row - y0));
        int left = (int) c;
        int top = (int) r;
        float right = (float) (c - left);
        float bottom = (float) (r - top);
        int at = 3 * (top * width + left);
        int nextColumn = left + 1 < width ? 3 : 0;
        int nextRow = top + 1 < height ? 3 * width : 0;
        for (int channel = 0; channel < 3; channel++) {
            int p = at + channel;
            float upper = (source[p] & 0xff) * (1 - right) + (source[p + nextColumn] & 0xff) * right;
            int q = p + nextRow;
            float lower = (source[q] & 0xff) * (1 - right) + (source[q + nextColumn] & 0xff) * right;
            sums[channel] += upper * (1 - bottom) + lower * bottom;
        }
    }

    private static int clamp(int v, int size) {
        return Math.max(0, Math.min(size - 1, v));
    }
}
