package org.boardtopit.video;

import java.util.Optional;
import java.util.function.Consumer;

/**
 * Another reader's frames, each shown to somebody else first, so that two who look at a clip do not have it decoded twice.
 *
 * <p>Owns the other reader and closes it.
 */
public final class WatchedReader implements FrameReader {
    private final FrameReader reader;
    private final Consumer<VideoFrame> watcher;

    /**
     * Wraps a reader.
     *
     * @param watcher is shown every frame, on the thread that reads
     */
    public WatchedReader(FrameReader reader, Consumer<VideoFrame> watcher) {
        this.reader = reader;
        this.watcher = watcher;
    }

    @Override
    public VideoInfo info() {
        return reader.info();
    }

    @Override
    public Optional<VideoFrame> next() throws VideoException {
        Optional<VideoFrame> frame = reader.next();
        frame.ifPresent(watcher);
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
