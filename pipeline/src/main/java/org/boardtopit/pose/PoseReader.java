package org.boardtopit.pose;

import java.nio.ByteBuffer;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.boardtopit.models.LandmarkNetwork;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;

/**
 * Runs the landmark network on the athlete's square of every frame, in one look or several, and makes one pose of them.
 *
 * <p>The calling thread reads frames and cuts the crops; one thread per worker of the pool runs the network. At most three
 * crops a worker wait, and the looks of a frame are merged as soon as they are read, so memory depends neither on the number
 * of looks nor, but for the result, on the clip. Results come out in frame order, whatever the number of workers, and do not
 * depend on it.
 */
public final class PoseReader {
    private static final int WAITING_PER_WORKER = 3;

    private final List<LandmarkNetwork> workers;
    private final List<Look> looks;

    /**
     * With the workers of a pool.
     *
     * @param looks one or more; the network runs once for each on every frame
     */
    public PoseReader(LandmarkPool pool, List<Look> looks) {
        this(IntStream.range(0, pool.size()).mapToObj(pool::worker).toList(), looks);
    }

    /** With workers that nobody else makes use of meanwhile. */
    PoseReader(List<LandmarkNetwork> workers, List<Look> looks) {
        if (looks.isEmpty()) {
            throw new IllegalArgumentException("at least one look is needed");
        }
        this.workers = List.copyOf(workers);
        this.looks = List.copyOf(looks);
    }

    /** Reads the clip to the last frame with a square. Does not close the reader. */
    public PoseTrack read(FrameReader reader, SubjectTrack subject) throws VideoException {
        AtomicInteger number = new AtomicInteger();
        ThreadFactory names = task -> new Thread(task, "landmarks-" + number.incrementAndGet());
        ExecutorService threads = Executors.newFixedThreadPool(workers.size(), names);
        try {
            return new Pass(threads).read(reader, subject);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new VideoException("interrupted while reading landmarks", e);
        } finally {
            threads.shutdownNow();
        }
    }

    /** The looks at one frame; none where the athlete is not in view. */
    private record Pending(Optional<Square> square, List<Future<float[]>> readings) {}

    /** One clip being read. */
    private final class Pass {
        private final ExecutorService threads;
        private final int cropPx = workers.get(0).inputSizePx();
        private final LookCrop crop = new LookCrop(cropPx);
        private final BlockingQueue<LandmarkNetwork> networks =
                new ArrayBlockingQueue<>(workers.size(), false, workers);
        private final BlockingQueue<ByteBuffer> buffers;
        private final Queue<Pending> pending = new ArrayDeque<>();
        private final List<Optional<FramePose>> poses = new ArrayList<>();

        Pass(ExecutorService threads) {
            this.threads = threads;
            this.buffers = new ArrayBlockingQueue<>(WAITING_PER_WORKER * workers.size());
            while (buffers.remainingCapacity() > 0) {
                buffers.add(crop.newBuffer());
            }
        }

        PoseTrack read(FrameReader reader, SubjectTrack subject) throws VideoException, InterruptedException {
            int mostPending = WAITING_PER_WORKER * workers.size();
            for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
                pending.add(submitted(next.get(), subject.at(next.get().index())));
                if (pending.size() > mostPending) {
                    finishOldest();
                }
            }
            while (!pending.isEmpty()) {
                finishOldest();
            }
            while (poses.size() < subject.frameCount()) {
                poses.add(Optional.empty());
            }
            return new PoseTrack(poses);
        }

        private Pending submitted(VideoFrame frame, Optional<Square> square) throws InterruptedException {
            List<Future<float[]>> readings = new ArrayList<>();
            if (square.isPresent()) {
                for (Look look : looks) {
                    ByteBuffer rgb = buffers.take();
                    crop.cut(frame, square.get(), look, rgb);
                    readings.add(threads.submit(() -> readOne(rgb, square.get(), look)));
                }
            }
            return new Pending(square, readings);
        }

        private float[] readOne(ByteBuffer rgb, Square square, Look look) throws InterruptedException {
            LandmarkNetwork network = networks.take();
            try {
                return look.inFrame(network.read(rgb), square, cropPx);
            } finally {
                networks.add(network);
                buffers.add(rgb);
            }
        }

        private void finishOldest() throws InterruptedException {
            Pending oldest = pending.remove();
            if (oldest.square().isEmpty()) {
                poses.add(Optional.empty());
                return;
            }
            List<float[]> readings = new ArrayList<>();
            for (Future<float[]> reading : oldest.readings()) {
                readings.add(done(reading));
            }
            Square square = oldest.square().get();
            poses.add(Optional.of(new FramePose(square, LookMerger.merged(readings, square.sidePx()))));
        }

        private static float[] done(Future<float[]> reading) throws InterruptedException {
            try {
                return reading.get();
            } catch (ExecutionException e) {
                throw new IllegalStateException(
                        "the landmark network failed: " + e.getCause().getMessage(), e.getCause());
            }
        }
    }
}
