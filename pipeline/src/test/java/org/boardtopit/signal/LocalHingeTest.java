package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Signals written down by formulas, with fixed seeds (SYN). */
class LocalHingeTest {
    private static final double[] T =
            IntStream.rangeClosed(-12, 0).mapToDouble(i -> i / 120.0).toArray();

    private static LocalHinge fit(double[] y, double noise) {
        double[] trust = new double[y.length];
        Arrays.fill(trust, 1);
        return LocalHinge.fit(T, y, trust, noise, 100, 500).orElseThrow();
    }

    /** x = 3 + 5 t + 40 t^2: from -0.03 s to 0 it moves by 0.15 - 0.036 m, at a mean of 3.8 m/s. */
    @Test
    void tellsTheMeanSpeedJustBeforeTheInstant() {
        double[] y = Arrays.stream(T).map(t -> 3 + 5 * t + 40 * t * t).toArray();
        LocalHinge fit = fit(y, 1e-4);
        assertEquals(3, fit.value(), 1e-3);
        assertEquals(5, fit.slopeBefore(), 1e-2);
        assertEquals(3.8, fit.meanSlopeBefore(0.03), 1e-2);
    }

    /** Over many draws the errors are as large as stated. */
    @Test
    void knowsHowSureThatSpeedIs() {
        Random random = new Random(5);
        double squares = 0;
        double stated = 0;
        int draws = 2000;
        for (int i = 0; i < draws; i++) {
            double[] y = Arrays.stream(T)
                    .map(t -> 5 * t + 40 * t * t + 0.01 * random.nextGaussian())
                    .toArray();
            LocalHinge fit = fit(y, 0.01);
            squares += Math.pow(fit.meanSlopeBefore(0.03) - 3.8, 2);
            stated += fit.meanSlopeBeforeSd(0.03);
        }
        assertEquals(1, Math.sqrt(squares / draws) / (stated / draws), 0.15);
    }
}
