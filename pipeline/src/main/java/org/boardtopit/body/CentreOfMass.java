package org.boardtopit.body;

import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/**
 * Centre of mass of the body by the segment method: the sum of the segments' centres, each weighted by its mass from
 * {@link SegmentTable}.
 *
 * <p>Every segment's centre is a mixture of two points, so the result is one weighted mean of the points, and works in any
 * plane: pixels or metres, y up or down.
 *
 * <p>Which points stand for which ends:
 *
 * <ul>
 *   <li>Head: its centre is taken at the middle of the ears. By the table it lies 0.59 of the way from vertex to jaw
 *       angle, which is within a centimetre or two of the ear canal (Dempster's table puts head and neck there). Without
 *       ears: the outer eye corners, then the nose, up to 10 cm off on 7 % of the mass.
 *   <li>Trunk: middle of the shoulders to middle of the hips. One of a pair stands for both when the other is unknown.
 *   <li>Hand: wrist to the middle of the index and little finger's knuckles, one alone if need be.
 * </ul>
 *
 * <p>Rules for what is unknown (the mass so placed is not counted as seen):
 *
 * <ul>
 *   <li>Head unknown: its mass at the middle of the shoulders.
 *   <li>Hand unknown: at the wrist. A forearm or upper arm unknown: where the other side's is, for a far arm is mostly
 *       hidden by the trunk; both unknown: at the trunk's centre, about which arms swing.
 *   <li>Foot unknown: at the ankle (an error of 1 cm or less in the whole). Ankle unknown: shank and foot at the knee
 *       (some 1.5 cm). Knee unknown: no centre of mass, as one leg is a fifth of the body and the other leg is elsewhere.
 *   <li>Neither shoulder or neither hip known: no centre of mass.
 * </ul>
 */
public final class CentreOfMass {

    private final SegmentTable table;

    /** With the segment masses and centres of a table. */
    public CentreOfMass(SegmentTable table) {
        this.table = table;
    }

    /** The centre of mass of points whose uncertainty is not known. Unknown points are {@link Point2#UNKNOWN}. */
    public BodyCentre of(Function<BodyPoint, Point2> points) {
        return of(points, point -> Double.NaN);
    }

    /**
     * The centre of mass of points with their uncertainty.
     *
     * @param points place of each point, unknown ones {@link Point2#UNKNOWN}
     * @param sds standard deviation of each known point in each direction; points err independently
     */
    public BodyCentre of(Function<BodyPoint, Point2> points, ToDoubleFunction<BodyPoint> sds) {
        return new Weighing(table, points).result(sds);
    }

    /** One weighing: how much each point counts in the end. */
    private static final class Weighing {

        private static final BodyPoint[][] HEADS = {
            {BodyPoint.LEFT_EAR, BodyPoint.RIGHT_EAR},
            {BodyPoint.LEFT_EYE_OUTER, BodyPoint.RIGHT_EYE_OUTER},
            {BodyPoint.NOSE}
        };
        private static final BodyPoint[] SHOULDERS = {BodyPoint.LEFT_SHOULDER, BodyPoint.RIGHT_SHOULDER};
        private static final BodyPoint[] HIPS = {BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP};

        private final SegmentTable table;
        private final Point2[] places = new Point2[BodyPoint.COUNT];
        private final double[] weights = new double[BodyPoint.COUNT];
        private double massSeen;

        Weighing(SegmentTable table, Function<BodyPoint, Point2> points) {
            this.table = table;
            for (int i = 0; i < BodyPoint.COUNT; i++) {
                places[i] = points.apply(BodyPoint.at(i));
            }
        }

        BodyCentre result(ToDoubleFunction<BodyPoint> sds) {
            if (!anyKnown(SHOULDERS)
                    || !anyKnown(HIPS)
                    || !known(BodyPoint.LEFT_KNEE)
                    || !known(BodyPoint.RIGHT_KNEE)) {
                return new BodyCentre(Point2.UNKNOWN, 0, Double.NaN);
            }
            weighHead();
            weighTrunk(mass(Segment.TRUNK));
            massSeen += mass(Segment.TRUNK);
            for (BodyPoint shoulder : SHOULDERS) {
                weighArm(shoulder);
            }
            for (BodyPoint hip : HIPS) {
                weighLeg(hip);
            }
            return weighted(sds);
        }

        private BodyCentre weighted(ToDoubleFunction<BodyPoint> sds) {
            Point2 sum = new Point2(0, 0);
            double variance = 0;
            for (int i = 0; i < BodyPoint.COUNT; i++) {
                if (weights[i] != 0) {
                    sum = sum.plus(places[i].times(weights[i]));
                    double share = weights[i] * sds.applyAsDouble(BodyPoint.at(i));
                    variance += share * share;
                }
            }
            return new BodyCentre(sum, massSeen, Math.sqrt(variance));
        }

        private void weighHead() {
            for (BodyPoint[] candidates : HEADS) {
                if (anyKnown(candidates)) {
                    put(mass(Segment.HEAD), candidates);
                    massSeen += mass(Segment.HEAD);
                    return;
                }
            }
            put(mass(Segment.HEAD), SHOULDERS);
        }

        private void weighTrunk(double mass) {
            double fraction = table.row(Segment.TRUNK).centreFraction();
            put(mass * (1 - fraction), SHOULDERS);
            put(mass * fraction, HIPS);
        }

        private void weighArm(BodyPoint shoulder) {
            weighArmSegment(Segment.UPPER_ARM, shoulder, elbowOf(shoulder));
            weighArmSegment(Segment.FOREARM, elbowOf(shoulder), wristOf(shoulder));
            weighHand(wristOf(shoulder));
        }

        private void weighArmSegment(Segment segment, BodyPoint from, BodyPoint to) {
            if (known(from) && known(to)) {
                span(segment, from, to);
                massSeen += mass(segment);
            } else if (known(from.otherSide()) && known(to.otherSide())) {
                span(segment, from.otherSide(), to.otherSide());
            } else {
                weighTrunk(mass(segment));
            }
        }

        private void weighHand(BodyPoint wrist) {
            BodyPoint side = known(wrist) ? wrist : wrist.otherSide();
            if (!known(side)) {
                weighTrunk(mass(Segment.HAND));
                return;
            }
            BodyPoint[] knuckles = knucklesOf(side);
            if (anyKnown(knuckles)) {
                span(Segment.HAND, side, knuckles);
                massSeen += side == wrist ? mass(Segment.HAND) : 0;
            } else {
                put(mass(Segment.HAND), side);
            }
        }

        private void weighLeg(BodyPoint hip) {
            boolean left = hip == BodyPoint.LEFT_HIP;
            BodyPoint knee = left ? BodyPoint.LEFT_KNEE : BodyPoint.RIGHT_KNEE;
            BodyPoint ankle = left ? BodyPoint.LEFT_ANKLE : BodyPoint.RIGHT_ANKLE;
            BodyPoint heel = left ? BodyPoint.LEFT_HEEL : BodyPoint.RIGHT_HEEL;
            BodyPoint toe = left ? BodyPoint.LEFT_TOE : BodyPoint.RIGHT_TOE;
            span(Segment.THIGH, known(hip) ? hip : hip.otherSide(), knee);
            massSeen += mass(Segment.THIGH);
            if (known(ankle)) {
                span(Segment.SHANK, knee, ankle);
                massSeen += mass(Segment.SHANK);
            } else {
                put(mass(Segment.SHANK), knee);
            }
            if (known(heel) && known(toe)) {
                span(Segment.FOOT, heel, toe);
                massSeen += mass(Segment.FOOT);
            } else {
                put(mass(Segment.FOOT), known(ankle) ? ankle : knee);
            }
        }

        private static BodyPoint elbowOf(BodyPoint shoulder) {
            return shoulder == BodyPoint.LEFT_SHOULDER ? BodyPoint.LEFT_ELBOW : BodyPoint.RIGHT_ELBOW;
        }

        private static BodyPoint wristOf(BodyPoint shoulder) {
            return shoulder == BodyPoint.LEFT_SHOULDER ? BodyPoint.LEFT_WRIST : BodyPoint.RIGHT_WRIST;
        }

        private static BodyPoint[] knucklesOf(BodyPoint wrist) {
            return wrist == BodyPoint.LEFT_WRIST
                    ? new BodyPoint[] {BodyPoint.LEFT_INDEX_FINGER, BodyPoint.LEFT_LITTLE_FINGER}
                    : new BodyPoint[] {BodyPoint.RIGHT_INDEX_FINGER, BodyPoint.RIGHT_LITTLE_FINGER};
        }

        private double mass(Segment segment) {
            return table.row(segment).massShare();
        }

        private boolean known(BodyPoint point) {
            return places[point.index()].isKnown();
        }

        private boolean anyKnown(BodyPoint... points) {
            for (BodyPoint point : points) {
                if (known(point)) {
                    return true;
                }
            }
            return false;
        }

        /** Puts a segment's mass between its first end and the middle of the known points of its other end. */
        private void span(Segment segment, BodyPoint from, BodyPoint... to) {
            double fraction = table.row(segment).centreFraction();
            put(mass(segment) * (1 - fraction), from);
            put(mass(segment) * fraction, to);
        }

        /** Puts a mass at the middle of those of the points that are known; at least one is. */
        private void put(double mass, BodyPoint... points) {
            int count = 0;
            for (BodyPoint point : points) {
                count += known(point) ? 1 : 0;
            }
            for (BodyPoint point : points) {
                weights[point.index()] += known(point) ? mass / count : 0;
            }
        }
    }
}
