package org.boardtopit.video;

import java.nio.ByteBuffer;

/**
 * One upright picture: 8-bit blue, green, red, rows from top to bottom without padding.
 *
 * <p>Pixel coordinates everywhere in this project: (0, 0) is the outer corner of the top-left pixel, whose centre is (0.5,
 * 0.5); x to the right, y down.
 *
 * <p>A class, not a record: pixels are neither equal nor immutable. The buffer is direct. A reader may reuse it, so it is
 * valid only until the next call on that reader; {@link #copy()} keeps it longer.
 */
public final class VideoFrame {
    private final int index;
    private final long timestampUs;
    private final int widthPx;
    private final int heightPx;
    private final ByteBuffer bgr;

    /**
     * Wraps pixels.
     *
     * @param index number of the frame in decoder order, from 0
     * @param timestampUs presentation time since the clip's first frame
     * @param bgr direct buffer of exactly widthPx * heightPx * 3 bytes
     */
    public VideoFrame(int index, long timestampUs, int widthPx, int heightPx, ByteBuffer bgr) {
        if (!bgr.isDirect() || bgr.capacity() != widthPx * heightPx * 3) {
            throw new IllegalArgumentException(
                    "a frame needs a direct buffer of " + widthPx * heightPx * 3 + " bytes, was " + bgr.capacity());
        }
        this.index = index;
        this.timestampUs = timestampUs;
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.bgr = bgr;
    }

    public int index() {
        return index;
    }

    public long timestampUs() {
        return timestampUs;
    }

    public int widthPx() {
        return widthPx;
    }

    public int heightPx() {
        return heightPx;
    }

    /** The pixels themselves, not a copy: byte {@code 3 * (y * widthPx + x)} is blue. Use absolute access only. */
    public ByteBuffer bgr() {
        return bgr;
    }

    /** A frame with pixels of its own. */
    public VideoFrame copy() {
        ByteBuffer own = ByteBuffer.allocateDirect(bgr.capacity());
        own.put(0, bgr, 0, bgr.capacity());
        return new VideoFrame(index, timestampUs, widthPx, heightPx, own);
    }
}
