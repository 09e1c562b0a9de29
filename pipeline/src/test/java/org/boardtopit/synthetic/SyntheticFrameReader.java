package org.boardtopit.synthetic;

import java.nio.ByteBuffer;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleFunction;
import java.util.function.IntPredicate;
import org.boardtopit.signal.Homography;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;

/** A clip that is drawn while it is read: a scene through a camera that may turn and zoom. Reuses one buffer, as readers do. */
public final class SyntheticFrameReader implements FrameReader {
    private final DrawnScene scene;
    private final DoubleFunction<Homography> frameToScene;
    private final IntPredicate black;
    private final VideoInfo info;
    private final int frames;
    private final ByteBuffer bgr;
    private final Random noise = new Random(1);
    private int next;

    /**
     * A clip of so many frames.
     *
     * @param frameToScene pixels of the frame at a time to px of the scene
     * @param black frames in which nothing is seen
     */
    public SyntheticFrameReader(
            DrawnScene scene,
            int widthPx,
            int heightPx,
            double fps,
            int frames,
            DoubleFunction<Homography> frameToScene,
            IntPredicate black) {
        this.scene = scene;
        this.frameToScene = frameToScene;
        this.black = black;
        this.frames = frames;
        this.bgr = ByteBuffer.allocateDirect(3 * widthPx * heightPx);
        this.info = new VideoInfo(widthPx, heightPx, fps, Math.round(frames * 1e6 / fps), frames, false, 0, "drawn");
    }

    @Override
    public VideoInfo info() {
        return info;
    }

    @Override
    public Optional<VideoFrame> next() {
        if (next == frames) {
            return Optional.empty();
        }
        int index = next++;
        double timeS = index / info.nominalFps();
        if (black.test(index)) {
            bgr.put(0, new byte[bgr.capacity()]);
        } else {
            scene.draw(frameToScene.apply(timeS), timeS, noise, info.widthPx(), info.heightPx(), bgr);
        }
        return Optional.of(new VideoFrame(index, Math.round(timeS * 1e6), info.widthPx(), info.heightPx(), bgr));
    }

    @Override
    public long undecodableFrames() {
        return 0;
    }

    @Override
    public void close() {
        next = frames;
    }
}
