package org.boardtopit.video;

import java.util.Optional;

/**
 * Another reader's frames in real time: slow-motion files carry playback stamps, which are divided by the slow-down.
 *
 * <p>Owns the other reader and closes it.
 */
public final class RetimedReader implements FrameReader {
    private final FrameReader reader;
    private final double slowDown;
    private final VideoInfo info;

    /**
     * Wraps a reader.
     *
     * @param slowDown captured frames a second over played ones, 8 for 240 played at 30
     */
    public RetimedReader(FrameReader reader, double slowDown) {
        if (!(slowDown > 0)) {
            throw new IllegalArgumentException("slowDown must be positive, was " + slowDown);
        }
        this.reader = reader;
        this.slowDown = slowDown;
        VideoInfo v = reader.info();
        this.info = new VideoInfo(
                v.widthPx(),
                v.heightPx(),
                v.nominalFps() * slowDown,
                v.durationUs() < 0 ? v.durationUs() : Math.round(v.durationUs() / slowDown),
                v.estimatedFrames(),
                v.interlaced(),
                v.rotationDeg(),
                v.codec());
    }

    @Override
    public VideoInfo info() {
        return info;
    }

    @Override
    public Optional<VideoFrame> next() throws VideoException {
        return reader.next().map(f -> f.at(Math.round(f.timestampUs() / slowDown)));
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
