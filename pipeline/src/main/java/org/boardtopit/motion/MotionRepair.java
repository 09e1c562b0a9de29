package org.boardtopit.motion;

import java.util.EnumMap;
import java.util.Map;
import org.boardtopit.body.CentreOfMass;
import org.boardtopit.body.SegmentTable;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack.Repairs;
import org.boardtopit.motion.MotionTrack.Series;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.signal.GapFilling;
import org.boardtopit.signal.LocalRegression;
import org.boardtopit.signal.Point2;
import org.boardtopit.signal.ZeroLagLowPass;

/**
 * From the network's points to a motion: decides left and right over the whole clip, chooses between the modes of each
 * point, drops outliers, fills short gaps, smooths, and adds the centre of mass.
 *
 * <ul>
 *   <li>Left and right: {@link SideIdentity}, legs and arms apart.
 *   <li>Outliers: a point further from a robust local quadratic than {@value #GATE_SDS} of its standard deviations and 4.5 %
 *       of the standing height gives way to another mode that fits, of its own or of the other side; without one it is
 *       dropped.
 *   <li>A heel further than 0.115, or a toe further than 0.19 standing heights from the ankle is treated the same way
 *       (measured on our footage).
 *   <li>Gaps up to 0.1 s are filled; then the zero-lag Butterworth low-pass (8 Hz trunk and head, 10 Hz knees and elbows, 12
 *       Hz feet and hands: common practice, no source).
 * </ul>
 *
 * <p>Event times are never taken from the smoothed points: a low-pass rounds the bend at the ground.
 */
public final class MotionRepair {
    private static final double GATE_SDS = 3.5;
    private static final double GATE_STATURE = 0.045;
    /** Between one and this many gates a point that has no better mode is kept: the path may really bend so. */
    private static final double DROP_GATES = 2;
    /** A foot strike of this many frame steps squared times its acceleration bends the path away from a parabola. */
    private static final double BEND_SHARE = 0.6;

    /**
     * The better the points, the smoother most of the path, and the sooner a foot strike looks like an error; this much never
     * does (on drawn perfect points none is lost from here on, and outliers are still found up to three times it).
     */
    private static final double LEAST_RESIDUAL_STATURE = 0.005;

    private static final double HEEL_REACH = 0.115;
    private static final double TOE_REACH = 0.19;
    private static final long LONGEST_GAP_US = 100_000;
    private static final double WINDOW_S = 0.07;
    private static final double LEAST_MASS = 0.05;

    private static final BodyPoint[] LEFT_LEG = {
        BodyPoint.LEFT_HIP, BodyPoint.LEFT_KNEE, BodyPoint.LEFT_ANKLE, BodyPoint.LEFT_HEEL, BodyPoint.LEFT_TOE
    };
    private static final double[] LEG_ACCELERATION_MS2 = {40, 120, 250, 250, 250};
    private static final BodyPoint[] LEFT_ARM = {BodyPoint.LEFT_SHOULDER, BodyPoint.LEFT_ELBOW, BodyPoint.LEFT_WRIST};
    private static final double[] ARM_ACCELERATION_MS2 = {40, 80, 150};

    private final SegmentTable segments;
    private final double statureM;

    /**
     * For one athlete.
     *
     * @param segments masses of the athlete's sex
     * @param statureM standing height in the unit of the view
     */
    public MotionRepair(SegmentTable segments, double statureM) {
        if (!(statureM > 0)) {
            throw new IllegalArgumentException("statureM must be positive, was " + statureM);
        }
        this.segments = segments;
        this.statureM = statureM;
    }

    /** The repaired motion; nothing is read from files and the same input gives the same output. */
    public MotionTrack repair(ClipLandmarks clip, RunwayView view) {
        return new Run(clip, view).result();
    }

    private final class Run {
        private final int frames;
        private final double[] timesS;
        private final long[] timesUs;
        private final LandmarkPlane plane;
        private final boolean[] legsExchanged;
        private final boolean[] armsExchanged;
        private final Series[] points = new Series[BodyPoint.COUNT];
        private final double windowS;
        private final double frameStepS;
        private int legPoints;
        private int secondModes;
        private int dropped;

        Run(ClipLandmarks clip, RunwayView view) {
            frames = clip.frameCount();
            timesS = new double[frames];
            timesUs = new long[frames];
            for (int f = 0; f < frames; f++) {
                timesUs[f] = clip.timestampsUs().get(f);
                timesS[f] = timesUs[f] / 1e6;
            }
            frameStepS = clip.frameStepS();
            windowS = Math.max(WINDOW_S, 2.6 * clip.frameStepS());
            plane = new LandmarkPlane(clip, view, statureM);
            legsExchanged = new SideIdentity(plane, timesS, LEFT_LEG, LEG_ACCELERATION_MS2, SideIdentity.Prior.LEGS)
                    .exchanged();
            armsExchanged = new SideIdentity(plane, timesS, LEFT_ARM, ARM_ACCELERATION_MS2, SideIdentity.Prior.ARMS)
                    .exchanged();
        }

        MotionTrack result() {
            for (int i = 0; i < BodyPoint.COUNT; i++) {
                points[i] = firstModes(BodyPoint.at(i));
            }
            for (int pass = 0; pass < 2; pass++) {
                for (int i = 0; i < BodyPoint.COUNT; i++) {
                    replaceOutliers(BodyPoint.at(i), pass == 1);
                }
            }
            gateFeet();
            for (int i = 0; i < BodyPoint.COUNT; i++) {
                smooth(BodyPoint.at(i));
            }
            double[] comX = new double[frames];
            double[] comY = new double[frames];
            centreOfMass(comX, comY);
            return new MotionTrack(timesUs, points, comX, comY, statureM, repairs());
        }

        private Repairs repairs() {
            int exchanged = 0;
            int seen = 0;
            for (int f = 0; f < frames; f++) {
                seen += plane.isSeen(f) ? 1 : 0;
                exchanged += legsExchanged[f] && plane.isSeen(f) ? 1 : 0;
            }
            return new Repairs(
                    seen == 0 ? 0 : exchanged / (double) seen,
                    legPoints == 0 ? 0 : secondModes / (double) legPoints,
                    legPoints == 0 ? 0 : dropped / (double) legPoints);
        }

        private BodyPoint seenAs(int frame, BodyPoint point) {
            boolean[] exchanged = isLeg(point) ? legsExchanged : isArm(point) ? armsExchanged : null;
            return exchanged != null && exchanged[frame] ? point.otherSide() : point;
        }

        private Series firstModes(BodyPoint point) {
            Series s = new Series(frames);
            for (int f = 0; f < frames; f++) {
                if (plane.isSeen(f)) {
                    take(s, f, seenAs(f, point), point, 0);
                }
            }
            return s;
        }

        private void take(Series s, int frame, BodyPoint seenAs, BodyPoint meant, int mode) {
            Point2 place = plane.place(frame, seenAs, meant, mode);
            Point2 px = plane.px(frame, seenAs, mode);
            s.x[frame] = place.x();
            s.y[frame] = place.y();
            s.sd[frame] = plane.sd(frame, seenAs, mode);
            s.pxX[frame] = px.x();
            s.pxY[frame] = px.y();
        }

        /** The first pass only exchanges modes, so that one wrong point does not make its neighbours look wrong. */
        private void replaceOutliers(BodyPoint point, boolean last) {
            Series s = points[point.index()];
            LocalRegression fitX = new LocalRegression(timesS, s.x, windowS, 2, LEAST_RESIDUAL_STATURE * statureM);
            LocalRegression fitY = new LocalRegression(timesS, s.y, windowS, 2, LEAST_RESIDUAL_STATURE * statureM);
            for (int f = 0; f < frames; f++) {
                if (!plane.isSeen(f)) {
                    continue;
                }
                legPoints += last && isLeg(point) ? 1 : 0;
                BodyPoint own = seenAs(f, point);
                Point2 expected = new Point2(fitX.at(timesS[f]), fitY.at(timesS[f]));
                double gate = gate(point, plane.sd(f, own, 0));
                double distance = plane.place(f, own, point, 0).distanceTo(expected);
                boolean replaced =
                        distance > gate && takeAlternative(s, f, point, expected, Math.min(gate, distance / 2));
                boolean drop = !replaced && last && distance > DROP_GATES * gate;
                if (drop) {
                    forget(s, f);
                } else if (!replaced) {
                    take(s, f, own, point, 0);
                }
                if (last && isLeg(point)) {
                    secondModes += replaced ? 1 : 0;
                    dropped += drop ? 1 : 0;
                }
            }
        }

        /** What the network's error and the bend of the true path between frames can explain together. */
        private double gate(BodyPoint point, double sd) {
            double bend = BEND_SHARE * acceleration(point) * frameStepS * frameStepS;
            return Math.max(GATE_STATURE * statureM, Math.max(GATE_SDS * sd, bend));
        }

        private boolean takeAlternative(Series s, int frame, BodyPoint point, Point2 expected, double gate) {
            BodyPoint own = seenAs(frame, point);
            BodyPoint bestAs = null;
            int bestMode = 0;
            double best = gate;
            for (BodyPoint as : new BodyPoint[] {own, own.otherSide()}) {
                for (int mode = 0; mode < 2; mode++) {
                    double d = plane.place(frame, as, point, mode).distanceTo(expected);
                    if (d < best && plane.mass(frame, as, mode) > LEAST_MASS) {
                        best = d;
                        bestAs = as;
                        bestMode = mode;
                    }
                }
            }
            if (bestAs != null) {
                take(s, frame, bestAs, point, bestMode);
                // A choice among several is less sure than what the network said outright.
                s.sd[frame] = Math.hypot(s.sd[frame], 0.01 * statureM);
            }
            return bestAs != null;
        }

        private void gateFeet() {
            for (BodyPoint ankle : new BodyPoint[] {BodyPoint.LEFT_ANKLE, BodyPoint.RIGHT_ANKLE}) {
                boolean left = ankle == BodyPoint.LEFT_ANKLE;
                gate(left ? BodyPoint.LEFT_HEEL : BodyPoint.RIGHT_HEEL, ankle, HEEL_REACH * statureM);
                gate(left ? BodyPoint.LEFT_TOE : BodyPoint.RIGHT_TOE, ankle, TOE_REACH * statureM);
            }
        }

        private void gate(BodyPoint point, BodyPoint ankle, double reach) {
            Series s = points[point.index()];
            Series a = points[ankle.index()];
            for (int f = 0; f < frames; f++) {
                double d = Math.hypot(s.x[f] - a.x[f], s.y[f] - a.y[f]);
                if (d > reach + Math.max(0.01 * statureM, s.sd[f] + a.sd[f])) {
                    Point2 second = plane.place(f, seenAs(f, point), point, 1);
                    boolean fits = second.distanceTo(new Point2(a.x[f], a.y[f])) <= reach
                            && plane.mass(f, seenAs(f, point), 1) > LEAST_MASS;
                    if (fits) {
                        take(s, f, seenAs(f, point), point, 1);
                    } else {
                        forget(s, f);
                    }
                }
            }
        }

        private void forget(Series s, int frame) {
            s.x[frame] = Double.NaN;
            s.y[frame] = Double.NaN;
            s.sd[frame] = Double.NaN;
            s.pxX[frame] = Double.NaN;
            s.pxY[frame] = Double.NaN;
        }

        private void smooth(BodyPoint point) {
            Series s = points[point.index()];
            ZeroLagLowPass filter = new ZeroLagLowPass(cutoffHz(point));
            GapFilling gaps = new GapFilling(LONGEST_GAP_US);
            s.smoothX = filter.smooth(timesUs, gaps.fill(timesUs, s.x).values());
            s.smoothY = filter.smooth(timesUs, gaps.fill(timesUs, s.y).values());
        }

        private void centreOfMass(double[] comX, double[] comY) {
            GapFilling gaps = new GapFilling(LONGEST_GAP_US);
            Map<BodyPoint, double[][]> filled = new EnumMap<>(BodyPoint.class);
            for (int i = 0; i < BodyPoint.COUNT; i++) {
                filled.put(BodyPoint.at(i), new double[][] {
                    gaps.fill(timesUs, points[i].x).values(),
                    gaps.fill(timesUs, points[i].y).values()
                });
            }
            CentreOfMass centre = new CentreOfMass(segments);
            for (int f = 0; f < frames; f++) {
                int frame = f;
                Point2 place = centre.of(p -> new Point2(filled.get(p)[0][frame], filled.get(p)[1][frame]))
                        .place();
                comX[f] = place.x();
                comY[f] = place.y();
            }
        }
    }

    private static double cutoffHz(BodyPoint point) {
        return switch (point) {
            case LEFT_KNEE, RIGHT_KNEE, LEFT_ELBOW, RIGHT_ELBOW -> 10;
            case LEFT_ANKLE, RIGHT_ANKLE, LEFT_HEEL, RIGHT_HEEL, LEFT_TOE, RIGHT_TOE, LEFT_WRIST, RIGHT_WRIST -> 12;
            default -> 8;
        };
    }

    private static double acceleration(BodyPoint point) {
        for (int i = 0; i < LEFT_LEG.length; i++) {
            if (point == LEFT_LEG[i] || point.otherSide() == LEFT_LEG[i]) {
                return LEG_ACCELERATION_MS2[i];
            }
        }
        return isArm(point) ? ARM_ACCELERATION_MS2[2] : ARM_ACCELERATION_MS2[0];
    }

    private static boolean isLeg(BodyPoint point) {
        return point.index() >= BodyPoint.LEFT_HIP.index();
    }

    private static boolean isArm(BodyPoint point) {
        return point.index() >= BodyPoint.LEFT_SHOULDER.index() && point.index() < BodyPoint.LEFT_HIP.index();
    }
}
