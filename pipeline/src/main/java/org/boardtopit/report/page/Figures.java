package org.boardtopit.report.page;

import org.boardtopit.report.Difference;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.wording.Words;

/** Numbers as the page shows them: with as many digits as their uncertainty leaves. */
public final class Figures {
    /** Between a number and its unit, and inside a number with its plus-minus: no line ends there. */
    static final char NO_BREAK = '\u00a0';

    private static final int MOST_DECIMALS = 3;
    private static final double NEARLY = 0.07; // 0.85 and more is nearly 1

    private final Words words;

    public Figures(Words words) {
        this.words = words;
    }

    /** Half of the 90 % interval. */
    static double half(IntervalRow row) {
        return (row.high90() - row.low90()) / 2;
    }

    /**
     * Decimals that show the first digit of the uncertainty that is not nought: 0.55 gives 1, 0.018 gives 2, 6 gives 0. What
     * is nearly a power of ten counts as one: 0.0094 gives 2.
     */
    static int decimals(double pm90) {
        if (!(pm90 > 0)) {
            return MOST_DECIMALS;
        }
        return (int) Math.max(0, Math.min(MOST_DECIMALS, Math.ceil(-Math.log10(pm90) - NEARLY)));
    }

    String value(IntervalRow row) {
        return words.number(row.value(), decimals(half(row)));
    }

    String withPlusMinus(IntervalRow row) {
        return withPlusMinus(row.value(), half(row));
    }

    public String withPlusMinus(double value, double pm90) {
        int decimals = decimals(pm90);
        return words.number(value, decimals) + NO_BREAK + "±" + NO_BREAK + words.number(pm90, decimals);
    }

    /** With one more digit, where a number and its plus-minus are of a size and it matters which is the larger. */
    public String finer(double value, double pm) {
        int decimals = Math.min(MOST_DECIMALS, decimals(pm) + 1);
        while (decimals < MOST_DECIMALS && words.number(value, decimals).equals(words.number(pm, decimals))) {
            decimals++;
        }
        return words.number(value, decimals) + NO_BREAK + "±" + NO_BREAK + words.number(pm, decimals);
    }

    String withPlusMinus(Difference difference) {
        String sign = difference.value() > 0 ? "+" : "";
        return sign + withPlusMinus(difference.value(), difference.pm90());
    }

    public String metres(double value) {
        return withUnit(words.number(value, 2), "m");
    }

    String seconds(double value) {
        return withUnit(words.number(value, 2), "s");
    }

    /** With its sign, also a +. */
    public String signed(double value, int decimals, String unit) {
        String number = words.number(value, decimals);
        boolean positive = value > 0 && number.chars().anyMatch(c -> c >= '1' && c <= '9');
        return withUnit((positive ? "+" : "") + number, unit);
    }

    public String withUnit(String number, String unit) {
        return unit.isEmpty() ? number : number + (unit.equals("°") ? "" : String.valueOf(NO_BREAK)) + unit;
    }
}
