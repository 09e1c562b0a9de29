package org.boardtopit.benchmarks;

import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.boardtopit.ground.Survey;
import org.boardtopit.ground.opencv.BackgroundSurvey;
import org.boardtopit.video.VideoException;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** The survey without decoding: every frame of a pan matched to its key frame, and what moves against the background; per frame. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class RegistrationBenchmark {
    private static final int FRAMES = 30;

    private final DrawnFrames frames = new DrawnFrames(FRAMES);

    @Benchmark
    @OperationsPerInvocation(FRAMES)
    public Survey survey() throws VideoException {
        frames.rewind();
        return new BackgroundSurvey(Optional.empty()).survey(frames);
    }
}
