package org.boardtopit.video;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;

/**
 * Encodes on a thread of its own, so that drawing the next frame and encoding the last one overlap.
 *
 * <p>Owns the other writer; frames are copied into {@value #AHEAD} buffers that go round. What goes wrong while encoding is
 * thrown by the next call of {@link #write} or by {@link #finish}. Use from one thread.
 */
public final class WriteBehindWriter implements VideoWriter {
    private static final int AHEAD = 3;

    private record Item(VideoFrame frame) {}

    private static final Item END = new Item(null);

    private final VideoWriter writer;
    private final BlockingQueue<ByteBuffer> free = new ArrayBlockingQueue<>(AHEAD);
    private final BlockingQueue<Item> waiting = new ArrayBlockingQueue<>(AHEAD + 1);
    private final OwnThread thread;
    private volatile Exception failure;
    private int made;
    private boolean closed;

    /** Starts the thread. */
    public WriteBehindWriter(VideoWriter writer) {
        this.writer = writer;
        this.thread = new OwnThread("encode", this::encode);
    }

    private void encode() {
        try {
            for (Item item = waiting.take(); item.frame() != null; item = waiting.take()) {
                if (failure == null) {
                    try {
                        writer.write(item.frame());
                    } catch (VideoException | RuntimeException e) {
                        failure = e; // the caller is told at its next call; its frames are taken in so that it does not
                        // wait
                    }
                }
                free.add(item.frame().bgr());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt(); // closed
        }
    }

    @Override
    public void write(VideoFrame frame) throws VideoException {
        throwFailure();
        try {
            ByteBuffer buffer = made < AHEAD ? newBuffer(frame) : free.take();
            buffer.put(0, frame.bgr(), 0, buffer.capacity());
            waiting.put(new Item(
                    new VideoFrame(frame.index(), frame.timestampUs(), frame.widthPx(), frame.heightPx(), buffer)));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new VideoException("interrupted while writing", e);
        }
    }

    private ByteBuffer newBuffer(VideoFrame frame) {
        made++;
        return ByteBuffer.allocateDirect(frame.bgr().capacity());
    }

    @Override
    public void finish(List<Chapter> chapters) throws VideoException {
        try {
            waiting.put(END);
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new VideoException("interrupted while writing", e);
        }
        throwFailure();
        writer.finish(chapters);
    }

    private void throwFailure() throws VideoException {
        Exception e = failure;
        if (e instanceof VideoException video) {
            throw video;
        }
        if (e instanceof RuntimeException bug) {
            throw bug;
        }
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        thread.end();
        writer.close();
    }
}
