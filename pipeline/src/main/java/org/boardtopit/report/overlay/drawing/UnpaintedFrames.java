package org.boardtopit.report.overlay.drawing;

import java.io.IOException;
import org.boardtopit.video.VideoFrame;

/** Sees every frame of a clip in its order, its faces hidden and nothing painted on it yet. The frame is valid during the call. */
@FunctionalInterface
public interface UnpaintedFrames {
    /** Nobody looks. */
    UnpaintedFrames UNSEEN = frame -> {};

    void see(VideoFrame frame) throws IOException;
}
