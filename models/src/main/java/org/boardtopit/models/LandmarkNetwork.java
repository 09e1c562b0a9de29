package org.boardtopit.models;

import java.nio.ByteBuffer;

/**
 * Reads the body points of the one person in a square crop. Use from one thread at a time; owned and closed by its
 * {@link LandmarkPool}.
 */
public interface LandmarkNetwork {

    NetworkCard card();

    /** Side of the crop that {@link #read} takes. */
    int inputSizePx();

    /**
     * Reads one crop.
     *
     * @param rgb direct buffer of inputSizePx * inputSizePx * 3 bytes from position 0: rows from the top, pixels from the
     *     left, red, green, blue. Neither its bytes nor its position are changed; free again on return
     * @throws IllegalArgumentException for a buffer that is not direct or of another size
     */
    LandmarkReading read(ByteBuffer rgb);
}
