package org.boardtopit.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.overlay.BodySide;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.OverlayScene.CloseView;
import org.boardtopit.report.overlay.PhaseSpan;
import org.boardtopit.report.overlay.PosePoint;
import org.boardtopit.report.overlay.drawing.FaceCoverPainter;
import org.boardtopit.report.overlay.drawing.OverlayPainter;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.wording.Language;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** Painting one frame of 1280 x 720: skeleton, close view, strip and header; and hiding four faces. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DrawingBenchmark {
    private static final long STEP_US = 16_667;

    private final VideoFrame frame = new DrawnFrames(1).first();
    private final OverlayPainter painter = new OverlayPainter(scene(), frame.widthPx(), frame.heightPx());
    private final List<FaceCover> faces = List.of(
            new FaceCover(new Point2(100, 200), 14),
            new FaceCover(new Point2(400, 220), 18),
            new FaceCover(new Point2(900, 180), 22),
            new FaceCover(new Point2(1200, 300), 30));

    /** Somebody 180 px tall in the middle of every frame. */
    private static OverlayScene scene() {
        List<PosePoint> points = new ArrayList<>();
        for (int i = 0; i < BodyPoint.COUNT; i++) {
            double down = i / (double) (BodyPoint.COUNT - 1);
            points.add(new PosePoint(new Point2(640 + 30 * Math.sin(2.4 * i), 400 + 180 * down), 2));
        }
        List<FramePose> frames = List.of(new FramePose(0, 0, points, BodySide.RIGHT, Optional.of(Homography.IDENTITY)));
        List<PhaseSpan> phases = List.of(
                new PhaseSpan(PhaseName.APPROACH, 0, 60 * STEP_US, ""),
                new PhaseSpan(PhaseName.HOP, 60 * STEP_US, 100 * STEP_US, "5.10 m  36.0 %"));
        return new OverlayScene(
                List.of("bib 12", "attempt 2"),
                List.of("marks"),
                240 * STEP_US,
                true,
                phases,
                List.of(),
                List.of(),
                frames,
                CloseView.ON,
                Language.ENGLISH);
    }

    @Benchmark
    public VideoFrame paint() {
        painter.paint(frame);
        return frame;
    }

    @Benchmark
    public VideoFrame hideFaces() {
        FaceCoverPainter.hide(frame, faces);
        return frame;
    }

    @TearDown(Level.Trial)
    public void close() {
        painter.close();
    }
}
