package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhaseDistancesTest {

    // MEM-H / MEM-M: phase distances of four of the longest jumps ever; they add up to the official distance, so the
    // take-off
    // line stands for the toe. Shares and classes CALC.
    @ParameterizedTest
    @CsvSource({
        "6.05, 5.22, 7.02, 18.29, 33.1, 28.5, 38.4, JUMP_DOMINATED, 5.3",
        "6.32, 4.96, 6.69, 17.97, 35.2, 27.6, 37.2, JUMP_DOMINATED, 2.06",
        "6.08, 5.37, 6.44, 17.89, 34.0, 30.0, 36.0, JUMP_DOMINATED, 2.012",
        "7.02, 5.02, 6.05, 18.09, 38.8, 27.8, 33.4, HOP_DOMINATED, 5.4"
    })
    void classifiesKnownJumps(
            double hop,
            double step,
            double jump,
            double sum,
            double hopPct,
            double stepPct,
            double jumpPct,
            EffortClass kind,
            double lead) {
        PhaseDistances phases = new PhaseDistances(0, hop, hop + step, hop + step + jump);

        assertEquals(sum, phases.officialM(false), 1e-9);
        assertEquals(hopPct, phases.hopPct(), 0.051);
        assertEquals(stepPct, phases.stepPct(), 0.051);
        assertEquals(jumpPct, phases.jumpPct(), 0.051);
        assertEquals(kind, phases.effort().kind());
        assertEquals(lead, phases.effort().leadPct(), 0.051);
    }

    // CALC: the third jump leads by 2.012 points unrounded.
    @Test
    void leadsByMoreThanTheRoundedSharesSay() {
        double lead = new PhaseDistances(0, 6.08, 6.08 + 5.37, 17.89).effort().leadPct();

        assertEquals(100 * (6.44 - 6.08) / 17.89, lead, 1e-9);
        assertEquals(2.012, lead, 5e-4);
    }

    @Test
    void keepsPhasesOfAFailureButNoOfficialDistance() {
        PhaseDistances overTheLine = new PhaseDistances(0.03, 6.03, 10.53, 15.03);

        assertEquals(Double.NaN, overTheLine.officialM(true));
        assertEquals(40, overTheLine.hopPct(), 1e-9);
        assertEquals(-0.03, overTheLine.toeToBoardM(), 1e-12);
    }

    @Test
    void closesOnTheOfficialDistance() {
        PhaseDistances phases = new PhaseDistances(-0.10, 5.00, 9.00, 14.00);

        assertEquals(1, phases.closureRatio(14.00), 1e-12);
        assertEquals(0.98, phases.closureRatio(13.72), 1e-12);
    }

    @Test
    void leavesJumpAndSharesUnknownWithoutAMark() {
        PhaseDistances noMark = new PhaseDistances(-0.10, 5.00, 9.00, Double.NaN);

        assertEquals(5.10, noMark.hopM(), 1e-12);
        assertEquals(4.00, noMark.stepM(), 1e-12);
        assertEquals(Double.NaN, noMark.jumpM());
        assertEquals(Double.NaN, noMark.hopPct());
        assertEquals(Double.NaN, noMark.officialM(false));
        assertThrows(IllegalArgumentException.class, noMark::effort);
    }

    /** SYN: first attempt of the worked ones; against 40000 draws of independent noise on the four places. */
    @Test
    void tellsTheSpreadOfSharesAndLead() {
        PhaseDistances phases = new PhaseDistances(-0.06, 5.91, 10.64, 16.49);
        Random random = new Random(31);
        int draws = 40_000;
        double squaresHop = 0;
        double squaresStep = 0;
        double squaresJump = 0;
        double squaresLead = 0;
        for (int i = 0; i < draws; i++) {
            PhaseDistances drawn = new PhaseDistances(
                    -0.06 + 0.02 * random.nextGaussian(),
                    5.91 + 0.03 * random.nextGaussian(),
                    10.64 + 0.04 * random.nextGaussian(),
                    16.49 + 0.05 * random.nextGaussian());
            squaresHop += square(drawn.hopPct() - phases.hopPct());
            squaresStep += square(drawn.stepPct() - phases.stepPct());
            squaresJump += square(drawn.jumpPct() - phases.jumpPct());
            // The hop's lead over the jump with its sign, as noise may turn it.
            squaresLead += square(drawn.hopPct() - drawn.jumpPct() - phases.hopPct() + phases.jumpPct());
        }
        double[] told = phases.shareSdsPct(0.02, 0.03, 0.04, 0.05);
        double toldLead = phases.leadSdPct(0.02, 0.03, 0.04, 0.05);

        assertEquals(told[0], Math.sqrt(squaresHop / draws), 0.02 * told[0]);
        assertEquals(told[1], Math.sqrt(squaresStep / draws), 0.02 * told[1]);
        assertEquals(told[2], Math.sqrt(squaresJump / draws), 0.02 * told[2]);
        assertEquals(toldLead, Math.sqrt(squaresLead / draws), 0.02 * toldLead);
    }

    // CALC: phases good to 6.5 cm at 15 m leave some .4 point on a share and .6 on the lead.
    @Test
    void leavesTheBudgetedUncertaintyOnShareAndLead() {
        PhaseDistances phases = new PhaseDistances(0, 5.4, 9.7, 15.0);
        double place = 0.065 / Math.sqrt(2);

        assertEquals(0.4, phases.shareSdsPct(place, place, place, place)[0], 0.05);
        assertEquals(0.6, phases.leadSdPct(place, place, place, place), 0.05);
    }

    private static double square(double x) {
        return x * x;
    }

    @Test
    void refusesPlacesOutOfOrder() {
        assertThrows(IllegalArgumentException.class, () -> new PhaseDistances(0, 5, 4, 14));
        assertThrows(IllegalArgumentException.class, () -> new PhaseDistances(0, 0, 4, 14));
        assertThrows(IllegalArgumentException.class, () -> new PhaseDistances(0, 5, 9, 8));
    }
}
