package org.boardtopit.video.ffmpeg;

import java.nio.ByteBuffer;
import org.boardtopit.video.VideoFrame;

/** Small pictures drawn by code: flat colours, coloured corners, and a number that survives lossy coding. */
final class Drawing {
    static final int[] RED = {255, 0, 0};
    static final int[] GREEN = {0, 255, 0};
    static final int[] BLUE = {0, 0, 255};
    static final int[] WHITE = {255, 255, 255};
    static final int[] GREY = {128, 128, 128};

    private static final int DIGITS = 8; // binary digits of the burnt-in number
    private static final int DIGIT_PX = 16; // one macroblock, so that coding one does not touch the next

    private final int widthPx;
    private final int heightPx;
    private final ByteBuffer bgr;

    private Drawing(int widthPx, int heightPx, ByteBuffer bgr) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.bgr = bgr;
    }

    static Drawing plain(int widthPx, int heightPx, int... rgb) {
        Drawing drawing = new Drawing(widthPx, heightPx, ByteBuffer.allocateDirect(widthPx * heightPx * 3));
        drawing.fill(0, 0, widthPx, heightPx, rgb);
        return drawing;
    }

    /** A picture at least 128 px wide that carries its number (below 256) as eight black or white blocks at mid-height. */
    static Drawing numbered(int widthPx, int heightPx, int number) {
        Drawing drawing = plain(widthPx, heightPx, GREY);
        for (int digit = 0; digit < DIGITS; digit++) {
            boolean set = (number >> digit & 1) != 0;
            int[] colour = set ? WHITE : new int[] {0, 0, 0};
            drawing.fill(digit * DIGIT_PX, drawing.digitTop(), DIGIT_PX, DIGIT_PX, colour);
        }
        return drawing;
    }

    static int numberOf(VideoFrame frame) {
        Drawing drawing = new Drawing(frame.widthPx(), frame.heightPx(), frame.bgr());
        int number = 0;
        for (int digit = 0; digit < DIGITS; digit++) {
            int[] middle = drawing.rgb(digit * DIGIT_PX + DIGIT_PX / 2, drawing.digitTop() + DIGIT_PX / 2);
            number |= (middle[1] > 128 ? 1 : 0) << digit;
        }
        return number;
    }

    private int digitTop() {
        return heightPx / 2 / DIGIT_PX * DIGIT_PX;
    }

    /** Red top left, green top right, blue bottom left, white bottom right, grey elsewhere. */
    static Drawing withCorners(int widthPx, int heightPx, int cornerPx) {
        Drawing drawing = plain(widthPx, heightPx, GREY);
        drawing.fill(0, 0, cornerPx, cornerPx, RED);
        drawing.fill(widthPx - cornerPx, 0, cornerPx, cornerPx, GREEN);
        drawing.fill(0, heightPx - cornerPx, cornerPx, cornerPx, BLUE);
        drawing.fill(widthPx - cornerPx, heightPx - cornerPx, cornerPx, cornerPx, WHITE);
        return drawing;
    }

    /** The four corners of a frame, top left, top right, bottom left, bottom right, as letters R, G, B, W or ? for other. */
    static String cornersOf(VideoFrame frame) {
        int right = frame.widthPx() - 3;
        int bottom = frame.heightPx() - 3;
        return "" + letter(rgbOf(frame, 2, 2)) + letter(rgbOf(frame, right, 2)) + letter(rgbOf(frame, 2, bottom))
                + letter(rgbOf(frame, right, bottom));
    }

    private static char letter(int[] rgb) {
        int bits = (rgb[0] > 150 ? 4 : 0) + (rgb[1] > 150 ? 2 : 0) + (rgb[2] > 150 ? 1 : 0);
        return switch (bits) {
            case 4 -> 'R';
            case 2 -> 'G';
            case 1 -> 'B';
            case 7 -> 'W';
            default -> '?';
        };
    }

    static int[] rgbOf(VideoFrame frame, int x, int y) {
        return new Drawing(frame.widthPx(), frame.heightPx(), frame.bgr()).rgb(x, y);
    }

    void fill(int left, int top, int width, int height, int... rgb) {
        for (int y = top; y < top + height; y++) {
            for (int x = left; x < left + width; x++) {
                int at = 3 * (y * widthPx + x);
                bgr.put(at, (byte) rgb[2]);
                bgr.put(at + 1, (byte) rgb[1]);
                bgr.put(at + 2, (byte) rgb[0]);
            }
        }
    }

    private int[] rgb(int x, int y) {
        int at = 3 * (y * widthPx + x);
        return new int[] {bgr.get(at + 2) & 255, bgr.get(at + 1) & 255, bgr.get(at) & 255};
    }

    int widthPx() {
        return widthPx;
    }

    int heightPx() {
        return heightPx;
    }

    ByteBuffer bgr() {
        return bgr;
    }

    VideoFrame asFrame(int index, long timestampUs) {
        return new VideoFrame(index, timestampUs, widthPx, heightPx, bgr);
    }
}
