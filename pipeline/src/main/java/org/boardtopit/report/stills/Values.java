package org.boardtopit.report.stills;

import org.boardtopit.measures.Reading;
import org.boardtopit.wording.Words;

/**
 * Values as pictures show them: as many digits as their uncertainty leaves, and after the plus-minus half of the 90 % interval of
 * intervals.csv.
 */
final class Values {
    /** Half of a 90 % interval of a Gaussian in standard deviations. */
    private static final double HALF_90 = 1.645;

    private final Words words;

    Values(Words words) {
        this.words = words;
    }

    /** Such as {@code 152° ±4}. */
    String degrees(Reading reading, boolean signed) {
        double half = HALF_90 * reading.sd();
        int decimals = half < 0.95 ? 1 : 0;
        String value = words.number(reading.value(), decimals);
        String sign = signed && reading.value() > 0 && !isZero(value) ? "+" : "";
        return sign + value + "\u00b0" + plusMinus(half, decimals);
    }

    /** Such as {@code 0.142 s ±0.008}. */
    String seconds(Reading reading) {
        double half = HALF_90 * reading.sd();
        int decimals = half < 0.0095 ? 3 : 2;
        return words.number(reading.value(), decimals) + " s" + plusMinus(half, decimals);
    }

    /** Such as {@code 5.21 m ±0.03}. */
    String metres(Reading reading) {
        return words.number(reading.value(), 2) + " m" + plusMinus(HALF_90 * reading.sd(), 2);
    }

    /** Such as {@code 35.1 % ±0.2}. */
    String percent(Reading reading) {
        double half = HALF_90 * reading.sd();
        int decimals = half < 0.95 ? 1 : 0;
        return words.number(reading.value(), decimals) + " %" + plusMinus(half, decimals);
    }

    /** Never less than one of the last digit that is shown: an uncertainty of nothing is none. */
    private String plusMinus(double half, int decimals) {
        if (!Double.isFinite(half)) {
            return "";
        }
        double unit = Math.pow(10, -decimals);
        return " \u00b1" + words.number(Math.max(half, unit), decimals);
    }

    private static boolean isZero(String number) {
        return number.chars().noneMatch(c -> c >= '1' && c <= '9');
    }
}
