package org.boardtopit.report.tables;

import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What a table is about and what its columns mean, for tables.json. All tables are described in columns.yaml beside this class; a
 * test holds that no column is without its description and no description without its column.
 *
 * @param key columns that no two rows share
 * @param clipsOf table whose rows the column clip refers to; null when it refers to none
 * @param columns by name
 */
record TableDescription(
        String title, String description, List<String> key, String clipsOf, Map<String, ColumnDescription> columns) {

    /**
     * What a column means.
     *
     * @param title a few words
     * @param definition formula or source, sign, instant and what it is a share of
     * @param minimum least possible value by definition, not what is plausible; null when there is none
     * @param maximum largest one; likewise
     * @param required never empty
     */
    record ColumnDescription(
            String title, String definition, BigDecimal minimum, BigDecimal maximum, boolean required) {
        ColumnDescription {
            Objects.requireNonNull(title, "title");
            Objects.requireNonNull(definition, "definition");
        }

        /** Of one of the numbers that tell of a measure over attempts; what tells of an error or a scatter is not negative. */
        private ColumnDescription of(String number) {
            boolean scatter = !number.equals("mean") && !number.equals("change");
            return new ColumnDescription(
                    title.replace(OF, NUMBERS.get(number).get(0)),
                    definition.replace(OF, NUMBERS.get(number).get(1)),
                    scatter ? BigDecimal.ZERO : minimum,
                    scatter ? null : maximum,
                    required);
        }

        private ColumnDescription at(String instant) {
            return new ColumnDescription(
                    title.replace(AT, instant), definition.replace(AT, instant), minimum, maximum, required);
        }
    }

    /** Stands for the instant in the name of a column that is there for both. */
    private static final String INSTANT = "<i>";

    /** Stands for the instant in words. */
    private static final String AT = "<at>";

    private static final Map<String, String> INSTANTS = Map.of("touchdown", "at touchdown", "toe_off", "at toe-off");

    /** Stands in names and in words for each of the numbers that tell of a measure over attempts. */
    private static final String OF = "<of>";

    /** In the title and in the definition. */
    private static final Map<String, List<String>> NUMBERS = Map.of(
            "mean", List.of("mean", "Mean over the attempts:"),
            "sd", List.of("SD", "Standard deviation between the attempts:"),
            "change", List.of("change", "Against the mean of the earlier competitions, empty without any:"),
            "change_pm", List.of("change +-", "Half the 95 % interval of the change:"));

    private static final Map<String, TableDescription> ALL = read();

    TableDescription {
        key = List.copyOf(key);
        columns = expanded(columns);
    }

    /** Of a table, by the name of its file. */
    static Optional<TableDescription> of(String fileName) {
        return Optional.ofNullable(ALL.get(fileName));
    }

    Optional<ColumnDescription> column(String name) {
        return Optional.ofNullable(columns.get(name));
    }

    private static Map<String, ColumnDescription> expanded(Map<String, ColumnDescription> columns) {
        Map<String, ColumnDescription> all = new LinkedHashMap<>();
        columns.forEach((name, description) -> {
            if (name.contains(INSTANT)) {
                INSTANTS.forEach((instant, words) -> all.put(name.replace(INSTANT, instant), description.at(words)));
            } else if (name.contains(OF)) {
                NUMBERS.keySet().forEach(number -> all.put(name.replace(OF, number), description.of(number)));
            } else {
                all.put(name, description);
            }
        });
        return Map.copyOf(all);
    }

    private static Map<String, TableDescription> read() {
        try (InputStream in = TableDescription.class.getResourceAsStream("columns.yaml")) {
            return mapper().readValue(in, new TypeReference<>() {});
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ObjectMapper mapper() {
        YAMLFactory strict = YAMLFactory.builder()
                .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .build();
        return new ObjectMapper(strict).enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
    }
}
