package org.boardtopit.video;

import java.util.Optional;

/**
 * Reads the frames of one clip, in presentation order, upright and de-interlaced.
 *
 * <p>Use from one thread. {@link #next()} returns frames until the clip ends, then empty for ever. Indexes count from 0
 * without gaps; time stamps never go back. A frame that cannot be decoded is counted in {@link #undecodableFrames()} and
 * passed over. The pixels of a frame are valid until the next call. {@link #close()} frees everything native and may be
 * called at any time, more than once.
 */
public interface FrameReader extends AutoCloseable {

    VideoInfo info();

    /**
     * The next frame, or empty at the end.
     *
     * @throws VideoException when the clip breaks off in a way that leaves nothing more to read
     */
    Optional<VideoFrame> next() throws VideoException;

    /**
     * Pictures so far that could not be decoded; complete once {@link #next} has returned empty. A picture that the decoder could
     * patch up from its neighbours is delivered and not counted.
     */
    long undecodableFrames();

    @Override
    void close();
}
