package org.boardtopit.report.overlay.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.Random;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoFrame;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FaceCoverPainterTest {
    private static final int W = 80;
    private static final int H = 60;

    /** Noise: every pixel tells something. */
    private static VideoFrame noise(long seed) {
        ByteBuffer bgr = ByteBuffer.allocateDirect(3 * W * H);
        byte[] bytes = new byte[3 * W * H];
        new Random(seed).nextBytes(bytes);
        bgr.put(0, bytes);
        return new VideoFrame(0, 0, W, H, bgr);
    }

    private static int rgb(VideoFrame frame, int x, int y) {
        int at = 3 * (y * W + x);
        return (frame.bgr().get(at) & 0xff)
                | (frame.bgr().get(at + 1) & 0xff) << 8
                | (frame.bgr().get(at + 2) & 0xff) << 16;
    }

    @Test
    void givesTheWholeDiscOneColourAndLeavesTheRest() {
        VideoFrame frame = noise(1);
        VideoFrame before = frame.copy();

        FaceCoverPainter.hide(frame, List.of(new FaceCover(new Point2(30, 25), 10)));

        int colour = rgb(frame, 30, 25);
        int untouched = 0;
        for (int y = 0; y < H; y++) {
            for (int x = 0; x < W; x++) {
                double away = Math.hypot(x + 0.5 - 30, y + 0.5 - 25);
                if (away <= 10) {
                    assertEquals(colour, rgb(frame, x, y), "inside at " + x + ", " + y);
                } else if (away > 11.5) {
                    assertEquals(rgb(before, x, y), rgb(frame, x, y), "outside at " + x + ", " + y);
                    untouched++;
                }
            }
        }
        assertTrue(untouched > W * H / 2);
    }

    @Test
    void ofTwoPicturesWithTheSameMeanTheSameIsLeft() {
        VideoFrame face = noise(2);
        VideoFrame mirrored = face.copy();
        for (int y = 0; y < H; y++) { // upside down about the middle of the disc: other pixels, the same sum
            for (int i = 0; i < 3 * W; i++) {
                mirrored.bgr().put(3 * y * W + i, face.bgr().get(3 * (H - 1 - y) * W + i));
            }
        }
        List<FaceCover> everything = List.of(new FaceCover(new Point2(W / 2.0, H / 2.0), 100));

        FaceCoverPainter.hide(face, everything);
        FaceCoverPainter.hide(mirrored, everything);

        assertEquals(0, face.bgr().compareTo(mirrored.bgr()));
    }

    @ParameterizedTest
    @CsvSource({"-3, 20", "82, 20", "20, -4", "20, 64", "-50, -50", "5000, 5000"})
    void coversWhatOfADiscIsInThePicture(double x, double y) {
        VideoFrame frame = noise(3);

        FaceCoverPainter.hide(frame, List.of(new FaceCover(new Point2(x, y), 8)));

        int inside = 0;
        int colour = -1;
        for (int py = 0; py < H; py++) {
            for (int px = 0; px < W; px++) {
                if (Math.hypot(px + 0.5 - x, py + 0.5 - y) <= 8) {
                    colour = inside++ == 0 ? rgb(frame, px, py) : colour;
                    assertEquals(colour, rgb(frame, px, py));
                }
            }
        }
        assertTrue(inside > 0 || Math.abs(x) > 40);
    }

    @Test
    void aCoverNeedsAPlaceAndASize() {
        assertThrows(IllegalArgumentException.class, () -> new FaceCover(Point2.UNKNOWN, 5));
        assertThrows(IllegalArgumentException.class, () -> new FaceCover(new Point2(1, 1), 0));
        assertThrows(IllegalArgumentException.class, () -> new FaceCover(new Point2(1, 1), Double.NaN));
    }
}
