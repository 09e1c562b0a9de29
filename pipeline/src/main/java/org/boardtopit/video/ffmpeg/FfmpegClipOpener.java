package org.boardtopit.video.ffmpeg;

import java.nio.file.Path;
import org.boardtopit.video.ClipOpener;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;

/**
 * Opens clips with FFmpeg.
 *
 * @param decoderThreads threads that each reader decodes with, at least 1
 */
public record FfmpegClipOpener(int decoderThreads) implements ClipOpener {

    public FfmpegClipOpener {
        if (decoderThreads < 1) {
            throw new IllegalArgumentException("decoderThreads must be at least 1, was " + decoderThreads);
        }
    }

    @Override
    public FrameReader open(Path clip) throws VideoException {
        return new FfmpegFrameReader(clip, decoderThreads);
    }
}
