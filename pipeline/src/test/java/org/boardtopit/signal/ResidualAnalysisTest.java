package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ResidualAnalysisTest {

    /** A 2 Hz motion in white noise: the best single cutoff, found by comparing with the true motion, is near. */
    @Test
    void findsACutoffWhoseErrorIsNearTheSmallest() {
        Random random = new Random(3);
        double[] motion = IntStream.range(0, 500)
                .mapToDouble(i -> Math.sin(2 * Math.PI * 2 * i / 100.0))
                .toArray();
        double[] noisy = IntStream.range(0, 500)
                .mapToDouble(i -> motion[i] + 0.05 * random.nextGaussian())
                .toArray();
        double cutoffHz = ResidualAnalysis.cutoffHz(noisy, 100).orElseThrow();

        double smallest = IntStream.rangeClosed(2, 40)
                .mapToDouble(fc -> error(motion, noisy, fc))
                .min()
                .orElseThrow();
        assertTrue(cutoffHz > 3 && cutoffHz < 12, () -> "cutoff " + cutoffHz);
        assertEquals(smallest, error(motion, noisy, cutoffHz), 0.5 * smallest);
    }

    private static double error(double[] motion, double[] noisy, double cutoffHz) {
        double[] filtered = Butterworth.forTwoPasses(cutoffHz, 100).bothWays(noisy);
        return Math.sqrt(IntStream.range(0, motion.length)
                .mapToDouble(i -> Math.pow(filtered[i] - motion[i], 2))
                .average()
                .orElseThrow());
    }

    @Test
    void refusesARateThatLeavesNoRange() {
        assertThrows(IllegalArgumentException.class, () -> ResidualAnalysis.cutoffHz(new double[50], 4));
    }
}
