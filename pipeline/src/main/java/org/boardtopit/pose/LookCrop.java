package org.boardtopit.pose;

import java.nio.ByteBuffer;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.SquareCrop;
import org.boardtopit.video.TurnedCrop;
import org.boardtopit.video.VideoFrame;

/** Cuts what a look shows out of a frame. Keeps work space between calls: one instance per thread. */
final class LookCrop {
    private final int sidePx;
    private final SquareCrop upright;
    private final TurnedCrop turned;
    private final byte[] row;

    LookCrop(int sidePx) {
        this.sidePx = sidePx;
        this.upright = new SquareCrop(sidePx);
        this.turned = new TurnedCrop(sidePx);
        this.row = new byte[3 * sidePx];
    }

    /** A direct buffer that fits {@link #cut}. */
    ByteBuffer newBuffer() {
        return upright.newBuffer();
    }

    /** Fills {@code rgb}: rows from the top, red, green, blue. */
    void cut(VideoFrame frame, Square square, Look look, ByteBuffer rgb) {
        if (look.turnDeg() == 0) {
            upright.cut(frame, square.centreXPx(), square.centreYPx(), look.sidePx(square), rgb);
        } else {
            turned.cut(frame, square.centreXPx(), square.centreYPx(), look.sidePx(square), look.turnDeg(), rgb);
        }
        if (look.mirrored()) {
            mirror(rgb);
        }
    }

    private void mirror(ByteBuffer rgb) {
        for (int y = 0; y < sidePx; y++) {
            rgb.get(3 * y * sidePx, row);
            for (int x = 0; x < sidePx; x++) {
                int at = 3 * (y * sidePx + sidePx - 1 - x);
                rgb.put(at, row[3 * x]);
                rgb.put(at + 1, row[3 * x + 1]);
                rgb.put(at + 2, row[3 * x + 2]);
            }
        }
    }
}
