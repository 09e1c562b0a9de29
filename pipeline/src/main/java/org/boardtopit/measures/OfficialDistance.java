package org.boardtopit.measures;

/** The rule book's rounding: to the centimetre below, never up. */
public final class OfficialDistance {

    /**
     * A hundredth of a micrometre: far below any tape or laser, far above the error of binary fractions. 5.97 - 0.06 is
     * 5.909999... in binary and must still read 5.91.
     */
    private static final double BINARY_ERROR_M = 1e-8;

    private OfficialDistance() {}

    /** Distance in whole centimetres below, m. NaN stays NaN. */
    public static double truncatedM(double distanceM) {
        return Double.isNaN(distanceM) ? Double.NaN : Math.floor((distanceM + BINARY_ERROR_M) * 100) / 100;
    }
}
