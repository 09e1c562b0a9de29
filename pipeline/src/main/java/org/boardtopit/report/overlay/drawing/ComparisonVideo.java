package org.boardtopit.report.overlay.drawing;

import java.util.List;
import java.util.function.IntFunction;
import org.boardtopit.report.comparison.ComparisonScene;
import org.boardtopit.report.comparison.ComparisonScene.Shot;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoWriter;

/** Makes the video of a comparison: reads both clips forward side by side, a frame of each at a time, paints and writes. */
public final class ComparisonVideo {
    private ComparisonVideo() {}

    /**
     * One of the two clips.
     *
     * @param reader before the first frame; the caller closes it
     * @param covers what is hidden in a frame, by its index, before anything else is done with it
     */
    public record Source(FrameReader reader, IntFunction<List<FaceCover>> covers) {
        private FrameCursor cursor() {
            return new FrameCursor(reader, covers);
        }
    }

    /**
     * Writes all shots and the table. The writer stays the caller's to close; it is finished.
     *
     * @return pictures written
     * @throws VideoException when reading or writing fails; the writer is then not finished
     */
    public static int write(Source a, Source b, ComparisonScene scene, VideoWriter writer) throws VideoException {
        FrameCursor framesA = a.cursor();
        FrameCursor framesB = b.cursor();
        int index = 0;
        try (ComparisonPainter painter = new ComparisonPainter(scene)) {
            for (Shot shot : scene.shots()) {
                writer.write(painter.paint(index++, shot, framesA.at(shot.frameA()), framesB.at(shot.frameB())));
            }
            boolean first = true;
            for (long us : scene.tableUs()) {
                writer.write(painter.paintTable(index++, us, first));
                first = false;
            }
        }
        writer.finish(scene.chapters());
        return index;
    }
}
