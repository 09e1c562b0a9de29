package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;

class RearHeelTest {
    private static final double STATURE_M = 1.80;

    /**
     * By hand: the noise of 0.10 m between the heels is 0.0734 m, so 0.10^2 - 0.0734^2 of its square is real, 0.4616, and the
     * nearer one lies 0.0231 m before their middle at 9.95 m.
     */
    @Test
    void takesHalfOfTenCentimetresBetweenTheHeelsForNoise() {
        RearHeel heel = RearHeel.of(10.00, 0.01, 9.90, 0.01, STATURE_M);
        assertEquals(9.9269, heel.place(), 1e-4);
        assertEquals(0.0259, heel.sd(), 1e-4);
    }

    @Test
    void doesNotMindWhichHeelIsNearer() {
        assertEquals(RearHeel.of(9.90, 0.02, 10.00, 0.01, STATURE_M), RearHeel.of(10.00, 0.01, 9.90, 0.02, STATURE_M));
    }

    /** By hand: of 0.30 m 94 % are real. */
    @Test
    void leavesHeelsThatAreClearlyApart() {
        assertEquals(
                9.8 + 0.1 - 0.94 * 0.15,
                RearHeel.of(9.75, 0.01, 10.05, 0.01, STATURE_M).place(),
                1e-3);
    }

    /**
     * Simulated with the spreads that are assumed. Mean of the nearer of two noisy heels by hand: 0.4 (0.054 - 0.090) = -0.0144 m, too near; the shrunk one
     * keeps no such bias.
     */
    @Test
    void liesNearerToTheTruthThanTheNearerOfTwoNoisyHeelsOnSeed7() {
        Random random = new Random(7);
        double naive = 0;
        double fitted = 0;
        int n = 4000;
        for (int i = 0; i < n; i++) {
            double apart = 0.054 * random.nextGaussian();
            double trueNearer = -Math.abs(apart) / 2;
            double noise = 0.072 * random.nextGaussian();
            double left = (apart + noise) / 2;
            naive += (Math.min(left, -left) - trueNearer) / n;
            fitted += (RearHeel.of(left, 0, -left, 0, STATURE_M).place() - trueNearer) / n;
        }
        assertEquals(-0.0144, naive, 0.002);
        assertEquals(0, fitted, 0.003);
    }
}
