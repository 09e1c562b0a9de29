package org.boardtopit.video;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.ByteBuffer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TurnedCropTest {
    private static final int SIDE = 20;

    /** Blue rises with x, green with y, red is constant: bilinear sampling must reproduce both slopes exactly. */
    private static VideoFrame slopes(int width, int height) {
        ByteBuffer bgr = ByteBuffer.allocateDirect(3 * width * height);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int i = 3 * (y * width + x);
                bgr.put(i, (byte) (2 * x));
                bgr.put(i + 1, (byte) (2 * y));
                bgr.put(i + 2, (byte) 77);
            }
        }
        return new VideoFrame(0, 0, width, height, bgr);
    }

    private static ByteBuffer cut(double centreX, double centreY, double square, double turnDeg) {
        ByteBuffer rgb = ByteBuffer.allocateDirect(3 * SIDE * SIDE);
        new TurnedCrop(SIDE).cut(slopes(100, 100), centreX, centreY, square, turnDeg, rgb);
        return rgb;
    }

    private static int at(ByteBuffer rgb, int x, int y, int channel) {
        return rgb.get(3 * (y * SIDE + x) + channel) & 0xff;
    }

    @ParameterizedTest
    @CsvSource({"50, 50, 20", "41.3, 52.8, 13", "50, 40, 55", "3, 97, 30"})
    void withoutATurnItCutsWhatTheUprightCropCuts(double centreX, double centreY, double square) {
        ByteBuffer upright = ByteBuffer.allocateDirect(3 * SIDE * SIDE);
        new SquareCrop(SIDE).cut(slopes(100, 100), centreX, centreY, square, upright);
        ByteBuffer turned = cut(centreX, centreY, square, 0);
        for (int i = 0; i < upright.capacity(); i++) {
            assertEquals(upright.get(i) & 0xff, turned.get(i) & 0xff, 1, "byte " + i);
        }
    }

    @Test
    void aQuarterTurnClockwiseBringsTheFramesDownToTheCropsRight() {
        ByteBuffer rgb = cut(50, 50, 20, 90);
        assertEquals(2 * 40, at(rgb, 0, 10, 1), "the crop's left edge is row 40 of the frame");
        assertEquals(2 * 59, at(rgb, 19, 10, 1), "its right edge is row 59");
        assertEquals(2 * 59, at(rgb, 10, 0, 2), "its upper edge is column 59");
    }

    @Test
    void anEighthOfATurnHasBothSlopesShared() {
        for (double square : new double[] {10, 20, 44}) {
            ByteBuffer rgb = cut(50, 50, square, 45);
            double perPixel = 2 * Math.sqrt(0.5) * square / SIDE;
            assertEquals(perPixel, (at(rgb, 17, 9, 2) - at(rgb, 2, 9, 2)) / 15.0, 0.08, "columns, " + square);
            assertEquals(perPixel, (at(rgb, 17, 9, 1) - at(rgb, 2, 9, 1)) / 15.0, 0.08, "rows, " + square);
            double middle = (at(rgb, 9, 9, 1) + at(rgb, 10, 10, 1)) / 2.0;
            assertEquals(2 * 49.5, middle, 1.01, "middle, " + square);
        }
    }

    @Test
    void paintsBlackOutsideTheFrame() {
        ByteBuffer rgb = cut(0, 0, 40, 45);
        assertEquals(0, at(rgb, 10, 2, 0), "up is up and right in the frame: above its first row");
        assertEquals(0, at(rgb, 2, 10, 0));
        assertEquals(77, at(rgb, 17, 10, 0), "right is down and right in the frame: inside");
    }
}
