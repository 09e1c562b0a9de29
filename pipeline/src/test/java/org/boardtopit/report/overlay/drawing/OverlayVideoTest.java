package org.boardtopit.report.overlay.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.report.overlay.ContactMark;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.OverlayWords;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;
import org.boardtopit.video.VideoWriter;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.Test;

class OverlayVideoTest {
    private static final OverlayWords ENGLISH = new OverlayWords(Language.ENGLISH);

    private static final int GREY = 0x80;

    private final OverlayScene scene = new OverlayScene(
            List.of(),
            List.of(),
            100_000,
            true,
            List.of(),
            List.of(ContactMark.labelled("board", "R", ContactMark.Instant.TOUCHDOWN, Point2.UNKNOWN, 40_000, ENGLISH)),
            List.of(),
            List.of(),
            OverlayScene.CloseView.AUTO,
            Language.ENGLISH);

    @Test
    void everyFrameIsPaintedAndKeepsItsTime() throws IOException {
        RecordingWriter writer = new RecordingWriter();
        try (GreyReader reader = new GreyReader(new long[] {0, 33_000, 70_000}, false)) {
            assertEquals(3, OverlayVideo.write(reader, scene, writer));
        }
        assertEquals(List.of(0L, 33_000L, 70_000L), writer.timesUs);
        writer.bottomPixels.forEach(pixel -> assertNotEquals(GREY, pixel));
        assertEquals(List.of(new VideoWriter.Chapter("Board", 40_000)), writer.chapters);
    }

    @Test
    void aClipThatBreaksOffLeavesTheVideoUnfinished() {
        RecordingWriter writer = new RecordingWriter();
        try (GreyReader reader = new GreyReader(new long[] {0, 33_000}, true)) {
            assertThrows(VideoException.class, () -> OverlayVideo.write(reader, scene, writer));
        }
        assertNull(writer.chapters);
    }

    private static final class GreyReader implements FrameReader {
        private final long[] timesUs;
        private final boolean breaksOff;
        private int next;

        GreyReader(long[] timesUs, boolean breaksOff) {
            this.timesUs = timesUs;
            this.breaksOff = breaksOff;
        }

        @Override
        public VideoInfo info() {
            return new VideoInfo(160, 120, 30, -1, -1, false, 0, "drawn");
        }

        @Override
        public Optional<VideoFrame> next() throws VideoException {
            if (next < timesUs.length) {
                int index = next++;
                return Optional.of(new Pixels(index, timesUs[index], 160, 120, GREY).frame());
            }
            if (breaksOff) {
                throw new VideoException("the clip breaks off");
            }
            return Optional.empty();
        }

        @Override
        public long undecodableFrames() {
            return 0;
        }

        @Override
        public void close() {}
    }

    private static final class RecordingWriter implements VideoWriter {
        private final List<Long> timesUs = new ArrayList<>();
        private final List<Integer> bottomPixels = new ArrayList<>();
        private List<Chapter> chapters;

        @Override
        public void write(VideoFrame frame) {
            timesUs.add(frame.timestampUs());
            bottomPixels.add(frame.bgr().get(frame.bgr().capacity() - 1) & 0xff);
        }

        @Override
        public void finish(List<Chapter> ended) {
            chapters = ended;
        }

        @Override
        public void close() {}
    }
}
