package org.boardtopit.observations;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.boardtopit.clips.Label;

/** Unit of a measure, told by the end of its column's name. */
public enum MeasureUnit implements Label {
    DEGREES("_deg", "deg", 1),
    PER_CENT("_pct", "%", 1),
    METRES_A_SECOND("_ms", "m/s", 2),
    METRES("_m", "m", 2),
    SECONDS("_s", "s", 3),
    RATIO("_ratio", "", 3);

    private final String suffix;
    private final String label;
    private final int decimals;

    MeasureUnit(String suffix, String label, int decimals) {
        this.suffix = suffix;
        this.label = label;
        this.decimals = decimals;
    }

    /** By the name of the column. */
    static MeasureUnit of(String column) {
        for (MeasureUnit unit : values()) {
            if (column.endsWith(unit.suffix)) {
                return unit;
            }
        }
        throw new IllegalArgumentException("the name of a measure ends with its unit, was " + column);
    }

    @Override
    public String label() {
        return label;
    }

    /** Decimals that mean something. */
    public int decimals() {
        return decimals;
    }

    /** A number without its unit, as in the tables. */
    String number(double value) {
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }
}
