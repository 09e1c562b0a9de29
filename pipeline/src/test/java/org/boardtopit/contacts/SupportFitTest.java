package org.boardtopit.contacts;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.boardtopit.motion.DrawnMotion;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnClip;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SupportFitTest {
    private static final double TOUCHDOWN_S = 0.412;
    private static final double HEEL_OFF_S = 0.478;
    private static final double TOE_OFF_S = 0.541;

    private static double plus(double v) {
        return Math.max(0, v) / 0.05;
    }

    /** SYN: a foot as the model says: parabolas before and after, standing still between, velocities that break. */
    private static Point2 planted(Foot foot, int point, double t) {
        double p = plus(TOUCHDOWN_S - t);
        double h = plus(t - HEEL_OFF_S);
        double q = plus(t - TOE_OFF_S);
        if (foot == Foot.RIGHT) {
            return new Point2(8 * t, 0.4); // the other one swings by
        }
        return switch (point) {
            case FootSamples.TOE ->
                new Point2(
                        5 - 0.2 * p + 0.02 * p * p + 0.02 * q + 0.05 * q * q,
                        0.01 + 0.12 * p + 0.02 * p * p + 0.03 * q + 0.2 * q * q);
            case FootSamples.HEEL ->
                new Point2(
                        4.73 - 0.2 * p + 0.02 * p * p + 0.03 * h + 0.03 * h * h + 0.05 * q * q,
                        0.12 * p + 0.02 * p * p + 0.05 * h + 0.05 * h * h + 0.05 * q * q);
            default ->
                new Point2(
                        4.80 - 0.2 * p + 0.02 * p * p + 0.03 * h + 0.03 * h * h + 0.05 * q * q,
                        0.07 + 0.12 * p + 0.02 * p * p + 0.05 * h + 0.05 * h * h + 0.05 * q * q);
        };
    }

    private static MotionTrack motion(double fps, double sdM, Random random) {
        return DrawnMotion.of(fps, 1.0, 1.8, sdM, random, (point, t) -> {
            Foot foot = point.isLeft() ? Foot.LEFT : Foot.RIGHT;
            if (point == foot.toe()) {
                return planted(foot, FootSamples.TOE, t);
            }
            return planted(foot, point == foot.heel() ? FootSamples.HEEL : FootSamples.ANKLE, t);
        });
    }

    @ParameterizedTest(name = "{0} frames a second, guesses off by {1} ms")
    @CsvSource({"60, 0", "60, 35", "60, -35", "120, 30", "240, -30", "50, 20"})
    void findsTheInstantsOfAFootThatMovesAsTheModelSays(double fps, double offMs) {
        MotionTrack motion = motion(fps, 0, new Random(1));
        SupportFit.Timed timed = new SupportFit(0.135, 0.03)
                .fit(motion, Foot.LEFT, TOUCHDOWN_S + offMs / 1000, TOE_OFF_S - offMs / 1000, 0)
                .orElseThrow();
        assertEquals(TOUCHDOWN_S, timed.touchdownS(), 0.003);
        assertEquals(TOE_OFF_S, timed.toeOffS(), 0.006);
        assertEquals(5, timed.toeAlong(), 0.005);
        assertEquals(0.01, timed.toeHeight(), 0.01);
    }

    @ParameterizedTest(name = "{0} frames a second")
    @ValueSource(doubles = {60, 120})
    void twoStandardDeviationsCoverTheInstantsInMostDraws(double fps) {
        int draws = 120;
        int touchdowns = 0;
        int toeOffs = 0;
        for (int seed = 0; seed < draws; seed++) {
            Random random = new Random(seed);
            double jitter = 0.02 * random.nextGaussian();
            SupportFit.Timed timed = new SupportFit(0.135, 0.03)
                    .fit(motion(fps, 0.012, random), Foot.LEFT, TOUCHDOWN_S + jitter, TOE_OFF_S - jitter, 0)
                    .orElseThrow();
            touchdowns += Math.abs(timed.touchdownS() - TOUCHDOWN_S) <= 2 * timed.touchdownSdS() ? 1 : 0;
            toeOffs += Math.abs(timed.toeOffS() - TOE_OFF_S) <= 2 * timed.toeOffSdS() ? 1 : 0;
        }
        assertTrue(touchdowns >= 0.85 * draws, "touchdown covered in " + touchdowns + " of " + draws);
        assertTrue(toeOffs >= 0.85 * draws, "toe-off covered in " + toeOffs + " of " + draws);
    }

    /** SYN. The heel of a foot that turns about its toe rises further than the ankle; these were 35 to 72 ms late. */
    @ParameterizedTest(name = "seed {0}, {1}")
    @CsvSource({
        "19, HOP_LANDING",
        "27, HOP_LANDING",
        "45, STEP_LANDING",
        "64, STEP_LANDING",
        "81, BOARD",
        "83, BOARD",
        "91, BOARD"
    })
    void aFootThatTurnsAboutItsToeDoesNotDelayTouchdown(long seed, ContactKind kind) {
        DrawnAttempt attempt = DrawnAttempt.of(DrawnClip.Setup.ordinary(seed));
        assertEquals(0, attempt.touchdownErrorS(kind), 0.012);
    }

    @Test
    void hasNothingToSayOfAFootThatWasHardlySeen() {
        MotionTrack motion = DrawnMotion.of(60, 1.0, 1.8, 0, new Random(1), (point, t) -> {
            return t > 0.5 ? new Point2(5, 0) : Point2.UNKNOWN;
        });
        assertTrue(new SupportFit(0.135, 0.03)
                .fit(motion, Foot.LEFT, 0.36, 0.49, 0)
                .isEmpty());
    }
}
