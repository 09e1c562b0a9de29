package org.boardtopit.report.tables;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Validates the tables of a folder against its tables.json by the rules of the W3C Recommendations "Metadata Vocabulary for
 * Tabular Data" and "Model for Tabular Data and Metadata on the Web" (17 December 2015), knowing nothing of the program that wrote
 * them. Sections in brackets are those of the vocabulary.
 *
 * <p>What the tables of a run do not need (virtual columns, lists in cells, dates, number patterns, several header rows) is
 * reported as a problem rather than passed over.
 */
public final class CsvwValidator {
    private static final Set<String> INHERITED = Set.of("null", "required", "datatype");
    private static final Set<String> GROUP = Set.of("@context", "dialect", "tables");
    private static final Set<String> TABLE = Set.of("url", "tableSchema");
    private static final Set<String> SCHEMA = Set.of("columns", "primaryKey", "foreignKeys");
    private static final Set<String> COLUMN = Set.of("name", "titles");
    private static final Set<String> DATATYPE = Set.of("base", "format", "minimum", "maximum");
    private static final Set<String> DIALECT = Set.of(
            "encoding",
            "delimiter",
            "lineTerminators",
            "quoteChar",
            "doubleQuote",
            "header",
            "headerRowCount",
            "skipInitialSpace",
            "trim");
    private static final Set<String> NUMERIC = Set.of("integer", "decimal", "number");
    private static final Set<String> BASES = Set.of("string", "boolean", "integer", "decimal", "number", "date");
    /** Prefixes of common properties that the context knows (section 5.8 with the RDFa initial context). */
    private static final Pattern COMMON = Pattern.compile("(dc|schema):[A-Za-z]+");

    private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9_]*");

    private final Path folder;
    private final List<String> problems = new ArrayList<>();
    private final Map<String, JsonNode> schemas = new LinkedHashMap<>();
    private final Map<String, List<List<String>>> rows = new LinkedHashMap<>();

    private CsvwValidator(Path folder) {
        this.folder = folder;
    }

    /** What is wrong with the tables of the folder or with their description; empty when nothing is. */
    public static List<String> problems(Path folder) throws IOException {
        CsvwValidator validator = new CsvwValidator(folder);
        validator.group(
                new ObjectMapper().readTree(folder.resolve("tables.json").toFile()));
        return validator.problems;
    }

    private void problem(String where, String what) {
        problems.add(where + ": " + what);
    }

    private void group(JsonNode group) throws IOException {
        if (!"http://www.w3.org/ns/csvw".equals(group.at("/@context/0").asText())) {
            problem("tables.json", "@context must begin with the vocabulary's address");
        }
        properties("tables.json", group, GROUP);
        properties("dialect", group.path("dialect"), DIALECT);
        for (JsonNode table : group.path("tables")) {
            schema(table);
        }
        for (JsonNode table : group.path("tables")) {
            references(table.path("url").asText());
            read(table.path("url").asText(), group.path("dialect"));
        }
        schemas.keySet().forEach(this::cells);
        schemas.keySet().forEach(this::keys);
        try (Stream<Path> files = Files.list(folder)) {
            files.map(f -> f.getFileName().toString())
                    .filter(f -> f.endsWith(".csv") && !schemas.containsKey(f))
                    .forEach(f -> problem(f, "is not described"));
        }
    }

    /** Only properties of this kind of object, inherited or common ones (section 5). */
    private void properties(String where, JsonNode object, Set<String> own) {
        object.fieldNames().forEachRemaining(name -> {
            if (!own.contains(name)
                    && !INHERITED.contains(name)
                    && !COMMON.matcher(name).matches()) {
                problem(where, "unknown property " + name);
            }
        });
    }

    private void schema(JsonNode table) {
        String url = table.path("url").asText("");
        properties(url, table, TABLE);
        JsonNode schema = table.path("tableSchema");
        properties(url, schema, SCHEMA);
        if (url.isEmpty() || schemas.put(url, schema) != null) {
            problem("tables.json", "every table needs a url of its own");
        }
        Set<String> names = new HashSet<>();
        for (JsonNode column : schema.path("columns")) {
            String name = column.path("name").asText("");
            String where = url + " " + name;
            properties(where, column, COLUMN);
            properties(where, column.path("datatype"), DATATYPE);
            if (!NAME.matcher(name).matches() || !names.add(name)) {
                problem(where, "a name is letters, digits and _, and there once");
            }
            String base = column.path("datatype").path("base").asText();
            if (!BASES.contains(base)) {
                problem(where, "datatype " + base + " is not checked");
            }
            if (!NUMERIC.contains(base)
                    && (column.path("datatype").has("minimum")
                            || column.path("datatype").has("maximum"))) {
                problem(where, "only numbers have a minimum and a maximum");
            }
        }
    }

    /** Columns that keys name must be there (section 5.5.2.2). */
    private void references(String url) {
        JsonNode schema = schemas.get(url);
        for (String column : strings(schema.path("primaryKey"))) {
            index(url, column);
        }
        for (JsonNode key : schema.path("foreignKeys")) {
            strings(key.path("columnReference")).forEach(column -> index(url, column));
            String resource = key.path("reference").path("resource").asText();
            if (!schemas.containsKey(resource)) {
                problem(url, "refers to " + resource + ", which is not described");
            } else {
                strings(key.path("reference").path("columnReference")).forEach(column -> index(resource, column));
            }
        }
    }

    private static List<String> strings(JsonNode oneOrMore) {
        if (oneOrMore.isTextual()) {
            return List.of(oneOrMore.asText());
        }
        List<String> all = new ArrayList<>();
        oneOrMore.forEach(one -> all.add(one.asText()));
        return all;
    }

    /** Place of a column; -1, and a problem, when there is none. */
    private int index(String url, String column) {
        JsonNode columns = schemas.get(url).path("columns");
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).path("name").asText().equals(column)) {
                return i;
            }
        }
        problem(url, "has no column " + column);
        return -1;
    }

    /** Reads the rows and compares the header with the titles of the columns (section 5.6, and 6.2 of the model). */
    private void read(String url, JsonNode dialect) throws IOException {
        List<List<String>> all;
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(Files.readAllBytes(folder.resolve(url))))
                    .toString();
            // "UTF-8 decode" of the Encoding Standard takes a byte order mark away.
            text = text.startsWith("\uFEFF") ? text.substring(1) : text;
            all = Rfc4180.read(text, dialect.path("delimiter").asText(",").charAt(0));
        } catch (CharacterCodingException | IllegalArgumentException e) {
            problem(url, "cannot be read: " + e.getMessage());
            return;
        }
        JsonNode columns = schemas.get(url).path("columns");
        List<String> header = all.isEmpty() ? List.of() : all.get(0);
        if (header.size() != columns.size()) {
            problem(url, "the header has " + header.size() + " columns, described are " + columns.size());
            return;
        }
        for (int i = 0; i < columns.size(); i++) {
            if (!strings(columns.get(i).path("titles")).contains(header.get(i))) {
                problem(
                        url,
                        "column " + (i + 1) + " is " + header.get(i) + ", described is "
                                + columns.get(i).path("name").asText());
            }
        }
        List<List<String>> below = all.subList(1, all.size());
        for (int i = 0; i < below.size(); i++) {
            if (below.get(i).size() != columns.size()) {
                problem(url + " row " + (i + 1), "has " + below.get(i).size() + " cells");
                return;
            }
        }
        rows.put(url, below);
    }

    private void cells(String url) {
        JsonNode columns = schemas.get(url).path("columns");
        List<List<String>> table = rows.getOrDefault(url, List.of());
        for (int r = 0; r < table.size(); r++) {
            for (int c = 0; c < columns.size(); c++) {
                String where = url + " row " + (r + 1) + " "
                        + columns.get(c).path("name").asText();
                cell(where, columns.get(c), table.get(r).get(c));
            }
        }
    }

    /** Sections 6.4 of the model and 5.11 of the vocabulary. */
    private void cell(String where, JsonNode column, String text) {
        if (text.isEmpty()) {
            if (column.path("required").asBoolean()) {
                problem(where, "is empty and required");
            }
            return;
        }
        JsonNode type = column.path("datatype");
        switch (type.path("base").asText()) {
            case "string" -> {
                if (type.has("format")
                        && !Pattern.compile(type.path("format").asText())
                                .matcher(text)
                                .find()) {
                    problem(
                            where,
                            "'" + text + "' is none of " + type.path("format").asText());
                }
            }
            case "boolean" -> {
                if (!List.of(type.path("format").asText("true|false").split("\\|", -1))
                        .contains(text)) {
                    problem(where, "'" + text + "' is no truth");
                }
            }
            case "date" -> {
                // Without a format a date is that of XML Schema (section 6.4.4 of the model).
                if (!text.matches("[0-9]{4}-[0-9]{2}-[0-9]{2}")) {
                    problem(where, "'" + text + "' is no day");
                }
            }
            default -> number(where, type, text);
        }
    }

    private void number(String where, JsonNode type, String text) {
        String point = type.path("format").path("decimalChar").asText(".");
        String fraction = type.path("base").asText().equals("integer") ? "" : "(" + Pattern.quote(point) + "[0-9]+)?";
        if (!text.matches("[+-]?[0-9]+" + fraction)) {
            problem(where, "'" + text + "' is no " + type.path("base").asText());
            return;
        }
        BigDecimal value = new BigDecimal(text.replace(point, "."));
        if (type.has("minimum") && value.compareTo(type.path("minimum").decimalValue()) < 0) {
            problem(where, text + " is less than " + type.path("minimum"));
        }
        if (type.has("maximum") && value.compareTo(type.path("maximum").decimalValue()) > 0) {
            problem(where, text + " is more than " + type.path("maximum"));
        }
    }

    /** No two rows share a primary key, and a foreign key finds exactly one row (section 4.6 of the model). */
    private void keys(String url) {
        JsonNode schema = schemas.get(url);
        List<List<String>> primary = keyCells(url, schema.path("primaryKey"));
        Set<List<String>> seen = new HashSet<>();
        for (int r = 0; r < primary.size() && schema.has("primaryKey"); r++) {
            if (!seen.add(primary.get(r))) {
                problem(url + " row " + (r + 1), "the key " + primary.get(r) + " is there twice");
            }
        }
        for (JsonNode key : schema.path("foreignKeys")) {
            String resource = key.path("reference").path("resource").asText();
            if (!schemas.containsKey(resource)) {
                continue;
            }
            List<List<String>> there = keyCells(resource, key.path("reference").path("columnReference"));
            for (List<String> cells : keyCells(url, key.path("columnReference"))) {
                if (there.stream().filter(cells::equals).count() != 1) {
                    problem(url, cells + " is not in " + resource + " once");
                }
            }
        }
    }

    private List<List<String>> keyCells(String url, JsonNode columns) {
        List<Integer> places = strings(columns).stream()
                .map(c -> index(url, c))
                .filter(i -> i >= 0)
                .toList();
        return rows.getOrDefault(url, List.of()).stream()
                .map(row -> places.stream().map(row::get).toList())
                .toList();
    }
}
