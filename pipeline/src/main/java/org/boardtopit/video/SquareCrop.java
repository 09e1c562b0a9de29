package org.boardtopit.video;

import java.nio.ByteBuffer;

/**
 * Cuts an upright square out of a frame and scales it to the size a network wants.
 *
 * <p>Bilinear; where the picture is shrunk, the mean of as many bilinear samples as pixels are merged, so that fine detail
 * does not alias. What lies outside the frame is black. Keeps work space between calls: one instance per thread.
 */
public final class SquareCrop {
    private final int sidePx;
    private final int mostSamples;
    private final boolean nearest;
    private byte[] source = new byte[0];
    private int[] lowColumn = new int[0];
    private float[] columnWeight = new float[0];
    private float[] sums = new float[0];
    private final byte[] row;

    /**
     * For crops of one size.
     *
     * @param sidePx side of the crop in its own pixels
     */
    public SquareCrop(int sidePx) {
        this(sidePx, Integer.MAX_VALUE, false);
    }

    private SquareCrop(int sidePx, int mostSamples, boolean nearest) {
        this.mostSamples = mostSamples;
        this.nearest = nearest;
        this.sidePx = sidePx;
        this.row = new byte[3 * sidePx];
    }

    /**
     * For crops of which only the coarse content counts: the samples are pixels and not interpolated.
     *
     * @param mostSamples samples to a side that are merged into one pixel; fewer are faster and let fine detail alias
     */
    public static SquareCrop coarse(int sidePx, int mostSamples) {
        if (mostSamples < 1) {
            throw new IllegalArgumentException("mostSamples must be 1 or more, was " + mostSamples);
        }
        return new SquareCrop(sidePx, mostSamples, true);
    }

    /** A direct buffer that fits {@link #cut}. */
    public ByteBuffer newBuffer() {
        return ByteBuffer.allocateDirect(3 * sidePx * sidePx);
    }

    /**
     * Fills {@code rgb} with the square around a centre: rows from the top, red, green, blue.
     *
     * @param centreXPx middle of the square in pixels of the frame
     * @param squarePx side of the square in pixels of the frame
     */
    public void cut(VideoFrame frame, double centreXPx, double centreYPx, double squarePx, ByteBuffer rgb) {
        double step = squarePx / sidePx;
        int samples = (int) Math.min(
                mostSamples, Math.max(1, Math.ceil(step - 0.2))); // an eighth of a pixel more is not worth four samples
        double left = centreXPx - squarePx / 2;
        double top = centreYPx - squarePx / 2;
        int x0 = clamp((int) Math.floor(left - 1), 0, frame.widthPx() - 1);
        int x1 = clamp((int) Math.ceil(left + squarePx + 1), 0, frame.widthPx() - 1);
        int width = x1 - x0 + 1;
        columns(left, step, samples, x0, width, frame.widthPx());
        int rowBytes = 3 * width;
        if (source.length < 2 * rowBytes) {
            source = new byte[2 * rowBytes];
        }
        int inRow0 = -1;
        int inRow1 = -1;
        for (int y = 0; y < sidePx; y++) {
            java.util.Arrays.fill(sums, 0);
            for (int k = 0; k < samples; k++) {
                double v = top + (y + (k + 0.5) / samples) * step - 0.5;
                int low = (int) Math.floor(v);
                float weight = (float) (v - low);
                if (v < -0.5 || v > frame.heightPx() - 0.5) {
                    continue;
                }
                int a = clamp(low, 0, frame.heightPx() - 1);
                int b = clamp(low + 1, 0, frame.heightPx() - 1);
                if (a != inRow0) {
                    frame.bgr().get(3 * (a * frame.widthPx() + x0), source, 0, rowBytes);
                    inRow0 = a;
                }
                if (b != inRow1) {
                    frame.bgr().get(3 * (b * frame.widthPx() + x0), source, rowBytes, rowBytes);
                    inRow1 = b;
                }
                if (nearest) {
                    addPixels(samples, weight < 0.5f ? 0 : rowBytes);
                } else {
                    addRow(samples, weight, rowBytes);
                }
            }
            writeRow(rgb, y, samples);
        }
    }

    private void columns(double left, double step, int samples, int x0, int width, int frameWidth) {
        int n = sidePx * samples;
        if (lowColumn.length != n) {
            lowColumn = new int[n];
            columnWeight = new float[n];
            sums = new float[3 * sidePx];
        }
        for (int i = 0; i < n; i++) {
            double u = left + (i + 0.5) * step / samples - 0.5;
            if (u < -0.5 || u > frameWidth - 0.5) {
                lowColumn[i] = -1;
                continue;
            }
            double clamped = Math.max(0, Math.min(frameWidth - 1.0, u));
            int low = clamp((int) Math.floor(clamped) - x0, 0, Math.max(0, width - 2));
            lowColumn[i] = 3 * low;
            columnWeight[i] = (float) (clamped - x0 - low);
        }
    }

    private void addRow(int samples, float rowWeight, int rowBytes) {
        int next = rowBytes > 3 ? 3 : 0;
        for (int x = 0; x < sidePx; x++) {
            for (int k = 0; k < samples; k++) {
                int i = x * samples + k;
                int c = lowColumn[i];
                if (c < 0) {
                    continue;
                }
                float w = columnWeight[i];
                for (int channel = 0; channel < 3; channel++) {
                    int p = c + channel;
                    float upper = (source[p] & 0xff) * (1 - w) + (source[p + next] & 0xff) * w;
                    int q = p + rowBytes;
                    float lower = (source[q] & 0xff) * (1 - w) + (source[q + next] & 0xff) * w;
                    sums[3 * x + channel] += upper * (1 - rowWeight) + lower * rowWeight;
                }
            }
        }
    }

    /** Adds the pixels that the samples of a row fall on; of the two rows of pixels the one that begins at a place. */
    private void addPixels(int samples, int from) {
        for (int x = 0; x < sidePx; x++) {
            for (int i = x * samples; i < (x + 1) * samples; i++) {
                if (lowColumn[i] >= 0) {
                    int p = from + lowColumn[i] + (columnWeight[i] < 0.5f ? 0 : 3);
                    sums[3 * x] += source[p] & 0xff;
                    sums[3 * x + 1] += source[p + 1] & 0xff;
                    sums[3 * x + 2] += source[p + 2] & 0xff;
                }
            }
        }
    }

    private void writeRow(ByteBuffer rgb, int y, int samples) {
        float share = 1f / (samples * samples);
        for (int x = 0; x < sidePx; x++) {
            row[3 * x] = (byte) (int) (sums[3 * x + 2] * share + 0.5f);
            row[3 * x + 1] = (byte) (int) (sums[3 * x + 1] * share + 0.5f);
            row[3 * x + 2] = (byte) (int) (sums[3 * x] * share + 0.5f);
        }
        rgb.put(3 * sidePx * y, row, 0, row.length);
    }

    private static int clamp(int v, int low, int high) {
        return Math.max(low, Math.min(high, v));
    }
}
