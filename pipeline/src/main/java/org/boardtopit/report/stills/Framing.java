package org.boardtopit.report.stills;

import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/**
 * Size, scale and place of the ground in a picture: the same for all attempts, so that pictures can be laid side by side.
 *
 * @param pxPerMetre of {@linkplain org.boardtopit.report.stills still metres}
 * @param originXPx where their origin lies, px of the picture
 * @param groundYPx where the ground lies
 */
public record Framing(int widthPx, int heightPx, double pxPerMetre, double originXPx, double groundYPx) {
    /** A single still: 3 m wide; 2.5 m over the ground hold raised arms in a flight, below it is room for two lines. */
    public static final Framing STILL = new Framing(720, 720, 240, 360, 616);

    /** A still in the strip, without the room for lines: 2.7 m wide. */
    public static final Framing CELL = new Framing(400, 400, 148, 200, 368);

    public Framing {
        if (widthPx < 1 || heightPx < 1 || !(pxPerMetre > 0)) {
            throw new IllegalArgumentException(
                    "a picture needs a size and a scale, was %d x %d, %s".formatted(widthPx, heightPx, pxPerMetre));
        }
    }

    /** From still metres to px of the picture. */
    public Homography toPicture() {
        return new Homography(pxPerMetre, 0, originXPx, 0, pxPerMetre, groundYPx, 0, 0, 1);
    }

    /** Px of the picture of a place in still metres. */
    public Point2 place(Point2 metres) {
        return toPicture().apply(metres);
    }
}
