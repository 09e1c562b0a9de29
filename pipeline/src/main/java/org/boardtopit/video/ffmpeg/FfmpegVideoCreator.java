package org.boardtopit.video.ffmpeg;

import java.nio.file.Path;
import org.boardtopit.video.VideoCreator;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoWriter;

/**
 * Begins H.264 videos with FFmpeg.
 *
 * @param encoderThreads threads that each writer encodes with, at least 1
 */
public record FfmpegVideoCreator(int encoderThreads) implements VideoCreator {

    public FfmpegVideoCreator {
        if (encoderThreads < 1) {
            throw new IllegalArgumentException("encoderThreads must be at least 1, was " + encoderThreads);
        }
    }

    @Override
    public VideoWriter create(Path target, int widthPx, int heightPx, double nominalFps) throws VideoException {
        return new FfmpegVideoWriter(target, widthPx, heightPx, nominalFps, encoderThreads);
    }
}
