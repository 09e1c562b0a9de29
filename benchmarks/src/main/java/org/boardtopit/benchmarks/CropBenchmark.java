package org.boardtopit.benchmarks;

import java.nio.ByteBuffer;
import java.util.concurrent.TimeUnit;
import org.boardtopit.video.SquareCrop;
import org.boardtopit.video.TurnedCrop;
import org.boardtopit.video.VideoFrame;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Cutting a square out of a frame and bringing it to the size and the order of bytes that a network takes. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class CropBenchmark {
    private static final int LANDMARKS_PX = 256;
    private static final int DETECTOR_PX = 224;

    /** Side of the square in the frame: enlarged, shrunk a little, shrunk so that pixels are merged. */
    @Param({"200", "300", "600"})
    public int squarePx;

    private final VideoFrame frame = new DrawnFrames(1).first();
    private final SquareCrop upright = new SquareCrop(LANDMARKS_PX);
    private final TurnedCrop turned = new TurnedCrop(LANDMARKS_PX);
    private final SquareCrop coarse = SquareCrop.coarse(DETECTOR_PX, 2);
    private final ByteBuffer landmarksRgb = upright.newBuffer();
    private final ByteBuffer detectorRgb = coarse.newBuffer();

    @Benchmark
    public ByteBuffer upright() {
        upright.cut(frame, 640.3, 360.7, squarePx, landmarksRgb);
        return landmarksRgb;
    }

    @Benchmark
    public ByteBuffer turned() {
        turned.cut(frame, 640.3, 360.7, squarePx, 8, landmarksRgb);
        return landmarksRgb;
    }

    @Benchmark
    public ByteBuffer coarse() {
        coarse.cut(frame, 640.3, 360.7, squarePx, detectorRgb);
        return detectorRgb;
    }
}
