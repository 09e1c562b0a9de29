package org.boardtopit.contacts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * Finds where each foot may be on the ground: minima of the ankle's speed over the ground.
 *
 * <p>Ankle speed by itself finds mid-contact well and its ends badly (it makes contacts 55 to 77 ms too short in simulation);
 * {@link SupportFit} finds the ends. A stretch counts while the ankle is slower than half the running speed and its slowest
 * instant slower than {@value #SLOW} of it (common practice is a quarter for sharp markers; smoothing at 12 Hz fills the
 * minimum up). For drills see {@link #ofDrill}.
 */
final class CandidateFinder {
    private static final double SLOW = 0.42;
    private static final double ENDS = 0.5;
    private static final double SHORTEST_S = 0.03;
    /** The ankle leaves this long before the toe (measured on our footage: 22 ms at half the running speed). */
    private static final double TOE_AFTER_ANKLE_S = 0.02;
    /**
     * Over a longer time than this the ankle of a running stride does not stand: its heel is down for some 60 ms (half of a
     * support of 0.10 to 0.13 s). Frames further apart than half of it are looked at two by two.
     */
    private static final double LONGEST_SPAN_S = 0.05;
    /** A toe higher than this over the ground, in standing heights, is in the air. */
    private static final double HIGH_STATURE = 0.13;

    /**
     * In a drill that hardly moves forwards a swinging foot is still faster than 1.2 m/s when it comes down and leaves: the
     * running speed that goes with it (a first guess; drawn skips at 1 m/s are found with it).
     */
    private static final double LEAST_DRILL_SPEED_MS = 2.4;
    /**
     * In slow drills a foot in the air is often as slow as one on the ground; what tells them is the height: 8 to 10 cm for
     * the toe, over the whole stretch (a first guess: a hop with a flight of 0.3 s rises by 11 cm).
     */
    private static final double DRILL_HIGH_STATURE = 0.05;
    /** A foot that moves for a shorter time than this stood on: drills have flights of 0.1 s and more. */
    private static final double LONGEST_DOUBT_S = 0.07;

    /** At the edges of what is seen the smoothed points tremble. */
    private static final double EDGE_S = 0.08;

    private final MotionTrack motion;
    private final GroundLine ground;
    private final double runningSpeedMs;
    private final boolean drill;

    CandidateFinder(MotionTrack motion, GroundLine ground) {
        this(motion, ground, false);
    }

    private CandidateFinder(MotionTrack motion, GroundLine ground, boolean drill) {
        this.motion = motion;
        this.ground = ground;
        double speed = runningSpeed(motion);
        this.runningSpeedMs = drill && speed < LEAST_DRILL_SPEED_MS ? LEAST_DRILL_SPEED_MS : speed;
        this.drill = drill;
    }

    /**
     * For slow movements too, down to skipping on the spot. It also finds feet that stand when they are first or last seen,
     * and the first ones at any height, because a drill may begin on a low platform.
     */
    static CandidateFinder ofDrill(MotionTrack motion, GroundLine ground) {
        return new CandidateFinder(motion, ground, true);
    }

    /** Median forward speed of the hips over the half of the clip in which they are fastest. */
    static double runningSpeed(MotionTrack motion) {
        List<Double> speeds = new ArrayList<>();
        for (int f = 2; f + 2 < motion.frameCount(); f++) {
            Point2 a = middle(motion, f - 2, BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP);
            Point2 b = middle(motion, f + 2, BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP);
            double v = (b.x() - a.x()) / (motion.timeS(f + 2) - motion.timeS(f - 2));
            if (Double.isFinite(v)) {
                speeds.add(v);
            }
        }
        return speeds.isEmpty()
                ? Double.NaN
                : OrderStatistics.quantile(
                        0.7, speeds.stream().mapToDouble(v -> v).toArray());
    }

    private static Point2 middle(MotionTrack motion, int frame, BodyPoint a, BodyPoint b) {
        return motion.smooth(frame, a).plus(motion.smooth(frame, b)).times(0.5);
    }

    /** All candidates of both feet in time order. */
    List<Candidate> find() {
        List<Candidate> found = new ArrayList<>();
        if (runningSpeedMs > 0) {
            found.addAll(ofFoot(Foot.LEFT));
            found.addAll(ofFoot(Foot.RIGHT));
        }
        found.sort(Comparator.comparingDouble(Candidate::middleS));
        return found;
    }

    private List<Candidate> ofFoot(Foot foot) {
        double[] speed = speeds(foot.ankle());
        double[] least = leastSpeeds(foot.ankle());
        if (drill) {
            return stretches(foot, standing(foot, speed), least, 0);
        }
        List<Candidate> found = stretches(foot, speed, least, TOE_AFTER_ANKLE_S);
        if (2 * motion.frameStepS() > LONGEST_SPAN_S) {
            // Of the last two frames that were slow together only the first need be on the ground: half a frame
            // earlier.
            stretches(foot, least, least, TOE_AFTER_ANKLE_S - motion.frameStepS() / 2).stream()
                    .filter(c -> found.stream().noneMatch(c::overlaps))
                    .toList()
                    .forEach(found::add);
        }
        return found;
    }

    private List<Candidate> stretches(Foot foot, double[] speed, double[] least, double toeAfterS) {
        List<Candidate> found = new ArrayList<>();
        int f = drill ? 0 : afterFirstStand(speed);
        while (f < speed.length) {
            if (!(speed[f] < ENDS * runningSpeedMs)) {
                f++;
                continue;
            }
            int start = f;
            int slowest = f;
            while (f < speed.length && speed[f] < ENDS * runningSpeedMs) {
                slowest = least[f] < least[slowest] ? f : slowest;
                f++;
            }
            add(found, foot, start, slowest, motion.timeS(f - 1) + toeAfterS, least[slowest] / runningSpeedMs);
        }
        return found;
    }

    /** A foot that stands when it is first seen came down before: when it did is not known. */
    private int afterFirstStand(double[] speed) {
        int f = 0;
        while (f < speed.length && Double.isNaN(speed[f])) {
            f++;
        }
        while (f < speed.length && speed[f] < ENDS * runningSpeedMs) {
            f++;
        }
        return f;
    }

    private void add(List<Candidate> found, Foot foot, int start, int slowest, double to, double slowness) {
        Point2 toe = motion.smooth(slowest, foot.toe());
        if (!toe.isKnown()) {
            toe = motion.smooth(slowest, foot.ankle());
        }
        double height = drill ? lowest(slowest, foot) : ground.above(toe);
        double from = motion.timeS(start);
        boolean fromFirst = drill && from <= firstSeenS(foot) + EDGE_S;
        boolean toLast = drill && to >= lastSeenS(foot) - EDGE_S;
        boolean high = height > HIGH_STATURE * motion.statureM() && !fromFirst;
        if (slowness < SLOW && to - from >= SHORTEST_S && !high) {
            found.add(new Candidate(foot, from, to, slowness, toe.x(), height, fromFirst, toLast));
        }
    }

    /**
     * Speeds of the ankle in a drill, not known where the foot is in the air; before it first moved it may stand on something.
     * Once it stands, a slow toe keeps it standing while the heel rises, and a doubtful frame or two do not end it.
     */
    private double[] standing(Foot foot, double[] ankle) {
        double[] speed = ankle.clone();
        double[] toe = speeds(foot.toe());
        double slow = ENDS * runningSpeedMs;
        int beganToMove = afterFirstStand(ankle);
        int stood = -1;
        for (int f = 0; f < speed.length; f++) {
            boolean high = f >= beganToMove && lowest(f, foot) > DRILL_HIGH_STATURE * motion.statureM();
            boolean keeps = stood == f - 1 && f > 0 && toe[f] < slow;
            speed[f] = high ? Double.NaN : keeps ? Math.min(toe[f], ankle[f]) : ankle[f];
            if (speed[f] < slow) {
                boolean briefly = stood >= 0 && motion.timeS(f) - motion.timeS(stood) <= LONGEST_DOUBT_S;
                for (int g = stood + 1; briefly && g < f; g++) {
                    speed[g] = speed[f];
                }
                stood = f;
            }
        }
        return speed;
    }

    /** Height of the lower end of the shoe: sitting in the pit the toes point up. */
    private double lowest(int frame, Foot foot) {
        double toe = ground.above(motion.smooth(frame, foot.toe()));
        double heel = ground.above(motion.smooth(frame, foot.heel()));
        return Double.isNaN(heel) || toe < heel ? toe : heel;
    }

    private double firstSeenS(Foot foot) {
        int f = 0;
        while (f + 1 < motion.frameCount() && !motion.smooth(f, foot.ankle()).isKnown()) {
            f++;
        }
        return motion.timeS(f);
    }

    private double lastSeenS(Foot foot) {
        int f = motion.frameCount() - 1;
        while (f > 0 && !motion.smooth(f, foot.ankle()).isKnown()) {
            f--;
        }
        return motion.timeS(f);
    }

    /** Over the frames before and after each. */
    private double[] speeds(BodyPoint ankle) {
        double[] speed = new double[motion.frameCount()];
        for (int f = 0; f < speed.length; f++) {
            speed[f] = speed(ankle, Math.max(0, f - 1), Math.min(speed.length - 1, f + 1));
        }
        return speed;
    }

    /** The same; where the frames are few, over the frame before or after each, whichever is less. */
    private double[] leastSpeeds(BodyPoint ankle) {
        double[] speed = speeds(ankle);
        for (int f = 1; f + 1 < speed.length; f++) {
            if (motion.timeS(f + 1) - motion.timeS(f - 1) > LONGEST_SPAN_S) {
                speed[f] = lesser(speed(ankle, f - 1, f), speed(ankle, f, f + 1));
            }
        }
        return speed;
    }

    private double speed(BodyPoint ankle, int first, int last) {
        double d = motion.smooth(last, ankle).distanceTo(motion.smooth(first, ankle));
        return d / (motion.timeS(last) - motion.timeS(first));
    }

    private static double lesser(double a, double b) {
        return Double.isNaN(a) || b < a ? b : a;
    }

    double runningSpeedMs() {
        return runningSpeedMs;
    }
}
