package org.boardtopit.video;

import java.nio.ByteBuffer;
import java.util.Optional;

/** Pixels in a buffer. */
record PlainPixels(int widthPx, int heightPx, ByteBuffer bgr) implements FramePixels {
    PlainPixels {
        if (!bgr.isDirect() || bgr.capacity() != widthPx * heightPx * 3) {
            throw new IllegalArgumentException(
                    "a frame needs a direct buffer of " + widthPx * heightPx * 3 + " bytes, was " + bgr.capacity());
        }
    }

    static PlainPixels copyOf(FramePixels other) {
        ByteBuffer bgr = other.bgr();
        ByteBuffer own = ByteBuffer.allocateDirect(bgr.capacity());
        own.put(0, bgr, 0, bgr.capacity());
        return new PlainPixels(other.widthPx(), other.heightPx(), own);
    }

    @Override
    public Optional<Luma> luma() {
        return Optional.empty();
    }

    @Override
    public FramePixels kept() {
        return copyOf(this);
    }

    @Override
    public void release() {
        // The heap frees the buffer.
    }
}
