package org.boardtopit.models;

import java.nio.ByteBuffer;
import java.util.List;

/**
 * Finds the persons in a picture. Use from one thread at a time. {@link #close()} frees everything native and may be called
 * more than once.
 */
public interface PersonDetector extends AutoCloseable {

    NetworkCard card();

    /** Side of the square picture that {@link #find} takes. */
    int inputSizePx();

    /**
     * Finds the persons in one square picture; a picture that is not square is put into it without stretching, the rest black.
     *
     * @param rgb direct buffer of inputSizePx * inputSizePx * 3 bytes from position 0: rows from the top, pixels from the
     *     left, red, green, blue. Neither its bytes nor its position are changed; free again on return
     * @return the persons by falling score, in px of the square picture
     * @throws IllegalArgumentException for a buffer that is not direct or of another size
     */
    List<DetectedPerson> find(ByteBuffer rgb);

    @Override
    void close();
}
