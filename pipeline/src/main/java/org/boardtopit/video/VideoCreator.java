package org.boardtopit.video;

import java.nio.file.Path;

/** Begins new videos. May be used from several threads; each writer belongs to one thread and to the caller. */
@FunctionalInterface
public interface VideoCreator {

    /**
     * A writer for pictures of the given size.
     *
     * @param target the file to write; an existing one is replaced when the writer finishes
     * @param widthPx width of every picture to come, at least 16
     * @param heightPx height of every picture to come, at least 16
     * @param nominalFps frames a second, a hint for the encoder and the length of the last frame
     * @throws VideoException when the file cannot be created there
     */
    VideoWriter create(Path target, int widthPx, int heightPx, double nominalFps) throws VideoException;
}
