package org.boardtopit.video;

import java.nio.ByteBuffer;
import java.util.Optional;

/**
 * The pixels of one frame as a reader has them. What a use of the frame does not ask for is not computed: most frames are looked
 * at for their brightness only, or not at all.
 *
 * <p>Use from one thread. Valid as long as the frame is; afterwards the methods throw {@link IllegalStateException}.
 */
public interface FramePixels {

    int widthPx();

    int heightPx();

    /**
     * 8-bit blue, green, red, rows from top to bottom without padding: a direct buffer of width * height * 3 bytes, computed at the
     * first call. Writing into it changes this frame. Frames of one reader may share the buffer: when another one has been asked,
     * this one throws {@link IllegalStateException} and does not come back as it was before it was written on.
     */
    ByteBuffer bgr();

    /** The brightness as it is stored; empty where pictures are stored in another way than the usual 8-bit ones. */
    Optional<Luma> luma();

    /** The same pixels, valid until they are released, also when the reader goes on, but not when it is closed. */
    FramePixels kept();

    /** Gives kept pixels back, once; of pixels that were not kept it does nothing. */
    void release();

    /**
     * Brightness, one byte a pixel; not to be written.
     *
     * @param plane direct; the byte of a pixel is at {@code y * strideBytes + x}
     * @param fullRange whether black is 0 and white 255, or 16 and 235 (BT.709, section 4)
     */
    record Luma(ByteBuffer plane, int strideBytes, boolean fullRange) {}
}
