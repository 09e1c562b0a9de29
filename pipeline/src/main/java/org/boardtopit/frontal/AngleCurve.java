package org.boardtopit.frontal;

import java.util.Arrays;
import org.boardtopit.measures.Reading;
import org.boardtopit.signal.LastingErrors;
import org.boardtopit.signal.RobustPolynomial;
import org.boardtopit.signal.RobustWeights;

/**
 * An angle of the trunk over the clip, read at any time by a parabola through the frames around it that bears outliers. Trunk,
 * shoulders and hips have much mass: their tilt bends little within a tenth of a second, also at a touchdown.
 */
final class AngleCurve {
    private static final double REACH_S = 0.1;
    /** A reading needs a frame as near as this. */
    private static final double NEAREST_S = 0.045;

    private static final int FEWEST = 5;
    /** The network's errors stay alike for some frames (a first guess, not tuned). */
    private static final double MEMORY_S = 0.05;

    private final double[] timesS;
    private final double[] deg;
    private final double stepS;
    private final double steadySdDeg;
    private final double shareSd;

    /**
     * A curve.
     *
     * @param deg NaN where not seen
     * @param steadySdDeg what all readings may be off by, whatever their number
     * @param shareSd what they may be off by as a share of the angle
     */
    AngleCurve(double[] timesS, double[] deg, double stepS, double steadySdDeg, double shareSd) {
        this.timesS = timesS.clone();
        this.deg = deg.clone();
        this.stepS = stepS;
        this.steadySdDeg = steadySdDeg;
        this.shareSd = shareSd;
    }

    /**
     * The angle at a time; unknown where the athlete is not seen around it.
     *
     * @param sdS standard deviation of the time
     */
    Reading at(double timeS, double sdS) {
        double reach = Math.max(REACH_S, 3.2 * stepS);
        int n = 0;
        double nearest = Double.POSITIVE_INFINITY;
        double[] x = new double[timesS.length];
        double[] y = new double[timesS.length];
        double[] sd = new double[timesS.length];
        for (int i = 0; i < timesS.length; i++) {
            double d = Math.abs(timesS[i] - timeS) / reach;
            if (d < 1 && Double.isFinite(deg[i])) {
                x[n] = timesS[i] - timeS;
                y[n] = deg[i];
                sd[n++] = 1 / Math.pow(1 - d * d * d, 1.5); // tricube: a far frame counts less
                nearest = Math.min(nearest, d * reach);
            }
        }
        if (n < FEWEST || nearest > Math.max(NEAREST_S, 1.2 * stepS)) {
            return Reading.UNKNOWN;
        }
        RobustPolynomial fit = RobustPolynomial.fit(
                n > FEWEST ? 2 : 1,
                Arrays.copyOf(x, n),
                Arrays.copyOf(y, n),
                Arrays.copyOf(sd, n),
                RobustWeights.TUKEY);
        double value = fit.valueAt(0);
        double noise = fit.valueSdAt(0) * LastingErrors.whileTheyStay(MEMORY_S, stepS);
        double steady = Math.hypot(steadySdDeg, shareSd * value);
        return new Reading(value, Math.hypot(Math.hypot(noise, steady), sdS * fit.slopeAt(0)));
    }
}
