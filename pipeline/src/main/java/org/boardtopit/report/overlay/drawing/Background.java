package org.boardtopit.report.overlay.drawing;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.bytedeco.opencv.opencv_core.Mat;

/**
 * The runway without the athlete: for every pixel the median of the frames that show it away from their athlete; where none does, of
 * all that show it.
 */
final class Background {
    /** As {@link AthleteCutout} finds the body, with room for what is not where the points are: shadow, hair, blur. */
    private static final double ROOM_STATURES = 0.09;

    private Background() {}

    /** Fills a picture, which keeps its colour where no frame shows anything. */
    static void of(List<PhasePicture.Layer> layers, Mat target) {
        List<byte[]> pixels = new ArrayList<>();
        List<byte[]> free = new ArrayList<>();
        List<byte[]> seen = new ArrayList<>();
        for (PhasePicture.Layer layer : layers) {
            pixels.add(bytes(layer.pixels()));
            byte[] all = bytes(layer.seen());
            seen.add(all);
            try (Mat body = AthleteCutout.shape(layer, ROOM_STATURES)) {
                free.add(without(all, bytes(body)));
            }
        }
        int width = target.cols();
        int height = target.rows();
        byte[] row = new byte[3 * width];
        ByteBuffer out = target.createBuffer();
        int[] chosen = new int[layers.size()];
        byte[] values = new byte[layers.size()];
        for (int y = 0; y < height; y++) {
            int rowStart = y * (int) target.step();
            out.get(rowStart, row);
            for (int x = 0; x < width; x++) {
                int cell = y * width + x;
                int count = choose(free, cell, chosen);
                if (count == 0) {
                    count = choose(seen, cell, chosen);
                }
                for (int channel = 0; count > 0 && channel < 3; channel++) {
                    for (int i = 0; i < count; i++) {
                        values[i] = pixels.get(chosen[i])[3 * cell + channel];
                    }
                    row[3 * x + channel] = median(values, count);
                }
            }
            out.put(rowStart, row);
        }
    }

    /** Which layers have a pixel; fills their numbers in and returns how many. */
    private static int choose(List<byte[]> masks, int cell, int[] chosen) {
        int count = 0;
        for (int i = 0; i < masks.size(); i++) {
            if (masks.get(i)[cell] == (byte) 255) {
                chosen[count++] = i;
            }
        }
        return count;
    }

    /** The middle one, the lower of two. Sorted by insertion: there are few. */
    private static byte median(byte[] values, int count) {
        for (int i = 1; i < count; i++) {
            byte value = values[i];
            int at = i;
            while (at > 0 && (values[at - 1] & 0xff) > (value & 0xff)) {
                values[at] = values[at - 1];
                at--;
            }
            values[at] = value;
        }
        return values[(count - 1) / 2];
    }

    private static byte[] bytes(Mat picture) {
        byte[] bytes = new byte[picture.rows() * picture.cols() * picture.channels()];
        picture.<ByteBuffer>createBuffer().get(0, bytes);
        return bytes;
    }

    private static byte[] without(byte[] mask, byte[] body) {
        byte[] rest = new byte[mask.length];
        for (int i = 0; i < mask.length; i++) {
            rest[i] = body[i] == 0 ? mask[i] : 0;
        }
        return rest;
    }
}
