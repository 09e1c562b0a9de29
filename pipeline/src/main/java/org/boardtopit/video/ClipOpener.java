package org.boardtopit.video;

import java.nio.file.Path;

/**
 * Opens clips for reading. A stage that needs a clip twice (two passes, the overlay) opens it twice and gets the same
 * frames with the same indexes and time stamps each time.
 *
 * <p>May be used from several threads; each reader it returns belongs to one thread and to the caller, who closes it.
 */
@FunctionalInterface
public interface ClipOpener {

    /**
     * A reader that stands before the first frame.
     *
     * @throws VideoException when the file is missing, empty, not a video, cut off before its index, has no picture
     *     track, or none of its pictures can be decoded
     */
    FrameReader open(Path clip) throws VideoException;
}
