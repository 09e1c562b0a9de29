package org.boardtopit.pose;

import java.util.List;
import org.boardtopit.clips.Effort;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.models.LandmarkReading;
import org.boardtopit.subject.SubjectTrack.Square;

/**
 * One way to show the athlete's square to the network. The same athlete larger or smaller, turned a little or seen in a mirror
 * has the same joints, so what the network then says otherwise is its own error.
 *
 * @param scale side of what is shown over the side of the athlete's square, 0.5 to 2
 * @param turnDeg by how much what is shown is turned clockwise about the middle of the square, -45 to 45
 * @param mirrored left and right exchanged, after turning
 */
public record Look(double scale, double turnDeg, boolean mirrored) {
    /** The square as it is. */
    public static final Look PLAIN = new Look(1, 0, false);

    public Look {
        if (!(scale >= 0.5 && scale <= 2)) {
            throw new IllegalArgumentException("scale must be in 0.5 to 2, was " + scale);
        }
        if (!(turnDeg >= -45 && turnDeg <= 45)) {
            throw new IllegalArgumentException("turnDeg must be in -45 to 45, was " + turnDeg);
        }
    }

    /** The looks of an effort: chosen by measurement, docs/decisions/0007. */
    public static List<Look> of(Effort effort) {
        return switch (effort) {
            case QUICK -> List.of(PLAIN);
            case NORMAL -> List.of(PLAIN, new Look(1, 0, true));
            case THOROUGH ->
                List.of(
                        PLAIN,
                        new Look(1, 0, true),
                        new Look(1.12, 0, false),
                        new Look(1, 8, false),
                        new Look(1, -8, true));
        };
    }

    double sidePx(Square square) {
        return scale * square.sidePx();
    }

    /**
     * What the network read in this look, in pixels of the frame and with the athlete's own left and right: the array form of
     * a {@link LandmarkReading}.
     *
     * @param cropPx side of the crop that the network was given
     */
    float[] inFrame(LandmarkReading reading, Square square, int cropPx) {
        float[] seen = reading.toArray();
        float[] numbers = new float[seen.length];
        double unit = sidePx(square) / cropPx;
        double cos = Math.cos(Math.toRadians(turnDeg)) * unit;
        double sin = Math.sin(Math.toRadians(turnDeg)) * unit;
        for (int from = 0; from < seen.length; from += 4) {
            double right = mirrored ? cropPx / 2.0 - seen[from] : seen[from] - cropPx / 2.0;
            double down = seen[from + 1] - cropPx / 2.0;
            int to = meant(from);
            numbers[to] = (float) (square.centreXPx() + cos * right - sin * down);
            numbers[to + 1] = (float) (square.centreYPx() + sin * right + cos * down);
            numbers[to + 2] = (float) (seen[from + 2] * unit);
            numbers[to + 3] = seen[from + 3];
        }
        return numbers;
    }

    /** Where the mode at a place of the array belongs: in a mirror the left knee is the right one. */
    private int meant(int from) {
        if (!mirrored) {
            return from;
        }
        BodyPoint point = BodyPoint.at(from / LandmarkReading.NUMBERS_PER_POINT);
        return point.otherSide().index() * LandmarkReading.NUMBERS_PER_POINT + from % LandmarkReading.NUMBERS_PER_POINT;
    }
}
