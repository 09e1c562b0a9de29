package org.boardtopit.report.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A column is described in columns.yaml and in docs/measures.md, or the build stops here. */
class TableDescriptionTest {
    private static final Path MEASURES = Path.of("..", "docs", "measures.md");
    private static final Path SEASON = Path.of("..", "docs", "season.md");

    static List<Table<?>> tables() {
        List<Table<?>> all = new ArrayList<>(TableSchemas.TABLES);
        all.add(DifferenceRow.TABLE);
        TableSchemas.SEASON_TABLES.stream()
                .filter(table -> !all.contains(table))
                .forEach(all::add);
        return all;
    }

    @ParameterizedTest
    @MethodSource("tables")
    void everyColumnIsDescribedAndEveryDescriptionHasItsColumn(Table<?> table) {
        TableDescription description = TableDescription.of(table.fileName()).orElseThrow();
        assertEquals(
                new TreeSet<>(table.header()),
                new TreeSet<>(description.columns().keySet()),
                "columns.yaml, " + table.fileName());
    }

    @ParameterizedTest
    @MethodSource("tables")
    void titlesAreShortAndThereOnceDefinitionsAreSentences(Table<?> table) {
        TableDescription description = TableDescription.of(table.fileName()).orElseThrow();
        Set<String> titles = new TreeSet<>();
        description.columns().forEach((name, column) -> {
            assertTrue(titles.add(column.title()), name + ": the title is there twice");
            assertTrue(column.title().length() <= 40, name + ": " + column.title());
            assertTrue(column.definition().matches("(?s)[^<>]{10,}\\."), name + ": " + column.definition());
        });
    }

    @ParameterizedTest
    @MethodSource("tables")
    void everyMeasuredNumberHasAUnitInItsName(Table<?> table) {
        // A confidence is no quantity; the numbers of intervals.csv, observations.csv and comparisons have the unit of
        // their
        // measure.
        Set<String> without = Set.of(
                "confidence",
                "mean_confidence",
                "value",
                "value_a",
                "value_b",
                "difference",
                "difference_pm",
                "low_90",
                "high_90",
                "guide_low",
                "guide_high",
                "severity",
                "mean",
                "sd",
                "pm",
                "per_30_days");
        for (Column<?> column : table.columns()) {
            if (column.type().equals(CellType.NUMBER) && !without.contains(column.name())) {
                assertTrue(Unit.of(column.name()).isPresent(), column.name());
            }
        }
    }

    /** Codes and symbols of UN/CEFACT Recommendation 20, annex III (SEC, MTR, MTS, HTZ seen in its excerpts; the rest MEM-H). */
    @ParameterizedTest
    @CsvSource({
        "touchdown_pm_s, SEC, s",
        "seconds, SEC, s",
        "vx_takeoff_ms, MTS, m/s",
        "hop_m, MTR, m",
        "distance_pm_m, MTR, m",
        "lead_pct_pm, P1, %",
        "free_thigh_hold_pct, P1, %",
        "knee_toe_off_deg, DD, deg",
        "width_px, E37, px",
        "fps, HTZ, 1/s",
        "closure_ratio, C62, 1",
        "last_stride_ratio, C62, 1"
    })
    void theEndOfAColumnsNameTellsItsUnit(String column, String code, String symbol) {
        assertEquals(code, Unit.of(column).orElseThrow().code());
        assertEquals(symbol, Unit.of(column).orElseThrow().symbol());
    }

    @ParameterizedTest
    @CsvSource({"clip", "contact", "touchdown_frame", "warnings", "confidence", "frames"})
    void whatIsNoQuantityHasNoUnit(String column) {
        assertTrue(Unit.of(column).isEmpty());
    }

    @ParameterizedTest
    @MethodSource("tables")
    void everyColumnIsDefinedInTheMeasuresDocumentAndNoOtherIs(Table<?> table) throws IOException {
        Set<String> defined = definedColumns(section(table.fileName()));
        Set<String> header = new TreeSet<>(table.header());
        assertEquals(header, defined, "docs/measures.md, section " + table.fileName());
    }

    /** From the table's heading to the next one of the same rank. */
    private static String section(String fileName) throws IOException {
        return Pattern.compile("^## ", Pattern.MULTILINE)
                .splitAsStream(Files.readString(MEASURES) + "\n" + Files.readString(SEASON))
                .filter(s -> s.startsWith(fileName))
                .collect(Collectors.joining());
    }

    /** The names in the first cells of the section's tables, with both instants for {@code <i>}. */
    private static Set<String> definedColumns(String section) {
        Pattern name = Pattern.compile("`([a-z0-9_<>]+)`");
        return section.lines()
                .filter(line -> line.startsWith("| `"))
                .map(line -> line.split("\\|", -1)[1])
                .flatMap(cell -> name.matcher(cell).results().map(m -> m.group(1)))
                .flatMap(column -> column.contains("<of>")
                        ? Stream.of("mean", "sd", "change", "change_pm").map(of -> column.replace("<of>", of))
                        : Stream.of(column))
                .flatMap(column -> column.contains("<i>")
                        ? List.of(column.replace("<i>", "touchdown"), column.replace("<i>", "toe_off")).stream()
                        : List.of(column).stream())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void bothInstantsAreDescribedInTheirOwnWords() {
        TableDescription contacts = TableDescription.of("contacts.csv").orElseThrow();
        assertEquals(
                "Knee at touchdown",
                contacts.column("knee_touchdown_deg").orElseThrow().title());
        assertEquals(
                "Inner angle hip - knee - ankle of the supporting leg at toe-off, 180 straight.",
                contacts.column("knee_toe_off_deg").orElseThrow().definition());
    }
}
