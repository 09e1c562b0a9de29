package org.boardtopit.video;

import java.nio.ByteBuffer;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;

/**
 * Decodes ahead on a thread of its own, so that decoding and the work on the frames overlap.
 *
 * <p>Owns the other reader; its frames are copied into a few buffers that go round. Use from one thread. {@link
 * #close()} ends the thread before it closes the reader.
 */
public final class PrefetchingReader implements FrameReader {
    private static final int MOST_AHEAD = 3;

    /** Pictures of 4K (25 MB) are read ahead like small ones, larger ones less. */
    private static final int MOST_BYTES_AHEAD = 80_000_000;

    private record Item(VideoFrame frame, VideoException failure, RuntimeException bug) {}

    private static final Item END = new Item(null, null, null);

    private final FrameReader reader;
    private final BlockingQueue<ByteBuffer> free = new ArrayBlockingQueue<>(MOST_AHEAD + 1);
    private final BlockingQueue<Item> ready = new ArrayBlockingQueue<>(MOST_AHEAD + 2);
    private final OwnThread thread;
    private volatile long undecodable;
    private ByteBuffer lent;
    private boolean ended;
    private boolean closed;

    /** Starts to decode at once. */
    public PrefetchingReader(FrameReader reader) {
        this.reader = reader;
        VideoInfo info = reader.info();
        int bytes = 3 * info.widthPx() * info.heightPx();
        int ahead = Math.max(1, Math.min(MOST_AHEAD, MOST_BYTES_AHEAD / bytes));
        for (int i = 0; i < ahead + 1; i++) {
            free.add(ByteBuffer.allocateDirect(bytes));
        }
        this.thread = new OwnThread("decode", this::decode);
    }

    private void decode() {
        Item last = END;
        try {
            for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
                VideoFrame f = next.get();
                ByteBuffer buffer = free.take();
                buffer.put(0, f.bgr(), 0, buffer.capacity());
                undecodable = reader.undecodableFrames();
                ready.put(new Item(
                        new VideoFrame(f.index(), f.timestampUs(), f.widthPx(), f.heightPx(), buffer), null, null));
            }
            undecodable = reader.undecodableFrames();
        } catch (VideoException e) {
            last = new Item(null, e, null);
        } catch (RuntimeException e) {
            last = new Item(null, null, e);
        } catch (InterruptedException e) {
            return; // closed
        }
        try {
            ready.put(last);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public VideoInfo info() {
        return reader.info();
    }

    @Override
    public Optional<VideoFrame> next() throws VideoException {
        if (lent != null) {
            free.add(lent);
            lent = null;
        }
        if (ended) {
            return Optional.empty();
        }
        try {
            Item item = ready.take();
            if (item.frame() != null) {
                lent = item.frame().bgr();
                return Optional.of(item.frame());
            }
            ended = true;
            if (item.failure() != null) {
                throw item.failure();
            }
            if (item.bug() != null) {
                throw item.bug();
            }
            return Optional.empty();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new VideoException("interrupted while reading", e);
        }
    }

    @Override
    public long undecodableFrames() {
        return undecodable;
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        thread.end();
        reader.close();
    }
}
