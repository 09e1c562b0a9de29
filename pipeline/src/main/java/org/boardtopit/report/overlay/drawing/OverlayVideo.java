package org.boardtopit.report.overlay.drawing;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoWriter;

/** Makes the overlay video of a clip: reads every frame, paints it, writes it with its own time, and sets the chapters. */
public final class OverlayVideo {
    private OverlayVideo() {}

    /** Paints a clip in which no face is hidden. */
    public static long write(FrameReader reader, OverlayScene scene, VideoWriter writer) throws IOException {
        return write(reader, scene, frame -> List.of(), UnpaintedFrames.UNSEEN, writer);
    }

    /**
     * Paints the clip from the reader's next frame to its end. Reader and writer stay the caller's to close; the writer is
     * finished.
     *
     * @param covers what is hidden in a frame, by its index, before anything is painted
     * @param pictures is shown every frame after that
     * @return frames written
     * @throws VideoException when reading or writing fails; the writer is then not finished
     * @throws IOException when the pictures fail; the writer is then not finished
     */
    public static long write(
            FrameReader reader,
            OverlayScene scene,
            IntFunction<List<FaceCover>> covers,
            UnpaintedFrames pictures,
            VideoWriter writer)
            throws IOException {
        long frames = 0;
        try (OverlayPainter painter =
                new OverlayPainter(scene, reader.info().widthPx(), reader.info().heightPx())) {
            for (Optional<VideoFrame> frame = reader.next(); frame.isPresent(); frame = reader.next()) {
                FaceCoverPainter.hide(frame.get(), covers.apply(frame.get().index()));
                pictures.see(frame.get());
                painter.paint(frame.get());
                writer.write(frame.get());
                frames++;
            }
        }
        writer.finish(scene.chapters());
        return frames;
    }
}
