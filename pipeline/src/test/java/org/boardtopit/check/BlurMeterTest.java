package org.boardtopit.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.Random;
import org.boardtopit.check.BlurMeter.Blur;
import org.boardtopit.video.VideoFrame;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** On drawn bars of which the movement and the shutter are known (SYN, our own). */
class BlurMeterTest {
    private static final int WIDTH = 640;
    private static final int HEIGHT = 320;
    private static final int SUB_FRAMES = 64;

    /** Bars of different width and brightness, so that no two places look alike. */
    private static double[] bars() {
        Random random = new Random(7);
        double[] light = new double[4 * WIDTH];
        int x = 0;
        boolean bright = false;
        while (x < light.length) {
            double value = bright ? 150 + random.nextInt(80) : 20 + random.nextInt(50);
            int end = Math.min(light.length, x + 30 + random.nextInt(40));
            while (x < end) {
                light[x++] = value;
            }
            bright = !bright;
        }
        return light;
    }

    /** The upper third stands still; the rest has moved by so many pixels and moves on while the shutter is open. */
    private static VideoFrame frame(int index, double moved, double smear, int soft) {
        double[] bars = bars();
        ByteBuffer pixels = ByteBuffer.allocateDirect(3 * WIDTH * HEIGHT);
        for (int x = 0; x < WIDTH; x++) {
            byte still = (byte) Math.round(mean(bars, x + WIDTH, soft));
            double sum = 0;
            for (int k = 0; k < SUB_FRAMES; k++) {
                double at = x + WIDTH - moved - smear * (k + 0.5) / SUB_FRAMES;
                sum += mean(bars, (int) Math.floor(at), soft);
            }
            byte moving = (byte) Math.round(sum / SUB_FRAMES);
            for (int y = 0; y < HEIGHT; y++) {
                byte value = y < HEIGHT / 3 ? still : moving;
                for (int c = 0; c < 3; c++) {
                    pixels.put(3 * (y * WIDTH + x) + c, value);
                }
            }
        }
        return new VideoFrame(index, 20_000L * index, WIDTH, HEIGHT, pixels);
    }

    private static double mean(double[] bars, int x, int soft) {
        double sum = 0;
        for (int i = -soft; i <= soft; i++) {
            sum += bars[x + i];
        }
        return sum / (2 * soft + 1);
    }

    private static Blur blur(double move, double openShare, int soft) {
        BlurMeter meter = new BlurMeter();
        meter.add(frame(0, 0, openShare * move, soft), frame(1, move, openShare * move, soft));
        return meter.blur();
    }

    @ParameterizedTest(name = "{0} px a frame, shutter open for {1} of the time, lens soft by {2}")
    @CsvSource({"20, 0.00, 1", "20, 0.25, 1", "20, 0.50, 1", "20, 0.90, 1", "-16, 0.50, 1", "30, 0.50, 2"})
    void tellsForWhichShareOfTheTimeTheShutterIsOpen(double move, double open, int soft) {
        Blur blur = blur(move, open, soft);
        assertEquals(open, blur.openShare(), 0.12); // whole pixels: 2 of 20
        assertEquals(open * Math.abs(move), blur.smearPx(), 3);
    }

    /** A running mean over 2 n + 1 pixels turns a step into a slope over as many (CALC). */
    @ParameterizedTest
    @CsvSource({"1, 3", "3, 7", "5, 11"})
    void tellsHowSoftEdgesAreThatStandStill(int soft, double widthPx) {
        assertEquals(widthPx, blur(20, 0, soft).edgePx(), 1);
    }

    @Test
    void saysNothingOfAShutterWhenNothingMoves() {
        Blur blur = blur(0, 0, 1);
        assertTrue(Double.isNaN(blur.openShare()));
        assertEquals(3, blur.edgePx(), 1);
    }

    @Test
    void saysNothingAtAllOfAnEmptyPicture() {
        BlurMeter meter = new BlurMeter();
        ByteBuffer grey = ByteBuffer.allocateDirect(3 * WIDTH * HEIGHT);
        meter.add(new VideoFrame(0, 0, WIDTH, HEIGHT, grey), new VideoFrame(1, 20_000, WIDTH, HEIGHT, grey));
        assertTrue(Double.isNaN(meter.blur().edgePx()));
    }
}
