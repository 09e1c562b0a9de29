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
    private final byte[] latest;
    private final byte[] mirrored;
    private Cut cut; // what is in latest

    /** What was cut, mirrored or not. */
    private record Cut(VideoFrame frame, Square square, double scale, double turnDeg) {}

    LookCrop(int sidePx) {
        this.sidePx = sidePx;
        this.upright = new SquareCrop(sidePx);
        this.turned = new TurnedCrop(sidePx);
        this.latest = new byte[3 * sidePx * sidePx];
        this.mirrored = new byte[3 * sidePx * sidePx];
    }

    /** A direct buffer that fits {@link #cut}. */
    ByteBuffer newBuffer() {
        return upright.newBuffer();
    }

    /** Fills {@code rgb}: rows from the top, red, green, blue. The mirrored look at what was cut last is not cut again. */
    void cut(VideoFrame frame, Square square, Look look, ByteBuffer rgb) {
        Cut wanted = new Cut(frame, square, look.scale(), look.turnDeg());
        if (!wanted.equals(cut)) {
            cutUnmirrored(frame, square, look, rgb);
            rgb.get(0, latest);
            cut = wanted;
        }
        if (look.mirrored()) {
            mirror();
            rgb.put(0, mirrored);
        } else {
            rgb.put(0, latest);
        }
    }

    private void cutUnmirrored(VideoFrame frame, Square square, Look look, ByteBuffer rgb) {
        if (look.turnDeg() == 0) {
            upright.cut(frame, square.centreXPx(), square.centreYPx(), look.sidePx(square), rgb);
        } else {
            turned.cut(frame, square.centreXPx(), square.centreYPx(), look.sidePx(square), look.turnDeg(), rgb);
        }
    }

    private void mirror() {
        for (int y = 0; y < sidePx; y++) {
            int from = 3 * y * sidePx;
            int to = from + 3 * (sidePx - 1);
            for (int x = 0; x < sidePx; x++, from += 3, to -= 3) {
                mirrored[to] = latest[from];
                mirrored[to + 1] = latest[from + 1];
                mirrored[to + 2] = latest[from + 2];
            }
        }
    }
}
