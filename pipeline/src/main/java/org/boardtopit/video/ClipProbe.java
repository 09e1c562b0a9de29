package org.boardtopit.video;

import java.nio.file.Path;
import java.util.List;

/**
 * Takes a quick look at clips: what they are, and a few of their frames, without decoding the rest where that can be avoided.
 *
 * <p>May be used from several threads.
 */
@FunctionalInterface
public interface ClipProbe {

    /** Takes frames; their pixels are valid until it returns. */
    @FunctionalInterface
    interface Samples {
        /**
         * Two frames that follow one another.
         *
         * @param share about where in the clip they are, 0 to 1
         */
        void pair(double share, VideoFrame first, VideoFrame second);
    }

    /**
     * Looks at a clip.
     *
     * @param shares where pairs of frames are wanted, 0 to 1, rising; near the end of a clip there may be none
     * @throws VideoException as {@link ClipOpener#open}
     */
    ClipFacts look(Path clip, List<Double> shares, Samples samples) throws VideoException;
}
