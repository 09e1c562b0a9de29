package org.boardtopit.contacts;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;
import org.boardtopit.signal.RobustPolynomial;
import org.boardtopit.signal.RobustWeights;

/**
 * Height of the ground along the run. With marks it is zero. Without, it is a line under the lowest toes: the runway is
 * straight, and the toes come down to it at every contact.
 */
final class GroundLine {
    private static final GroundLine LEVEL = new GroundLine(0, 0);
    private static final double SPAN_S = 0.25;

    private final double origin;
    private final double slope;

    private GroundLine(double origin, double slope) {
        this.origin = origin;
        this.slope = slope;
    }

    /** The ground of a calibrated view. */
    static GroundLine level() {
        return LEVEL;
    }

    /** A line through the lowest toe of every quarter of a second, outliers (flights) having little weight. */
    static GroundLine underToes(MotionTrack motion) {
        List<Point2> lowest = new ArrayList<>();
        Point2 low = null;
        double spanEnd = SPAN_S;
        for (int f = 0; f < motion.frameCount(); f++) {
            for (Foot foot : new Foot[] {Foot.LEFT, Foot.RIGHT}) {
                Point2 toe = motion.smooth(f, foot.toe());
                low = toe.isKnown() && (low == null || toe.y() < low.y()) ? toe : low;
            }
            if (motion.timeS(f) >= spanEnd || f == motion.frameCount() - 1) {
                if (low != null) {
                    lowest.add(low);
                }
                low = null;
                spanEnd = motion.timeS(f) + SPAN_S;
            }
        }
        if (lowest.size() < 4) {
            double[] heights = lowest.stream().mapToDouble(Point2::y).toArray();
            return new GroundLine(heights.length == 0 ? 0 : OrderStatistics.quantile(0.2, heights), 0);
        }
        RobustPolynomial line = RobustPolynomial.line(
                lowest.stream().mapToDouble(Point2::x).toArray(),
                lowest.stream().mapToDouble(Point2::y).toArray(),
                RobustWeights.TUKEY);
        return new GroundLine(line.valueAt(0), line.slopeAt(0));
    }

    double at(double along) {
        return origin + slope * along;
    }

    double above(Point2 place) {
        return place.y() - at(place.x());
    }
}
