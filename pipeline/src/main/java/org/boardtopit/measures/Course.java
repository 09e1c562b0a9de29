package org.boardtopit.measures;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.boardtopit.fit.FittedMotion;

/**
 * How a number of the body goes from one instant to another, read from the fitted frames between them.
 *
 * <p>At the first instant it is read between the frames on both sides; at the last it is carried on from the two frames before
 * it, since at a touchdown speeds jump and a frame after it would tell of something else. Between samples it runs straight, and
 * its extremes are those of the parabola through three samples.
 */
final class Course {
    private static final int LEAST_SAMPLES = 3;
    /** A longer time without a sample may hide an extreme: a thigh swings through in 0.2 s (common practice, no source). */
    private static final double LONGEST_GAP_S = 0.1;

    private final double[] t;
    private final double[] y;

    /** A value and when it was reached; both NaN when the course is not known. */
    record Extreme(double value, double atS) {
        static final Extreme UNKNOWN = new Extreme(Double.NaN, Double.NaN);

        boolean isKnown() {
            return Double.isFinite(value);
        }
    }

    Course(double[] timesS, double[] values) {
        this.t = timesS.clone();
        this.y = values.clone();
    }

    /**
     * Reads a number over a span of time.
     *
     * @param number its value in a frame, NaN where unknown
     */
    static Course between(FittedMotion motion, double fromS, double toS, IntToDoubleFunction number) {
        int first = motion.repaired().frameAtOrAfter(fromS);
        int end = first;
        while (end < motion.frameCount() && motion.timeS(end) <= toS) {
            end++;
        }
        int n = Math.max(0, end - first);
        double[] t = new double[n + 2];
        double[] y = new double[n + 2];
        for (int i = 0; i < n; i++) {
            t[i + 1] = motion.timeS(first + i);
            y[i + 1] = number.applyAsDouble(first + i);
        }
        t[0] = fromS;
        y[0] = first > 0 && first < motion.frameCount() ? onLine(motion, first - 1, fromS, number) : Double.NaN;
        t[n + 1] = toS;
        y[n + 1] = n >= 2 ? onLine(motion, end - 2, toS, number) : Double.NaN;
        return new Course(t, y).known();
    }

    /** On the straight line through a frame and the next. */
    private static double onLine(FittedMotion motion, int frame, double timeS, IntToDoubleFunction number) {
        double from = number.applyAsDouble(frame);
        double to = number.applyAsDouble(frame + 1);
        double share = (timeS - motion.timeS(frame)) / (motion.timeS(frame + 1) - motion.timeS(frame));
        return from + share * (to - from);
    }

    /** Without what is unknown and what stands at the same time; nothing when too little is left or a gap is too long. */
    private Course known() {
        double[] times = new double[t.length];
        double[] values = new double[t.length];
        int n = 0;
        for (int i = 0; i < t.length; i++) {
            if (Double.isFinite(y[i]) && !(n > 0 && t[i] <= times[n - 1])) {
                times[n] = t[i];
                values[n++] = y[i];
            }
        }
        boolean whole = n >= LEAST_SAMPLES
                && times[0] - t[0] <= LONGEST_GAP_S
                && t[t.length - 1] - times[n - 1] <= LONGEST_GAP_S;
        for (int i = 1; i < n; i++) {
            whole &= times[i] - times[i - 1] <= LONGEST_GAP_S;
        }
        int kept = whole ? n : 0;
        return new Course(Arrays.copyOf(times, kept), Arrays.copyOf(values, kept));
    }

    /** The part from an instant on. */
    Course from(double timeS) {
        int i = 0;
        while (i < t.length && t[i] < timeS) {
            i++;
        }
        if (i == 0 || i == t.length || t[i] == timeS) {
            return new Course(Arrays.copyOfRange(t, i, t.length), Arrays.copyOfRange(y, i, y.length));
        }
        double[] times = Arrays.copyOfRange(t, i - 1, t.length);
        double[] values = Arrays.copyOfRange(y, i - 1, y.length);
        values[0] += (timeS - times[0]) / (times[1] - times[0]) * (values[1] - values[0]);
        times[0] = timeS;
        return new Course(times, values);
    }

    /** The largest value. */
    Extreme largest() {
        return extreme(1);
    }

    /** The smallest value. */
    Extreme smallest() {
        return extreme(-1);
    }

    private Extreme extreme(int sign) {
        int best = -1;
        for (int i = 0; i < t.length; i++) {
            best = best < 0 || sign * y[i] > sign * y[best] ? i : best;
        }
        if (best < 0) {
            return Extreme.UNKNOWN;
        }
        return best == 0 || best == t.length - 1 ? new Extreme(y[best], t[best]) : vertex(best);
    }

    /** Top of the parabola through a sample and its neighbours, neither of which is beyond it. */
    private Extreme vertex(int i) {
        double before = t[i - 1] - t[i];
        double after = t[i + 1] - t[i];
        double slopeBefore = (y[i - 1] - y[i]) / before;
        double slopeAfter = (y[i + 1] - y[i]) / after;
        double bend = (slopeAfter - slopeBefore) / (after - before);
        double slope = slopeBefore - bend * before;
        if (bend == 0) {
            return new Extreme(y[i], t[i]);
        }
        double at = -slope / (2 * bend);
        return new Extreme(y[i] + slope * at / 2, t[i] + at);
    }

    /** Share of the time, 0 to 1, in which the course is at or above a level; NaN when it is not known. */
    double shareAtLeast(double level) {
        double above = 0;
        for (int i = 1; i < t.length; i++) {
            above += (t[i] - t[i - 1]) * shareAtLeast(level, y[i - 1], y[i]);
        }
        return t.length < 2 ? Double.NaN : above / (t[t.length - 1] - t[0]);
    }

    private static double shareAtLeast(double level, double from, double to) {
        double low = Math.min(from, to);
        double high = Math.max(from, to);
        if (low >= level) {
            return 1;
        }
        return high < level ? 0 : (high - level) / (high - low);
    }

    /** The last instant at which the course is at or above a level; NaN when it never is. */
    double lastAtLeast(double level) {
        for (int i = t.length - 1; i >= 0; i--) {
            if (y[i] >= level) {
                boolean last = i == t.length - 1;
                return last ? t[i] : t[i] + (y[i] - level) / (y[i] - y[i + 1]) * (t[i + 1] - t[i]);
            }
        }
        return Double.NaN;
    }

    /** The first instant at which the course passes zero upwards; NaN when it does not. */
    double firstRiseThroughZero() {
        for (int i = 1; i < t.length; i++) {
            if (y[i - 1] < 0 && y[i] >= 0) {
                return t[i - 1] - y[i - 1] / (y[i] - y[i - 1]) * (t[i] - t[i - 1]);
            }
        }
        return Double.NaN;
    }
}
