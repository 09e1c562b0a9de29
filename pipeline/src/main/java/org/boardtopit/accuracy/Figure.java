package org.boardtopit.accuracy;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A line of numbers of the report.
 *
 * @param clip name of a clip, or {@link #ALL}
 * @param name what is counted; unique within clip and section
 * @param unit of the errors; empty for counts
 * @param values by the name of the number ({@link Statistic}), NaN when unknown
 */
record Figure(String clip, Section section, String name, String unit, Map<Statistic, Double> values) {
    /** All clips together. */
    static final String ALL = "all";

    /** A kind of table. */
    enum Section {
        CONTACTS("contacts found"),
        MEASURES("errors"),
        COVERAGE("coverage"),
        POINTS("points"),
        LEGS("left and right"),
        GROUND("registration");

        private final String label;

        Section(String label) {
            this.label = label;
        }

        String label() {
            return label;
        }
    }

    Figure {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    /** NaN when there is no such number. */
    double value(Statistic statistic) {
        return values.getOrDefault(statistic, Double.NaN);
    }

    /** The same line of another run has the same key. */
    String key() {
        return clip + " / " + section.label() + " / " + name;
    }
}
