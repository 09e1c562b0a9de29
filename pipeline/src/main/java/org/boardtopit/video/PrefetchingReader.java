package org.boardtopit.video;

import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.Semaphore;

/**
 * Decodes ahead on a thread of its own, so that decoding and the work on the frames overlap.
 *
 * <p>Owns the other reader and keeps a few of its frames. What is computed of a frame is computed when it is asked for, on the
 * asking thread. Use from one thread. {@link #close()} ends the thread before it closes the reader.
 */
public final class PrefetchingReader implements FrameReader {
    private static final int MOST_AHEAD = 3;

    /** Pictures of 4K (25 MB) are read ahead like small ones, larger ones less. */
    private static final int MOST_BYTES_AHEAD = 80_000_000;

    private record Item(VideoFrame frame, VideoException failure, RuntimeException bug) {}

    private static final Item END = new Item(null, null, null);

    private final FrameReader reader;
    private final Semaphore room;
    private final BlockingQueue<Item> ready = new ArrayBlockingQueue<>(MOST_AHEAD + 2);
    private final OwnThread thread;
    private volatile long undecodable;
    private VideoFrame lent;
    private boolean ended;
    private boolean closed;

    /** Starts to decode at once. */
    public PrefetchingReader(FrameReader reader) {
        this.reader = reader;
        VideoInfo info = reader.info();
        int bytes = 3 * info.widthPx() * info.heightPx();
        int ahead = Math.max(1, Math.min(MOST_AHEAD, MOST_BYTES_AHEAD / bytes));
        this.room = new Semaphore(ahead + 1);
        this.thread = new OwnThread("decode", this::decode);
    }

    private void decode() {
        Item last = END;
        try {
            for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
                room.acquire();
                undecodable = reader.undecodableFrames();
                ready.add(new Item(next.get().kept(), null, null)); // there is room in the queue, too
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
        giveBack();
        if (ended) {
            return Optional.empty();
        }
        try {
            Item item = ready.take();
            if (item.frame() != null) {
                lent = item.frame();
                return Optional.of(lent);
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

    private void giveBack() {
        if (lent != null) {
            lent.release();
            lent = null;
            room.release();
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
        giveBack();
        for (Item item = ready.poll(); item != null; item = ready.poll()) {
            if (item.frame() != null) {
                item.frame().release();
            }
        }
        reader.close();
    }
}
