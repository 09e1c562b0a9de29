package org.boardtopit.video;

import java.nio.ByteBuffer;
import java.util.Optional;
import org.boardtopit.video.FramePixels.Luma;

/**
 * One upright picture: 8-bit blue, green, red, rows from top to bottom without padding.
 *
 * <p>Pixel coordinates everywhere in this project: (0, 0) is the outer corner of the top-left pixel, whose centre is (0.5,
 * 0.5); x to the right, y down.
 *
 * <p>A class, not a record: pixels are neither equal nor immutable. A reader uses its memory again, so a frame is valid only
 * until the next call on that reader; {@link #kept()} and {@link #copy()} keep it longer.
 */
public final class VideoFrame {
    private final int index;
    private final long timestampUs;
    private final FramePixels pixels;

    /**
     * Wraps pixels.
     *
     * @param index number of the frame in decoder order, from 0
     * @param timestampUs presentation time since the clip's first frame
     */
    public VideoFrame(int index, long timestampUs, FramePixels pixels) {
        this.index = index;
        this.timestampUs = timestampUs;
        this.pixels = pixels;
    }

    /**
     * Wraps a buffer.
     *
     * @param bgr direct buffer of exactly widthPx * heightPx * 3 bytes
     */
    public VideoFrame(int index, long timestampUs, int widthPx, int heightPx, ByteBuffer bgr) {
        this(index, timestampUs, new PlainPixels(widthPx, heightPx, bgr));
    }

    public int index() {
        return index;
    }

    public long timestampUs() {
        return timestampUs;
    }

    public int widthPx() {
        return pixels.widthPx();
    }

    public int heightPx() {
        return pixels.heightPx();
    }

    /**
     * The pixels themselves, not a copy: byte {@code 3 * (y * widthPx + x)} is blue. Use absolute access only. The first call may
     * have to compute them.
     */
    public ByteBuffer bgr() {
        return pixels.bgr();
    }

    /** The brightness alone, where it can be had without computing; see {@link FramePixels#luma()}. */
    public Optional<Luma> luma() {
        return pixels.luma();
    }

    /** For who writes frames: what they were made from. */
    public FramePixels pixels() {
        return pixels;
    }

    /** The same frame at another time. */
    VideoFrame at(long otherUs) {
        return new VideoFrame(index, otherUs, pixels);
    }

    /** The same frame, valid until {@link #release()} and no longer than its reader is open. */
    public VideoFrame kept() {
        return new VideoFrame(index, timestampUs, pixels.kept());
    }

    /** Gives a kept frame back, once. */
    public void release() {
        pixels.release();
    }

    /** A frame with a buffer of its own, which outlives the reader. */
    public VideoFrame copy() {
        return new VideoFrame(index, timestampUs, PlainPixels.copyOf(pixels));
    }
}
