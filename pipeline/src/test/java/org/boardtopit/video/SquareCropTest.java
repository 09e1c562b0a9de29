package org.boardtopit.video;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.ByteBuffer;
import org.junit.jupiter.api.Test;

class SquareCropTest {
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

    private static int at(ByteBuffer rgb, int side, int x, int y, int channel) {
        return rgb.get(3 * (y * side + x) + channel) & 0xff;
    }

    @Test
    void copiesPixelsWhenTheSquareHasTheSizeOfTheCrop() {
        SquareCrop crop = new SquareCrop(20);
        ByteBuffer rgb = crop.newBuffer();
        crop.cut(slopes(100, 60), 40, 30, 20, rgb);
        assertEquals(77, at(rgb, 20, 0, 0, 0));
        assertEquals(2 * 20, at(rgb, 20, 3, 0, 1), "row 20 of the frame is row 0 of the crop");
        assertEquals(2 * 33, at(rgb, 20, 3, 0, 2), "column 33 of the frame is column 3 of the crop");
    }

    @Test
    void enlargesAndShrinksAboutTheSameCentre() {
        for (double square : new double[] {10, 20, 40, 55}) {
            SquareCrop crop = new SquareCrop(20);
            ByteBuffer rgb = crop.newBuffer();
            crop.cut(slopes(100, 60), 50, 30, square, rgb);
            double middle = (at(rgb, 20, 9, 9, 2) + at(rgb, 20, 10, 9, 2)) / 2.0;
            assertEquals(2 * 49.5, middle, 1.01, "square of " + square);
            double slope = (at(rgb, 20, 17, 9, 2) - at(rgb, 20, 2, 9, 2)) / 15.0;
            assertEquals(2 * square / 20, slope, 0.08, "square of " + square);
        }
    }

    @Test
    void paintsBlackOutsideTheFrame() {
        SquareCrop crop = new SquareCrop(20);
        ByteBuffer rgb = crop.newBuffer();
        crop.cut(slopes(100, 60), 0, 0, 40, rgb);
        assertEquals(0, at(rgb, 20, 4, 15, 0));
        assertEquals(0, at(rgb, 20, 15, 4, 0));
        assertEquals(77, at(rgb, 20, 15, 15, 0));
        crop.cut(slopes(100, 60), 100, 60, 40, rgb);
        assertEquals(77, at(rgb, 20, 4, 4, 0));
        assertEquals(0, at(rgb, 20, 15, 15, 0));
    }

    @Test
    void aCoarseCropIsTheMeanOfPixelsWhereFourBecomeOne() {
        SquareCrop crop = SquareCrop.coarse(20, 2);
        ByteBuffer rgb = crop.newBuffer();
        crop.cut(slopes(100, 60), 50, 30, 40, rgb);
        // Pixel 0 covers columns 30 and 31 and rows 10 and 11 of the frame.
        assertEquals(77, at(rgb, 20, 0, 0, 0));
        assertEquals(10 + 11, at(rgb, 20, 0, 0, 1));
        assertEquals(30 + 31, at(rgb, 20, 0, 0, 2));
        assertEquals(30 + 31 + 4 * 19, at(rgb, 20, 19, 0, 2));
    }

    @Test
    void aCoarseCropIsBlackOutsideTheFrameAndStaysNearTheFineOneInside() {
        for (double square : new double[] {39, 44, 90}) {
            SquareCrop coarse = SquareCrop.coarse(20, 2);
            SquareCrop fine = new SquareCrop(20);
            ByteBuffer a = coarse.newBuffer();
            ByteBuffer b = fine.newBuffer();
            coarse.cut(slopes(100, 60), 8, 30, square, a);
            fine.cut(slopes(100, 60), 8, 30, square, b);
            assertEquals(0, at(a, 20, 0, 10, 0), "square of " + square);
            for (int x = 10; x < 19; x++) {
                // Half a pixel beside the place makes one level, and with the largest square samples are left out.
                assertEquals(at(b, 20, x, 10, 2), at(a, 20, x, 10, 2), 2, "square of " + square + ", column " + x);
            }
        }
    }
}
