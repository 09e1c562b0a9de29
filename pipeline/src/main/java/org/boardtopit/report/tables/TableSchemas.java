package org.boardtopit.report.tables;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.report.tables.TableDescription.ColumnDescription;

/**
 * What the tables of a run hold, for programs: the file tables.json, in the W3C's words for tables on the web.
 *
 * <p>After the Recommendations "Metadata Vocabulary for Tabular Data" and "Model for Tabular Data and Metadata on the Web" (W3C, 17
 * December 2015): one table group with one table description per file, its dialect as the tables were written, a schema with
 * name, title, datatype and bounds of every column, its primary key, and the foreign key that leads from the clip's name to the
 * table that has every clip once. Words from a fixed list are a string with a regular expression (section 6.4 of the
 * vocabulary); yes and no are a boolean of the format {@code yes|no}. Definitions are {@code dc:description}, units
 * {@code schema:unitText} and {@code schema:unitCode}. The vocabulary has no word for a byte order mark: its encoding {@code utf-8}
 * is that of the Encoding Standard, which skips one.
 */
final class TableSchemas {
    static final String FILE_NAME = "tables.json";

    /** All tables of a run. */
    static final List<Table<?>> TABLES = List.of(
            AttemptRow.TABLE,
            PhaseRow.TABLE,
            ContactRow.TABLE,
            IntervalRow.TABLE,
            ObservationRow.TABLE,
            AthleteRow.TABLE,
            ClipRow.TABLE);

    /** All tables of a season. */
    static final List<Table<?>> SEASON_TABLES = List.of(
            AthleteRow.TABLE,
            SeasonRows.TrendRow.TABLE,
            SeasonRows.RecurringRow.TABLE,
            SeasonRows.CompetitionRow.TABLE,
            SeasonRows.Appearance.TABLE);

    private static final String CONTEXT = "http://www.w3.org/ns/csvw";
    private static final String CLIP = "clip";
    private static final String COMPARISONS = "comparisons";

    private final List<Table<?>> tables;
    private final TableFormat format;

    /**
     * For the tables of one folder.
     *
     * @param format in which they are written
     */
    TableSchemas(List<Table<?>> tables, TableFormat format) {
        this.tables = tables;
        this.format = format;
    }

    /**
     * Writes the file into the output folder; an earlier one stays untouched until the new one is complete.
     *
     * @return the file
     */
    Path write(Path folder) throws IOException {
        Path file = folder.resolve(FILE_NAME);
        JsonFile.write(file, content(comparisons(folder)));
        return file;
    }

    /** The tables of comparisons that are there, each in a file of its own. */
    private static List<Table<?>> comparisons(Path folder) throws IOException {
        Path place = folder.resolve(COMPARISONS);
        if (!Files.isDirectory(place, LinkOption.NOFOLLOW_LINKS)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(place)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".csv"))
                    .sorted()
                    .<Table<?>>map(name -> DifferenceRow.TABLE.in(COMPARISONS + "/" + name))
                    .toList();
        }
    }

    private Map<String, Object> content(List<Table<?>> comparisons) {
        Map<String, Object> group = new LinkedHashMap<>();
        group.put("@context", List.of(CONTEXT, Map.of("@language", "en")));
        group.put("dc:title", "Triple-jump attempts measured from video");
        group.put(
                "dc:description",
                "An empty cell is not measurable or not known, never zero. Times are seconds from the first frame's presentation"
                        + " time; places are metres from the take-off line, + towards the pit; shares are of the effective distance."
                        + (format.bom() ? " The files begin with a byte order mark." : ""));
        group.put("dialect", dialect());
        group.put("null", "");
        group.put(
                "tables",
                Stream.concat(tables.stream(), comparisons.stream())
                        .map(this::table)
                        .toList());
        return group;
    }

    private Map<String, Object> dialect() {
        Map<String, Object> dialect = new LinkedHashMap<>();
        dialect.put("encoding", "utf-8");
        dialect.put("delimiter", String.valueOf(format.separator()));
        dialect.put("lineTerminators", List.of("\r\n"));
        dialect.put("quoteChar", "\"");
        dialect.put("doubleQuote", true);
        dialect.put("header", true);
        dialect.put("headerRowCount", 1);
        dialect.put("skipInitialSpace", false);
        dialect.put("trim", false);
        return dialect;
    }

    private Map<String, Object> table(Table<?> table) {
        Optional<TableDescription> description = TableDescription.of(table.kind());
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("url", address(table.fileName()));
        description.ifPresent(d -> {
            content.put("dc:title", d.title());
            content.put("dc:description", d.description());
        });
        content.put("tableSchema", schema(table, description));
        return content;
    }

    /** RFC 3986: names of clips may hold what has a meaning in an address. */
    private static String address(String fileName) {
        return Arrays.stream(fileName.split("/", -1))
                .map(part -> URLEncoder.encode(part, StandardCharsets.UTF_8).replace("+", "%20"))
                .collect(Collectors.joining("/"));
    }

    private Map<String, Object> schema(Table<?> table, Optional<TableDescription> description) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put(
                "columns",
                table.columns().stream()
                        .map(column -> column(column, description.flatMap(d -> d.column(column.name()))))
                        .toList());
        description.ifPresent(d -> {
            schema.put("primaryKey", d.key());
            if (d.clipsOf() != null) {
                schema.put("foreignKeys", List.of(clipOf(d.clipsOf())));
            }
        });
        return schema;
    }

    private static Map<String, Object> clipOf(String resource) {
        Map<String, Object> reference = new LinkedHashMap<>();
        reference.put("resource", resource);
        reference.put("columnReference", CLIP);
        Map<String, Object> key = new LinkedHashMap<>();
        key.put("columnReference", CLIP);
        key.put("reference", reference);
        return key;
    }

    /** A column without a description (which a test forbids) is still a column. */
    private Map<String, Object> column(Column<?> column, Optional<ColumnDescription> description) {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("name", column.name());
        // A reader compares the header of the file with the titles, not with the name.
        content.put(
                "titles",
                description.map(d -> List.of(column.name(), d.title())).orElse(List.of(column.name())));
        description.ifPresent(d -> content.put("dc:description", d.definition()));
        content.put("datatype", datatype(column.type(), description));
        description.filter(ColumnDescription::required).ifPresent(d -> content.put("required", true));
        Unit.of(column.name()).ifPresent(unit -> {
            content.put("schema:unitText", unit.symbol());
            content.put("schema:unitCode", unit.code());
        });
        return content;
    }

    private Map<String, Object> datatype(CellType type, Optional<ColumnDescription> description) {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("base", type.base());
        if (type.words() != null) {
            content.put("format", "^(" + type.words() + ")$");
        } else if (type.equals(CellType.YES_OR_NO)) {
            content.put("format", "yes|no");
        } else if (type.equals(CellType.NUMBER)) {
            content.put("format", Map.of("decimalChar", String.valueOf(format.decimal())));
        }
        description.map(ColumnDescription::minimum).ifPresent(least -> content.put("minimum", least));
        description.map(ColumnDescription::maximum).ifPresent(largest -> content.put("maximum", largest));
        return content;
    }
}
