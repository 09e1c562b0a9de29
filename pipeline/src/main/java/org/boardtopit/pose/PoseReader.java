package org.boardtopit.pose;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicInteger;
import org.boardtopit.models.LandmarkNetwork;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.models.LandmarkReading;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.SquareCrop;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;

/**
 * Runs the landmark network on the athlete's square of every frame.
 *
 * <p>The calling thread reads frames and cuts the squares; one thread per worker of the pool runs the network. At most three
 * crops a worker wait, so memory does not depend on the clip. Results come out in frame order, whatever the number of
 * workers, and do not depend on it.
 */
public final class PoseReader {
    private static final int WAITING_PER_WORKER = 3;

    private final LandmarkPool pool;

    public PoseReader(LandmarkPool pool) {
        this.pool = pool;
    }

    /** Reads the clip to the last frame with a square. Does not close the reader. */
    public PoseTrack read(FrameReader reader, SubjectTrack subject) throws VideoException {
        AtomicInteger number = new AtomicInteger();
        ThreadFactory names = task -> new Thread(task, "landmarks-" + number.incrementAndGet());
        ExecutorService threads = Executors.newFixedThreadPool(pool.size(), names);
        try {
            return read(reader, subject, threads);
        } finally {
            threads.shutdownNow();
        }
    }

    private PoseTrack read(FrameReader reader, SubjectTrack subject, ExecutorService threads) throws VideoException {
        int side = pool.worker(0).inputSizePx();
        SquareCrop crop = new SquareCrop(side);
        BlockingQueue<ByteBuffer> buffers = new ArrayBlockingQueue<>(WAITING_PER_WORKER * pool.size());
        while (buffers.remainingCapacity() > 0) {
            buffers.add(crop.newBuffer());
        }
        BlockingQueue<LandmarkNetwork> networks = new ArrayBlockingQueue<>(pool.size());
        for (int i = 0; i < pool.size(); i++) {
            networks.add(pool.worker(i));
        }
        List<Optional<Future<FramePose>>> pending = new ArrayList<>();
        try {
            for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
                VideoFrame frame = next.get();
                Optional<Square> square = subject.at(frame.index());
                if (square.isEmpty()) {
                    pending.add(Optional.empty());
                    continue;
                }
                ByteBuffer rgb = buffers.take();
                Square s = square.get();
                crop.cut(frame, s.centreXPx(), s.centreYPx(), s.sidePx(), rgb);
                pending.add(Optional.of(threads.submit(() -> readOne(networks, buffers, rgb, s, side))));
            }
            return collected(pending, subject.frameCount());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new VideoException("interrupted while reading landmarks", e);
        }
    }

    private static FramePose readOne(
            BlockingQueue<LandmarkNetwork> networks,
            BlockingQueue<ByteBuffer> buffers,
            ByteBuffer rgb,
            Square square,
            int side)
            throws InterruptedException {
        LandmarkNetwork network = networks.take();
        try {
            return inFrame(network.read(rgb), square, side);
        } finally {
            networks.add(network);
            buffers.add(rgb);
        }
    }

    private static PoseTrack collected(List<Optional<Future<FramePose>>> pending, int frames)
            throws InterruptedException {
        List<Optional<FramePose>> poses = new ArrayList<>();
        for (Optional<Future<FramePose>> future : pending) {
            try {
                poses.add(
                        future.isEmpty()
                                ? Optional.empty()
                                : Optional.of(future.get().get()));
            } catch (ExecutionException e) {
                throw new IllegalStateException(
                        "the landmark network failed: " + e.getCause().getMessage(), e.getCause());
            }
        }
        while (poses.size() < frames) {
            poses.add(Optional.empty());
        }
        return new PoseTrack(poses);
    }

    /** From pixels of the crop to pixels of the frame. */
    private static FramePose inFrame(LandmarkReading reading, Square square, int side) {
        float[] numbers = reading.toArray();
        double scale = square.sidePx() / side;
        double left = square.centreXPx() - square.sidePx() / 2;
        double top = square.centreYPx() - square.sidePx() / 2;
        for (int i = 0; i < numbers.length; i += 4) {
            numbers[i] = (float) (left + numbers[i] * scale);
            numbers[i + 1] = (float) (top + numbers[i + 1] * scale);
            numbers[i + 2] = (float) (numbers[i + 2] * scale);
        }
        return new FramePose(square, numbers);
    }
}
