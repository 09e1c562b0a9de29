package org.boardtopit.benchmarks;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.boardtopit.video.FramePixels;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;

/** Some frames of 1280 x 720 in memory, panned over a drawn background of blocks; every round of reading gives the same. */
final class DrawnFrames implements FrameReader {
    static final int WIDTH_PX = 1280;
    static final int HEIGHT_PX = 720;

    private static final int PAN_PX = 4;
    private static final int BLOCK_PX = 24;

    private final List<VideoFrame> frames = new ArrayList<>();
    private int next;

    DrawnFrames(int count) {
        for (int i = 0; i < count; i++) {
            frames.add(new VideoFrame(i, 16_667L * i, Drawn.panned(PAN_PX * i)));
        }
    }

    /** The first one. */
    VideoFrame first() {
        return frames.get(0);
    }

    void rewind() {
        next = 0;
    }

    @Override
    public VideoInfo info() {
        return new VideoInfo(WIDTH_PX, HEIGHT_PX, 60, frames.size() * 16_667L, frames.size(), false, 0, "drawn");
    }

    @Override
    public Optional<VideoFrame> next() {
        return next == frames.size() ? Optional.empty() : Optional.of(frames.get(next++));
    }

    @Override
    public long undecodableFrames() {
        return 0;
    }

    @Override
    public void close() {
        // Nothing but heap.
    }

    /** Pixels with their brightness beside, as a decoder has it. */
    private record Drawn(ByteBuffer bgr, ByteBuffer plane) implements FramePixels {

        static Drawn panned(int byPx) {
            ByteBuffer bgr = ByteBuffer.allocateDirect(3 * WIDTH_PX * HEIGHT_PX);
            ByteBuffer plane = ByteBuffer.allocateDirect(WIDTH_PX * HEIGHT_PX);
            Random noise = new Random(byPx);
            for (int y = 0; y < HEIGHT_PX; y++) {
                for (int x = 0; x < WIDTH_PX; x++) {
                    int block = 31 * ((x + byPx) / BLOCK_PX) + 17 * (y / BLOCK_PX);
                    byte grey = (byte) (60 + Math.floorMod(block * 7919, 120) + noise.nextInt(5));
                    int at = y * WIDTH_PX + x;
                    plane.put(at, grey);
                    bgr.put(3 * at, grey).put(3 * at + 1, grey).put(3 * at + 2, grey);
                }
            }
            return new Drawn(bgr, plane);
        }

        @Override
        public int widthPx() {
            return WIDTH_PX;
        }

        @Override
        public int heightPx() {
            return HEIGHT_PX;
        }

        @Override
        public Optional<Luma> luma() {
            return Optional.of(new Luma(plane, WIDTH_PX, false));
        }

        @Override
        public FramePixels kept() {
            return this;
        }

        @Override
        public void release() {
            // The heap frees it.
        }
    }
}
