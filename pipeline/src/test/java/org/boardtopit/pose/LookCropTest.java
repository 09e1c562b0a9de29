package org.boardtopit.pose;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.ByteBuffer;
import java.util.Random;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.VideoFrame;
import org.junit.jupiter.api.Test;

class LookCropTest {
    private static final int SIDE = 16;
    private static final Square SQUARE = new Square(30, 20, 20);

    private static VideoFrame noise(int seed) {
        ByteBuffer bgr = ByteBuffer.allocateDirect(3 * 60 * 40);
        Random random = new Random(seed);
        for (int i = 0; i < bgr.capacity(); i++) {
            bgr.put(i, (byte) random.nextInt());
        }
        return new VideoFrame(seed, 0, 60, 40, bgr);
    }

    private static ByteBuffer cut(LookCrop crop, VideoFrame frame, Look look) {
        ByteBuffer rgb = crop.newBuffer();
        crop.cut(frame, SQUARE, look, rgb);
        return rgb;
    }

    @Test
    void aMirroredLookIsThePlainOneReadFromRightToLeft() {
        for (double turnDeg : new double[] {0, 8}) {
            LookCrop crop = new LookCrop(SIDE);
            VideoFrame frame = noise(1);
            ByteBuffer plain = cut(crop, frame, new Look(1, turnDeg, false));
            ByteBuffer mirrored = cut(crop, frame, new Look(1, turnDeg, true));
            for (int y = 0; y < SIDE; y++) {
                for (int x = 0; x < SIDE; x++) {
                    for (int c = 0; c < 3; c++) {
                        assertEquals(
                                plain.get(3 * (y * SIDE + x) + c),
                                mirrored.get(3 * (y * SIDE + SIDE - 1 - x) + c),
                                x + ", " + y);
                    }
                }
            }
        }
    }

    @Test
    void whatWasCutBeforeIsNotTakenForAnotherFrameSquareOrLook() {
        VideoFrame first = noise(1);
        VideoFrame second = noise(2);
        Look mirrored = new Look(1, 0, true);
        LookCrop used = new LookCrop(SIDE);
        cut(used, first, Look.PLAIN);
        assertEquals(cut(new LookCrop(SIDE), second, mirrored), cut(used, second, mirrored));
        assertEquals(cut(new LookCrop(SIDE), second, Look.PLAIN), cut(used, second, Look.PLAIN));
        Look wider = new Look(1.2, 0, true);
        assertEquals(cut(new LookCrop(SIDE), second, wider), cut(used, second, wider));
        Look turned = new Look(1, 5, true);
        assertEquals(cut(new LookCrop(SIDE), second, turned), cut(used, second, turned));
        ByteBuffer elsewhere = used.newBuffer();
        ByteBuffer expected = used.newBuffer();
        Square other = new Square(31, 20, 20);
        used.cut(second, other, turned, elsewhere);
        new LookCrop(SIDE).cut(second, other, turned, expected);
        assertEquals(expected, elsewhere);
    }
}
