package org.boardtopit.run.workers;

import java.util.Optional;
import java.util.function.LongConsumer;
import org.boardtopit.video.ClipOpener;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;

/** Tells, about once a second, that frames of a clip are being read, and how many the clip seems to have. */
public final class SignsOfLife {
    private static final long EVERY_NS = 1_000_000_000L;

    private final LongConsumer listener;
    private long lastNs;
    private long frames;

    SignsOfLife(LongConsumer listener) {
        this.listener = listener;
    }

    synchronized void begin() {
        frames = 0;
        lastNs = System.nanoTime() - EVERY_NS;
    }

    private synchronized void seen(long known) {
        frames = Math.max(frames, known);
        long now = System.nanoTime();
        if (now - lastNs >= EVERY_NS) {
            lastNs = now;
            listener.accept(frames);
        }
    }

    /** The same opener, whose readers are listened to. */
    public ClipOpener of(ClipOpener opener) {
        return clip -> new Watched(opener.open(clip));
    }

    private final class Watched implements FrameReader {
        private final FrameReader reader;
        private long read;

        Watched(FrameReader reader) {
            this.reader = reader;
            seen(reader.info().estimatedFrames());
        }

        @Override
        public VideoInfo info() {
            return reader.info();
        }

        @Override
        public Optional<VideoFrame> next() throws VideoException {
            Optional<VideoFrame> frame = reader.next();
            read++;
            seen(read);
            return frame;
        }

        @Override
        public long undecodableFrames() {
            return reader.undecodableFrames();
        }

        @Override
        public void close() {
            reader.close();
        }
    }
}
