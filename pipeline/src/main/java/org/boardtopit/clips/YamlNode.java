package org.boardtopit.clips;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A piece of a YAML file that knows where it stands: line and column, both counted from 1. */
sealed interface YamlNode {

    int line();

    int column();

    /** What kind of value a scalar is by YAML's rules: text in quotes is always TEXT. */
    enum Kind {
        TEXT,
        NUMBER,
        TRUE_OR_FALSE,
        NOTHING
    }

    /**
     * A single value.
     *
     * @param text as written in the file, so that a bib 087 keeps its zero
     */
    record Scalar(int line, int column, Kind kind, String text) implements YamlNode {}

    record Sequence(int line, int column, List<YamlNode> items) implements YamlNode {
        public Sequence {
            items = List.copyOf(items);
        }
    }

    record Mapping(int line, int column, Map<String, Entry> entries) implements YamlNode {
        public Mapping {
            entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
        }
    }

    /** A value with the place of its key. */
    record Entry(int line, int column, YamlNode value) {}
}
