package org.boardtopit.video;

import java.util.List;

/**
 * Writes one H.264 MP4 that any phone plays.
 *
 * <p>Use from one thread. Frames come in order with rising time stamps, all of the size given at creation. The file
 * appears under its final name only when {@link #finish} returns; {@link #close()} without it removes what was written.
 */
public interface VideoWriter extends AutoCloseable {

    /** Encodes the picture with its own time stamp; the pixels may be reused after the call. */
    void write(VideoFrame frame) throws VideoException;

    /** Ends the file with these chapters (may be none) and moves it to its final name. */
    void finish(List<Chapter> chapters) throws VideoException;

    @Override
    void close();

    /** A named position in the video. */
    record Chapter(String title, long startUs) {}
}
