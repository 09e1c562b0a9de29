package org.boardtopit.subject;

import java.nio.ByteBuffer;
import java.util.Optional;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.models.LandmarkNetwork;
import org.boardtopit.models.LandmarkReading;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.SquareCrop;
import org.boardtopit.video.VideoFrame;

/** Asks the landmark network where the hips of the person at a place are, and how tall the person is. */
final class BodyReader {
    /** The landmark networks were tuned for squares of 1.25 to 1.4 standing heights (measured: errors rise beyond 1.6). */
    static final double SQUARE_STATURES = 1.3;

    /** Trunk, thigh and shank together, in standing heights (Winter after Drillis and Contini, from memory). */
    private static final double CHAIN_STATURES = 0.779;
    /** Shoulder joints to hip joints, in standing heights: a little less than 0.288 because the trunk leans forwards. */
    private static final double TRUNK_STATURES = 0.27;

    /** The network is at a loss when the middle one of its leg points is less sure than this share of the square. */
    private static final double LARGEST_SD_SHARE = 0.04;
    /** Hips further than this from where they were predicted belong to somebody else. */
    private static final double LARGEST_MISS_SHARE = 0.3;

    private final boolean seenAlong;
    private final LandmarkNetwork network;
    private final SquareCrop crop;
    private final ByteBuffer rgb;

    /**
     * A reader.
     *
     * @param seenAlong true for a camera in front or behind, to which lifted thighs point: the trunk then tells the height
     */
    BodyReader(LandmarkNetwork network, boolean seenAlong) {
        this.seenAlong = seenAlong;
        this.network = network;
        this.crop = new SquareCrop(network.inputSizePx());
        this.rgb = crop.newBuffer();
    }

    /**
     * The hips and, as the side, the standing height of the person at a place; empty when the network is not sure of one.
     *
     * @param at where the hips are expected, with the standing height as side, in pixels of the frame
     */
    Optional<Square> read(VideoFrame frame, Square at) {
        double side = SQUARE_STATURES * at.sidePx();
        crop.cut(frame, at.centreXPx(), at.centreYPx(), side, rgb);
        LandmarkReading reading = network.read(rgb);
        double scale = side / network.inputSizePx();
        Point2 hips = middle(reading, BodyPoint.LEFT_HIP).times(scale);
        double chain = (chain(reading, true) + chain(reading, false)) / 2 * scale;
        double trunk = middle(reading, BodyPoint.LEFT_SHOULDER).times(scale).distanceTo(hips);
        double stature = seenAlong ? Math.max(chain / CHAIN_STATURES, trunk / TRUNK_STATURES) : chain / CHAIN_STATURES;
        boolean sure = medianLegSd(reading) < LARGEST_SD_SHARE * network.inputSizePx();
        Point2 miss = hips.minus(new Point2(side / 2, side / 2));
        if (!sure || miss.length() > LARGEST_MISS_SHARE * side || !(chain > 0)) {
            return Optional.empty();
        }
        return Optional.of(new Square(at.centreXPx() + miss.x(), at.centreYPx() + miss.y(), stature));
    }

    private static Point2 place(LandmarkReading reading, BodyPoint point) {
        return new Point2(reading.xPx(point, 0), reading.yPx(point, 0));
    }

    private static Point2 middle(LandmarkReading reading, BodyPoint left) {
        return place(reading, left).plus(place(reading, left.otherSide())).times(0.5);
    }

    /** Length of shoulder, hip, knee, ankle of one side. */
    private static double chain(LandmarkReading reading, boolean left) {
        BodyPoint[] points = {BodyPoint.LEFT_SHOULDER, BodyPoint.LEFT_HIP, BodyPoint.LEFT_KNEE, BodyPoint.LEFT_ANKLE};
        double length = 0;
        for (int i = 1; i < points.length; i++) {
            BodyPoint a = left ? points[i - 1] : points[i - 1].otherSide();
            BodyPoint b = left ? points[i] : points[i].otherSide();
            length += place(reading, a).distanceTo(place(reading, b));
        }
        return length;
    }

    private static double medianLegSd(LandmarkReading reading) {
        double[] sds = new double[BodyPoint.COUNT - BodyPoint.LEFT_HIP.index()];
        for (int i = 0; i < sds.length; i++) {
            sds[i] = reading.sdPx(BodyPoint.at(BodyPoint.LEFT_HIP.index() + i), 0);
        }
        return OrderStatistics.median(sds);
    }
}
