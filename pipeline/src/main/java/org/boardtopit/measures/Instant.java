package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.Posture.Angle;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.RobustPolynomial;
import org.boardtopit.signal.RobustWeights;

/**
 * Reads angles at an instant between frames from one side only.
 *
 * <p>At a touchdown and a toe-off the joints' speeds jump, so a filter that looks across the instant mixes two motions. A robust
 * line (quadratic where there are frames enough) is fitted to the angles of the frames on one side and read at the
 * instant.
 */
final class Instant {
    private static final double SPAN_S = 0.075;
    private static final int FRAMES_FOR_CURVE = 7;
    private static final int LEAST_FRAMES = 2;

    private Instant() {}

    /** Which frames may speak for the instant. */
    enum Side {
        BEFORE,
        AFTER
    }

    /** Angles at a time, from the frames before or after it. */
    static Map<Angle, Reading> angles(MotionTrack motion, Foot foot, double atS, Side side) {
        List<Double> times = new ArrayList<>();
        List<Map<Angle, Double>> seen = new ArrayList<>();
        double span = Math.max(SPAN_S, 3.2 * motion.frameStepS());
        double tolerance = 0.25 * motion.frameStepS(); // a frame at the instant itself belongs to both sides
        double from = side == Side.BEFORE ? atS - span : atS - tolerance;
        double to = side == Side.BEFORE ? atS + tolerance : atS + span;
        for (int f = motion.frameAtOrAfter(from); f < motion.frameCount() && motion.timeS(f) <= to; f++) {
            times.add(motion.timeS(f) - atS);
            seen.add(new Posture(motion, f).angles(foot));
        }
        Map<Angle, Reading> readings = new EnumMap<>(Angle.class);
        for (Angle angle : Angle.values()) {
            readings.put(angle, read(times, seen, angle));
        }
        return readings;
    }

    private static Reading read(List<Double> times, List<Map<Angle, Double>> seen, Angle angle) {
        List<double[]> known = new ArrayList<>();
        for (int i = 0; i < times.size(); i++) {
            double value = seen.get(i).get(angle);
            if (Double.isFinite(value)) {
                known.add(new double[] {times.get(i), value});
            }
        }
        if (known.size() < LEAST_FRAMES) {
            return Reading.UNKNOWN;
        }
        double[] x = known.stream().mapToDouble(k -> k[0]).toArray();
        double[] y = known.stream().mapToDouble(k -> k[1]).toArray();
        if (known.size() == LEAST_FRAMES) {
            int nearest = Math.abs(x[0]) < Math.abs(x[1]) ? 0 : 1;
            return new Reading(y[nearest], Math.max(6, Math.abs(y[0] - y[1])));
        }
        RobustPolynomial fit = known.size() >= FRAMES_FOR_CURVE
                ? RobustPolynomial.quadratic(x, y, RobustWeights.TUKEY)
                : RobustPolynomial.line(x, y, RobustWeights.TUKEY);
        return new Reading(fit.valueAt(0), fit.valueSdAt(0));
    }
}
