package org.boardtopit.ground.opencv;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.ByteBuffer;
import java.util.Optional;
import org.boardtopit.video.FramePixels;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.javacpp.indexer.UByteIndexer;
import org.bytedeco.opencv.opencv_core.Mat;
import org.junit.jupiter.api.Test;

/** Brightness as stored against brightness from colours; black 16 and white 235 are those of BT.709, section 4 (MEM-H). */
class FrameGreyTest {
    private static final int WIDTH = 7;
    private static final int HEIGHT = 5;
    private static final int STRIDE = 16;

    /** Stored brightness 2 x + 20 y + 16, and what stands between the rows, that must not be seen. */
    private record Stored(boolean fullRange) implements FramePixels {
        @Override
        public int widthPx() {
            return WIDTH;
        }

        @Override
        public int heightPx() {
            return HEIGHT;
        }

        @Override
        public ByteBuffer bgr() {
            throw new AssertionError("nobody needs the colours");
        }

        @Override
        public Optional<Luma> luma() {
            ByteBuffer plane = ByteBuffer.allocateDirect(STRIDE * (HEIGHT - 1) + WIDTH);
            for (int i = 0; i < plane.capacity(); i++) {
                plane.put(i, (byte) (i % STRIDE < WIDTH ? stored(i % STRIDE, i / STRIDE) : 255));
            }
            return Optional.of(new Luma(plane, STRIDE, fullRange));
        }

        @Override
        public FramePixels kept() {
            return this;
        }

        @Override
        public void release() {}
    }

    private static int stored(int x, int y) {
        return 16 + 2 * x + 20 * y;
    }

    private static int at(Mat grey, int x, int y) {
        try (UByteIndexer pixels = grey.createIndexer()) {
            return pixels.get(y, x);
        }
    }

    @Test
    void spreadsTheNarrowRangeAndLeavesTheFullOne() {
        try (FrameGrey narrow = FrameGrey.of(new VideoFrame(0, 0, new Stored(false)));
                FrameGrey full = FrameGrey.of(new VideoFrame(0, 0, new Stored(true)))) {
            assertEquals(0, at(narrow.whole(), 0, 0));
            assertEquals(Math.round(72 / 219.0 * 255), at(narrow.whole(), 6, 3));
            assertEquals(Math.round(92 / 219.0 * 255), at(narrow.whole(), 6, 4), "the last pixel");
            assertEquals(stored(6, 3), at(full.whole(), 6, 3));
        }
    }

    @Test
    void reducesToMeansOfSquaresAndLeavesOutWhatIsLeftOver() {
        try (FrameGrey full = FrameGrey.of(new VideoFrame(0, 0, new Stored(true)));
                Mat small = full.reduced(2)) {
            assertEquals(3, small.cols());
            assertEquals(2, small.rows());
            assertEquals((stored(4, 2) + stored(5, 2) + stored(4, 3) + stored(5, 3)) / 4, at(small, 2, 1));
        }
    }

    @Test
    void isComputedFromTheColoursWhereItIsNotStored() {
        ByteBuffer bgr = ByteBuffer.allocateDirect(3 * WIDTH * HEIGHT);
        bgr.put(3, (byte) 10).put(4, (byte) 200).put(5, (byte) 60); // the second pixel
        try (FrameGrey grey = FrameGrey.of(new VideoFrame(0, 0, WIDTH, HEIGHT, bgr))) {
            assertEquals(Math.round(0.114 * 10 + 0.587 * 200 + 0.299 * 60), at(grey.whole(), 1, 0));
            assertEquals(0, at(grey.whole(), 0, 0));
        }
    }
}
