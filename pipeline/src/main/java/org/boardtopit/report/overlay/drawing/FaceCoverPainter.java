package org.boardtopit.report.overlay.drawing;

import java.nio.ByteBuffer;
import java.util.List;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.video.VideoFrame;

/**
 * Hides faces in a frame, in its own pixels: every disc gets one colour, the mean of what was under it.
 *
 * <p>One colour and no mosaic or soft blur: those keep a coarse picture, and of the coarse pictures of many frames a finer one
 * can be reckoned. Of a plain disc nothing comes back. To be called before anything is drawn on the frame or copied out of it.
 */
public final class FaceCoverPainter {
    private FaceCoverPainter() {}

    /** Hides all; what lies outside the frame is left out. */
    public static void hide(VideoFrame frame, List<FaceCover> covers) {
        for (FaceCover cover : covers) {
            hide(frame, cover);
        }
    }

    private static void hide(VideoFrame frame, FaceCover cover) {
        int top = (int) Math.max(0, Math.floor(cover.centre().y() - cover.radiusPx()));
        int bottom = (int) Math.min(frame.heightPx(), Math.ceil(cover.centre().y() + cover.radiusPx()));
        long[] sums = new long[3];
        long pixels = 0;
        for (int y = top; y < bottom; y++) {
            int[] row = row(frame, cover, y);
            for (int x = row[0]; x < row[1]; x++) {
                for (int channel = 0; channel < 3; channel++) {
                    sums[channel] += frame.bgr().get(at(frame, x, y) + channel) & 0xff;
                }
            }
            pixels += Math.max(0, row[1] - row[0]);
        }
        if (pixels > 0) {
            byte[] colour = {(byte) (sums[0] / pixels), (byte) (sums[1] / pixels), (byte) (sums[2] / pixels)};
            fill(frame, cover, top, bottom, colour);
        }
    }

    private static void fill(VideoFrame frame, FaceCover cover, int top, int bottom, byte[] colour) {
        ByteBuffer bgr = frame.bgr();
        for (int y = top; y < bottom; y++) {
            int[] row = row(frame, cover, y);
            for (int x = row[0]; x < row[1]; x++) {
                bgr.put(at(frame, x, y), colour, 0, 3);
            }
        }
    }

    private static int at(VideoFrame frame, int x, int y) {
        return 3 * (y * frame.widthPx() + x);
    }

    /** First pixel of a row that the disc touches, and the one after its last. */
    private static int[] row(VideoFrame frame, FaceCover cover, int y) {
        double dy = Math.max(0, Math.abs(y + 0.5 - cover.centre().y()) - 0.5);
        double half = Math.sqrt(Math.max(0, cover.radiusPx() * cover.radiusPx() - dy * dy));
        int from = (int) Math.max(0, Math.floor(cover.centre().x() - half));
        int to = (int) Math.min(frame.widthPx(), Math.ceil(cover.centre().x() + half));
        return new int[] {from, Math.max(from, to)};
    }
}
