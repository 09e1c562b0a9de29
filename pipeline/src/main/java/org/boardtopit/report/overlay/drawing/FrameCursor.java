package org.boardtopit.report.overlay.drawing;

import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;

/** Goes forward through a clip and stays at a frame as long as it is wanted, its faces hidden. The reader stays the caller's. */
final class FrameCursor {
    private final FrameReader reader;
    private final IntFunction<List<FaceCover>> covers;
    private VideoFrame current;

    /**
     * Before the first frame.
     *
     * @param covers what is hidden in a frame, by its index
     */
    FrameCursor(FrameReader reader, IntFunction<List<FaceCover>> covers) {
        this.reader = reader;
        this.covers = covers;
    }

    /**
     * A frame, its pixels valid until the next call.
     *
     * @param index not less than that of the call before
     * @throws VideoException also when the clip ends before that frame
     */
    VideoFrame at(int index) throws VideoException {
        if (current != null && index < current.index()) {
            throw new IllegalArgumentException("frames come forward only, was " + index + " after " + current.index());
        }
        while (current == null || current.index() < index) {
            Optional<VideoFrame> next = reader.next();
            current = next.orElseThrow(() ->
                    new VideoException("the clip ends before frame " + index + ", which it had when it was measured"));
            if (current.index() == index) {
                FaceCoverPainter.hide(current, covers.apply(index));
            }
        }
        return current;
    }
}
