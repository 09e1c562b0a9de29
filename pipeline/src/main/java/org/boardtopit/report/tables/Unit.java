package org.boardtopit.report.tables;

import java.util.Arrays;
import java.util.Optional;

/**
 * The unit of a column, which the end of its name tells.
 *
 * <p>Codes are those of UN/CEFACT Recommendation 20, which schema.org's {@code unitCode} asks for: a prefix that the vocabulary
 * for tabular data already knows, so that a reader needs no further vocabulary.
 */
public enum Unit {
    SECOND("SEC", "s", "_s"),
    METRE("MTR", "m", "_m"),
    METRE_PER_SECOND("MTS", "m/s", "_ms"),
    DEGREE("DD", "deg", "_deg"),
    PERCENT("P1", "%", "_pct"),
    PIXEL("E37", "px", "_px"),
    HERTZ("HTZ", "1/s", "fps"),
    ONE("C62", "1", "_ratio");

    /** Half an interval has the unit of its number; where the number's unit is the last word, this comes behind it. */
    private static final String PLUS_MINUS = "_pm";

    private static final String SECONDS_IN_FULL = "seconds";

    private final String code;
    private final String symbol;
    private final String ending;

    Unit(String code, String symbol, String ending) {
        this.code = code;
        this.symbol = symbol;
        this.ending = ending;
    }

    /** Of UN/CEFACT Recommendation 20. */
    String code() {
        return code;
    }

    public String symbol() {
        return symbol;
    }

    /** Of a column; empty when its name ends with no unit. */
    public static Optional<Unit> of(String column) {
        if (column.equals(SECONDS_IN_FULL)) {
            return Optional.of(SECOND);
        }
        String name = column.endsWith(PLUS_MINUS) ? column.substring(0, column.length() - PLUS_MINUS.length()) : column;
        return Arrays.stream(values()).filter(u -> name.endsWith(u.ending)).findFirst();
    }
}
