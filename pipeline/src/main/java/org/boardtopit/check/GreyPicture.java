package org.boardtopit.check;

import java.nio.ByteBuffer;
import org.boardtopit.video.VideoFrame;

/** Brightness of a picture, 0 to 255, rows from the top. */
final class GreyPicture {
    private final int widthPx;
    private final int heightPx;
    private final byte[] values;

    private GreyPicture(int widthPx, int heightPx) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.values = new byte[widthPx * heightPx];
    }

    /** With the weights of ITU-R BT.601, in 256ths. */
    static GreyPicture of(VideoFrame frame) {
        GreyPicture grey = new GreyPicture(frame.widthPx(), frame.heightPx());
        ByteBuffer bgr = frame.bgr();
        byte[] row = new byte[3 * grey.widthPx];
        for (int y = 0; y < grey.heightPx; y++) {
            bgr.get(y * row.length, row, 0, row.length);
            for (int x = 0; x < grey.widthPx; x++) {
                int sum = 29 * (row[3 * x] & 0xff) + 150 * (row[3 * x + 1] & 0xff) + 77 * (row[3 * x + 2] & 0xff);
                grey.values[y * grey.widthPx + x] = (byte) (sum >> 8);
            }
        }
        return grey;
    }

    /** The mean of squares of so many pixels; a rest at the right and lower edge is left out. */
    GreyPicture shrunk(int step) {
        GreyPicture small = new GreyPicture(widthPx / step, heightPx / step);
        for (int y = 0; y < small.heightPx; y++) {
            for (int x = 0; x < small.widthPx; x++) {
                int sum = 0;
                for (int dy = 0; dy < step; dy++) {
                    for (int dx = 0; dx < step; dx++) {
                        sum += at(x * step + dx, y * step + dy);
                    }
                }
                small.values[y * small.widthPx + x] = (byte) (sum / (step * step));
            }
        }
        return small;
    }

    int widthPx() {
        return widthPx;
    }

    int heightPx() {
        return heightPx;
    }

    int at(int x, int y) {
        return values[y * widthPx + x] & 0xff;
    }
}
