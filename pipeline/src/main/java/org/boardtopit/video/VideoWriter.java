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

    /**
     * Ends the file with these chapters (may be none, in any order) and moves it to its final name.
     *
     * <p>Players let the first chapter begin at 0. When it begins later, the time before it becomes a chapter "Start".
     *
     * @throws VideoException when no frame was written or the file cannot be completed
     */
    void finish(List<Chapter> chapters) throws VideoException;

    @Override
    void close();

    /**
     * A named position in the video, up to the next one.
     *
     * @param title what the player shows, not blank
     * @param startUs time since the first frame, 0 or later
     */
    record Chapter(String title, long startUs) {

        public Chapter {
            if (title.isBlank()) {
                throw new IllegalArgumentException("a chapter needs a title, at " + startUs + " us");
            }
            if (startUs < 0) {
                throw new IllegalArgumentException("startUs must not be negative, was " + startUs);
            }
        }
    }
}
