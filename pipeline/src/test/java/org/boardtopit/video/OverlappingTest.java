package org.boardtopit.video;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Readers and writers that work on a thread of their own, and the one that tells real time. */
@Timeout(20)
class OverlappingTest {
    private static final int FRAMES = 40;

    /** Frame i is filled with the byte i, 20 ms apart, in one buffer that is used again; may break off. */
    private static final class CountingReader implements FrameReader {
        private final ByteBuffer bgr = ByteBuffer.allocateDirect(4 * 2 * 3);
        private final int breakAt;
        private int next;
        private int closedTimes;
        private FramePixels instead;

        CountingReader(int breakAt) {
            this.breakAt = breakAt;
        }

        @Override
        public VideoInfo info() {
            return new VideoInfo(4, 2, 50, 800_000, FRAMES, false, 0, "test");
        }

        @Override
        public Optional<VideoFrame> next() throws VideoException {
            if (next == breakAt) {
                throw new VideoException("broken off");
            }
            if (next == FRAMES) {
                return Optional.empty();
            }
            if (instead != null) {
                return Optional.of(new VideoFrame(next, 20_000L * next++, instead));
            }
            for (int i = 0; i < bgr.capacity(); i++) {
                bgr.put(i, (byte) next);
            }
            return Optional.of(new VideoFrame(next, 20_000L * next++, 4, 2, bgr));
        }

        @Override
        public long undecodableFrames() {
            return 3;
        }

        @Override
        public void close() {
            closedTimes++;
        }
    }

    /** Keeps what is written; may refuse a frame. */
    private static final class KeepingWriter implements VideoWriter {
        private final List<Integer> first = new ArrayList<>();
        private final int refuse;
        private int finishedTimes;
        private int closedTimes;

        KeepingWriter(int refuse) {
            this.refuse = refuse;
        }

        @Override
        public void write(VideoFrame frame) throws VideoException {
            if (frame.index() == refuse) {
                throw new VideoException("disk full");
            }
            first.add((int) frame.bgr().get(0));
        }

        @Override
        public void finish(List<Chapter> chapters) {
            finishedTimes++;
        }

        @Override
        public void close() {
            closedTimes++;
        }
    }

    @Test
    void prefetchingGivesTheSameFramesInTheSameOrder() throws VideoException {
        CountingReader reader = new CountingReader(-1);
        try (PrefetchingReader ahead = new PrefetchingReader(reader)) {
            for (int i = 0; i < FRAMES; i++) {
                VideoFrame frame = ahead.next().orElseThrow();
                assertEquals(i, frame.index());
                assertEquals(20_000L * i, frame.timestampUs());
                assertEquals(i, frame.bgr().get(23), "pixels of frame " + i);
            }
            assertTrue(ahead.next().isEmpty());
            assertTrue(ahead.next().isEmpty(), "the end stays the end");
            assertEquals(3, ahead.undecodableFrames());
        }
        assertEquals(1, reader.closedTimes);
    }

    @Test
    void prefetchingPassesOnThatAClipBreaksOffAfterTheFramesBeforeIt() throws VideoException {
        try (PrefetchingReader ahead = new PrefetchingReader(new CountingReader(5))) {
            for (int i = 0; i < 5; i++) {
                assertEquals(i, ahead.next().orElseThrow().index());
            }
            assertEquals(
                    "broken off",
                    assertThrows(VideoException.class, ahead::next).getMessage());
        }
    }

    /** Pixels that count how often they were kept and given back. */
    private static final class Counted implements FramePixels {
        private final AtomicInteger keptTimes = new AtomicInteger();
        private final AtomicInteger givenBackTimes = new AtomicInteger();

        @Override
        public int widthPx() {
            return 4;
        }

        @Override
        public int heightPx() {
            return 2;
        }

        @Override
        public ByteBuffer bgr() {
            throw new AssertionError("nobody asks for colours");
        }

        @Override
        public Optional<Luma> luma() {
            return Optional.empty();
        }

        @Override
        public FramePixels kept() {
            keptTimes.incrementAndGet();
            return this;
        }

        @Override
        public void release() {
            givenBackTimes.incrementAndGet();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 7, FRAMES})
    void prefetchingConvertsNothingAndGivesBackEveryFrameThatItKept(int read) throws VideoException {
        Counted pixels = new Counted();
        CountingReader reader = new CountingReader(-1);
        reader.instead = pixels;
        try (PrefetchingReader ahead = new PrefetchingReader(reader)) {
            for (int i = 0; i < read; i++) {
                assertEquals(i, ahead.next().orElseThrow().index());
                assertTrue(pixels.keptTimes.get() - pixels.givenBackTimes.get() <= 4, "at work and three ahead");
            }
        }
        assertTrue(pixels.keptTimes.get() >= read);
        assertEquals(pixels.keptTimes.get(), pixels.givenBackTimes.get());
    }

    @Test
    void aWatcherIsShownEveryFrameBeforeTheOther() throws VideoException {
        CountingReader reader = new CountingReader(-1);
        List<Integer> shown = new ArrayList<>();
        try (FrameReader watched = new WatchedReader(reader, frame -> shown.add(frame.index()))) {
            assertEquals(reader.info(), watched.info());
            for (int i = 0; i < FRAMES; i++) {
                assertEquals(i, watched.next().orElseThrow().index());
                assertEquals(i + 1, shown.size());
            }
            assertTrue(watched.next().isEmpty());
            assertEquals(FRAMES, shown.size());
            assertEquals(3, watched.undecodableFrames());
        }
        assertEquals(1, reader.closedTimes);
    }

    @Test
    void prefetchingCanBeClosedInTheMiddleAndTwice() throws VideoException {
        CountingReader reader = new CountingReader(-1);
        PrefetchingReader ahead = new PrefetchingReader(reader);
        ahead.next();
        ahead.close();
        ahead.close();
        assertEquals(1, reader.closedTimes);
    }

    @Test
    void writingBehindWritesEveryFrameThoughItsPixelsAreUsedAgain() throws VideoException {
        KeepingWriter kept = new KeepingWriter(-1);
        CountingReader reader = new CountingReader(-1);
        try (WriteBehindWriter writer = new WriteBehindWriter(kept)) {
            for (Optional<VideoFrame> f = reader.next(); f.isPresent(); f = reader.next()) {
                writer.write(f.get());
            }
            writer.finish(List.of());
        }
        assertEquals(FRAMES, kept.first.size());
        for (int i = 0; i < FRAMES; i++) {
            assertEquals(i, kept.first.get(i));
        }
        assertEquals(1, kept.finishedTimes);
        assertEquals(1, kept.closedTimes);
    }

    @Test
    void writingBehindTellsWhatWentWrongAndDoesNotFinish() {
        KeepingWriter kept = new KeepingWriter(2);
        CountingReader reader = new CountingReader(-1);
        VideoException failure = assertThrows(VideoException.class, () -> {
            try (WriteBehindWriter writer = new WriteBehindWriter(kept)) {
                for (Optional<VideoFrame> f = reader.next(); f.isPresent(); f = reader.next()) {
                    writer.write(f.get());
                }
                writer.finish(List.of());
            }
        });
        assertEquals("disk full", failure.getMessage());
        assertEquals(0, kept.finishedTimes);
        assertEquals(1, kept.closedTimes);
    }

    @Test
    void slowMotionIsReadInRealTime() throws VideoException {
        // Captured at 400 frames a second, played at 50: eight times slower than it was.
        try (RetimedReader real = new RetimedReader(new CountingReader(-1), 8)) {
            assertEquals(400, real.info().nominalFps(), 1e-9);
            assertEquals(100_000, real.info().durationUs());
            real.next();
            assertEquals(2_500, real.next().orElseThrow().timestampUs());
        }
    }
}
