package org.boardtopit.fit;

import java.util.Arrays;
import java.util.function.Function;
import org.boardtopit.body.CentreOfMass;
import org.boardtopit.body.SegmentTable;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/** The order of the unknowns of the fit: frame by frame, point by point, along before height. */
final class Unknowns {
    /** The points that are fitted; hands and face follow wrists and ears. */
    static final BodyPoint[] POINTS = {
        BodyPoint.NOSE,
        BodyPoint.LEFT_EAR,
        BodyPoint.RIGHT_EAR,
        BodyPoint.LEFT_SHOULDER,
        BodyPoint.RIGHT_SHOULDER,
        BodyPoint.LEFT_ELBOW,
        BodyPoint.RIGHT_ELBOW,
        BodyPoint.LEFT_WRIST,
        BodyPoint.RIGHT_WRIST,
        BodyPoint.LEFT_HIP,
        BodyPoint.RIGHT_HIP,
        BodyPoint.LEFT_KNEE,
        BodyPoint.RIGHT_KNEE,
        BodyPoint.LEFT_ANKLE,
        BodyPoint.RIGHT_ANKLE,
        BodyPoint.LEFT_HEEL,
        BodyPoint.RIGHT_HEEL,
        BodyPoint.LEFT_TOE,
        BodyPoint.RIGHT_TOE
    };

    static final int PER_FRAME = 2 * POINTS.length;
    private static final int[] SLOTS = slots();

    private Unknowns() {}

    private static int[] slots() {
        int[] slots = new int[BodyPoint.COUNT];
        Arrays.fill(slots, -1);
        for (int i = 0; i < POINTS.length; i++) {
            slots[POINTS[i].index()] = 2 * i;
        }
        return slots;
    }

    static boolean has(BodyPoint point) {
        return SLOTS[point.index()] >= 0;
    }

    /** Number of the unknown of a point's place along; its height is the next. */
    static int of(int frame, BodyPoint point) {
        return frame * PER_FRAME + SLOTS[point.index()];
    }

    /** What each of {@link #POINTS} counts in the centre of mass. */
    static double[] massWeights(SegmentTable table) {
        CentreOfMass centre = new CentreOfMass(table);
        double[] weights = new double[POINTS.length];
        for (int i = 0; i < weights.length; i++) {
            BodyPoint one = POINTS[i];
            // The centre is linear in the points: where it lies when one is at 1 and all others at 0 is that one's
            // weight.
            Function<BodyPoint, Point2> unit = p -> has(p) ? new Point2(p == one ? 1 : 0, 0) : Point2.UNKNOWN;
            weights[i] = centre.of(unit).place().x();
        }
        return weights;
    }
}
