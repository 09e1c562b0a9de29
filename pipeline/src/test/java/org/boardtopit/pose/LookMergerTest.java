package org.boardtopit.pose;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.models.LandmarkReading;
import org.junit.jupiter.api.Test;

/** Values from the formulas of the class, by hand (CALC); the square has a side of 256 px, so a cell of 4 and a reach of 17.9. */
class LookMergerTest {
    private static final double SIDE = 256;
    private static final int KNEE = BodyPoint.LEFT_KNEE.index() * LandmarkReading.NUMBERS_PER_POINT;

    /** A look that knows of one knee only. */
    private static float[] look(double... modes) {
        float[] numbers = new float[LandmarkReading.LENGTH];
        Arrays.fill(numbers, Float.NaN);
        for (int i = 3; i < numbers.length; i += 4) {
            numbers[i] = 0;
        }
        for (int i = 0; i < modes.length; i++) {
            numbers[KNEE + i] = (float) modes[i];
        }
        return numbers;
    }

    private static void assertKnee(float[] merged, double... expected) {
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], merged[KNEE + i], 1e-4, "number " + i);
        }
    }

    @Test
    void oneLookComesOutAsItIs() {
        float[] only = look(100, 50, 3, 0.9, 180, 50, 4, 0.05);
        assertArrayEquals(only, LookMerger.merged(List.of(only), SIDE));
    }

    @Test
    void looksThatAgreeAreNoSurerThanOneOfThem() {
        float[] one = look(100, 50, 3, 0.9);
        assertKnee(LookMerger.merged(List.of(one, one.clone()), SIDE), 100, 50, 3, 0.9);
    }

    @Test
    void looksThatDisagreeALittleMeetAndAreLessSure() {
        float[] merged = LookMerger.merged(List.of(look(100, 50, 3, 0.8), look(108, 50, 3, 0.8)), SIDE);
        // Half of 4 px squared is 8 px^2 on each axis, beside the 9 px^2 of each look.
        assertKnee(merged, 104, 50, Math.sqrt(17), 0.8);
    }

    @Test
    void theSurerLookMovesThePointMore() {
        float[] merged = LookMerger.merged(List.of(look(100, 50, 2, 1), look(110, 50, 4, 1)), SIDE);
        // Weights 1/4 and 1/16: a fifth of the way. Spread: mean of 4 + 2, 16 + 32.
        assertKnee(merged, 102, 50, Math.sqrt((6 + 48) / 2.0), 1);
    }

    @Test
    void looksFarApartBecomeTwoModesTheSurerOneFirst() {
        float[] merged = LookMerger.merged(List.of(look(60, 50, 5, 0.9), look(140, 60, 3, 0.9)), SIDE);
        assertKnee(merged, 140, 60, 3, 0.45, 60, 50, 5, 0.45);
    }

    @Test
    void aSecondModeOfOneLookCountsForTheFirstModeOfTheOther() {
        float[] merged = LookMerger.merged(
                List.of(look(60, 50, 3, 0.55, 140, 50, 3, 0.45), look(141, 50, 3, 0.9, 61, 50, 3, 0.1)), SIDE);
        assertEquals(0.675, merged[KNEE + 3], 1e-6);
        assertEquals(0.325, merged[KNEE + 7], 1e-6);
        assertEquals(140 + 2 / 3.0, merged[KNEE], 1e-4);
        assertEquals(60 + 0.1 / 0.65, merged[KNEE + 4], 1e-4);
    }

    @Test
    void aPointThatNoLookKnowsStaysUnknown() {
        float[] merged = LookMerger.merged(List.of(look(), look()), SIDE);
        for (int i = 0; i < merged.length; i++) {
            assertEquals(i % 4 == 3 ? 0 : Float.NaN, merged[i]);
        }
    }

    @Test
    void theOrderOfTheLooksDoesNotMatter() {
        for (int seed = 0; seed < 200; seed++) {
            List<float[]> looks = randomLooks(new Random(seed));
            float[] merged = LookMerger.merged(looks, SIDE);
            Collections.reverse(looks);
            assertArrayEquals(merged, LookMerger.merged(looks, SIDE), 1e-3f, "seed " + seed);
        }
    }

    @Test
    void neverHasMoreMassThanTheLooksNorASmallerSpreadThanTheSurestOfThem() {
        for (int seed = 0; seed < 200; seed++) {
            float[] merged = LookMerger.merged(randomLooks(new Random(seed)), SIDE);
            assertTrue(merged[KNEE + 3] + merged[KNEE + 7] <= 1.00001, "seed " + seed);
            for (int at = KNEE; at < KNEE + 8 && merged[at + 3] > 0; at += 4) {
                assertTrue(merged[at + 2] >= 2, "seed " + seed);
            }
        }
    }

    private static List<float[]> randomLooks(Random random) {
        List<float[]> looks = new ArrayList<>();
        int n = 2 + random.nextInt(4);
        for (int i = 0; i < n; i++) {
            double mass = 0.5 + random.nextDouble() / 2;
            looks.add(look(
                    100 + 8 * random.nextGaussian(),
                    50 + 8 * random.nextGaussian(),
                    2 + 5 * random.nextDouble(),
                    mass,
                    160 + 8 * random.nextGaussian(),
                    50 + 8 * random.nextGaussian(),
                    2 + 5 * random.nextDouble(),
                    1 - mass));
        }
        return looks;
    }
}
