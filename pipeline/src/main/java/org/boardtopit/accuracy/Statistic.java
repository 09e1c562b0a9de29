package org.boardtopit.accuracy;

import java.util.Locale;

/** A kind of number of the report, and what of it would be better. */
enum Statistic {
    N(Better.NEITHER),
    MISSING(Better.SMALLER),
    BIAS(Better.NEARER_ZERO),
    MAE(Better.SMALLER),
    P95(Better.SMALLER),
    MAX(Better.SMALLER),
    WITHIN_90_PCT(Better.NEARER_NINETY),
    WITHIN_2_SD_PCT(Better.NEITHER),
    MEDIAN_RATIO(Better.NEITHER),
    P90_RATIO(Better.NEITHER),
    MEDIAN_PCT(Better.SMALLER),
    MEAN_PCT(Better.SMALLER),
    P90_PCT(Better.SMALLER),
    MEDIAN_PX(Better.SMALLER),
    MEAN_PX(Better.SMALLER),
    P90_PX(Better.SMALLER),
    MEDIAN(Better.SMALLER),
    SHARE_PCT(Better.SMALLER),
    RIGHT(Better.LARGER),
    FOUND(Better.LARGER),
    WRONG_FOOT(Better.SMALLER),
    INVENTED(Better.SMALLER);

    private enum Better {
        SMALLER,
        LARGER,
        NEARER_ZERO,
        NEARER_NINETY,
        NEITHER
    }

    private final Better better;

    Statistic(Better better) {
        this.better = better;
    }

    /** Its name in the file of numbers. */
    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Smaller is better, whatever the kind of number; NaN when there is no better. */
    double badness(double value) {
        return switch (better) {
            case SMALLER -> value;
            case LARGER -> -value;
            case NEARER_ZERO -> Math.abs(value);
            case NEARER_NINETY -> Math.abs(value - 90);
            case NEITHER -> Double.NaN;
        };
    }
}
