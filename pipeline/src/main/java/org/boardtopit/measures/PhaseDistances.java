package org.boardtopit.measures;

/**
 * The three phases of an attempt from four places on the runway axis, in metres from the take-off line, + towards the pit.
 *
 * <p>Toe to toe, as the rule measures: hop = xH - xB, step = xS - xH, jump = xM - xS. The last one ends at the mark in the
 * sand, so measuring heel to heel instead would move some 0.25 to 0.30 m between step and jump. Shares are of the effective
 * distance E = hop + step + jump, not of the official one. An attempt that was a failure has phases and shares all the same.
 *
 * @param boardToeM xB, tip of the shoe at the last contact on the board; 0 or less on a legal take-off
 * @param hopToeM xH, tip of the shoe at the hop's landing
 * @param stepToeM xS, tip of the shoe at the step's landing
 * @param markM xM, nearest mark in the sand; NaN when it is not known, which leaves jump and shares unknown
 */
public record PhaseDistances(double boardToeM, double hopToeM, double stepToeM, double markM) {

    public PhaseDistances {
        if (boardToeM >= hopToeM || hopToeM >= stepToeM || stepToeM >= markM) {
            throw new IllegalArgumentException(
                    "board, hop, step and mark lie in this order along the runway, was %s, %s, %s, %s"
                            .formatted(boardToeM, hopToeM, stepToeM, markM));
        }
    }

    public double hopM() {
        return hopToeM - boardToeM;
    }

    public double stepM() {
        return stepToeM - hopToeM;
    }

    public double jumpM() {
        return markM - stepToeM;
    }

    /** E, tip of the shoe on the board to the mark in the sand. */
    public double effectiveM() {
        return markM - boardToeM;
    }

    /** What was given away at the board, g = -xB; negative when the shoe was over the line. */
    public double toeToBoardM() {
        return -boardToeM;
    }

    public double hopPct() {
        return 100 * hopM() / effectiveM();
    }

    public double stepPct() {
        return 100 * stepM() / effectiveM();
    }

    public double jumpPct() {
        return 100 * jumpM() / effectiveM();
    }

    /** Which phase leads, by unrounded shares. Throws IllegalArgumentException when the mark is not known. */
    public Effort effort() {
        return Effort.of(hopPct(), stepPct(), jumpPct());
    }

    /**
     * The distance that a judge would read for this mark, truncated to the centimetre; NaN when the attempt was a failure,
     * which is the judge's call and is not decided from the picture.
     */
    public double officialM(boolean failure) {
        return failure ? Double.NaN : OfficialDistance.truncatedM(markM);
    }

    /** Official distance over E - g, which should be 1: a scale or a contact is wrong outside about 0.97 to 1.03. */
    public double closureRatio(double officialM) {
        return officialM / (effectiveM() - toeToBoardM());
    }

    /** Jump as if nothing had been lost at the landing. The loss runs from the heels' touchdown back to the mark, m. */
    public double jumpWithoutLossM(double landingLossM) {
        return jumpM() + landingLossM;
    }

    /**
     * Standard deviation of the lead in points, to first order, when the four places err independently.
     *
     * @param boardSdM of xB, and so on, in m
     */
    public double leadSdPct(double boardSdM, double hopSdM, double stepSdM, double markSdM) {
        double[] shares = {hopM(), stepM(), jumpM()};
        int largest = 0;
        for (int i = 1; i < 3; i++) {
            largest = shares[i] > shares[largest] ? i : largest;
        }
        int next = largest == 0 ? 1 : 0;
        for (int i = 0; i < 3; i++) {
            next = i != largest && shares[i] > shares[next] ? i : next;
        }
        double[] sds = {boardSdM, hopSdM, stepSdM, markSdM};
        double variance = 0;
        for (int mark = 0; mark < 4; mark++) {
            double slope = shareSlope(shares, largest, mark) - shareSlope(shares, next, mark);
            variance += slope * slope * sds[mark] * sds[mark];
        }
        return Math.sqrt(variance);
    }

    /** Standard deviations of the shares of hop, step and jump in points, see {@link #leadSdPct}. */
    public double[] shareSdsPct(double boardSdM, double hopSdM, double stepSdM, double markSdM) {
        double[] shares = {hopM(), stepM(), jumpM()};
        double[] sds = {boardSdM, hopSdM, stepSdM, markSdM};
        double[] result = new double[3];
        for (int phase = 0; phase < 3; phase++) {
            for (int mark = 0; mark < 4; mark++) {
                result[phase] = Math.hypot(result[phase], shareSlope(shares, phase, mark) * sds[mark]);
            }
        }
        return result;
    }

    /** Points of a phase's share per metre that one place moves: phase p runs from place p to place p + 1. */
    private double shareSlope(double[] phasesM, int phase, int mark) {
        double effective = effectiveM();
        double ofPhase = mark == phase ? -1 : mark == phase + 1 ? 1 : 0;
        double ofEffective = mark == 0 ? -1 : mark == 3 ? 1 : 0;
        return 100 * (ofPhase - ofEffective * phasesM[phase] / effective) / effective;
    }
}
