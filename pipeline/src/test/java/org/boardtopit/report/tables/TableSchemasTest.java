package org.boardtopit.report.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TableSchemasTest {
    @TempDir
    private Path folder;

    private JsonNode written(TableFormat format) throws IOException {
        return new ObjectMapper()
                .readTree(new TableWriter(folder, format).describe().toFile());
    }

    private static JsonNode column(JsonNode group, String table, String name) {
        for (JsonNode one : group.path("tables")) {
            for (JsonNode column : one.at("/tableSchema/columns")) {
                if (one.path("url").asText().equals(table)
                        && column.path("name").asText().equals(name)) {
                    return column;
                }
            }
        }
        throw new IllegalStateException(table + " " + name);
    }

    @Test
    void aMeasuredNumberHasItsUnitItsBoundsAndItsDecimalSign() throws IOException {
        JsonNode column = column(written(new TableFormat(';', ',')), "phases.csv", "free_thigh_hold_pct");
        assertEquals(new ObjectMapper().readTree("""
                                {
                                  "name": "free_thigh_hold_pct",
                                  "titles": ["free_thigh_hold_pct", "Hold of the free thigh"],
                                  "dc:description": "Time in which the free thigh is within 15 degrees of its largest angle, in flight, % of the flight time.",
                                  "datatype": {"base": "decimal", "format": {"decimalChar": ","}, "minimum": 0, "maximum": 100},
                                  "schema:unitText": "%",
                                  "schema:unitCode": "P1"
                                }"""), column);
    }

    @Test
    void wordsAreARegularExpressionAndYesOrNoIsATruth() throws IOException {
        JsonNode group = written(TableFormat.DEFAULT);
        assertEquals(
                "^(L|R|both)$",
                column(group, "contacts.csv", "foot").at("/datatype/format").asText());
        assertEquals(
                "^(o|x|-|r)$",
                column(group, "attempts.csv", "result").at("/datatype/format").asText());
        assertEquals(
                "{\"base\":\"boolean\",\"format\":\"yes|no\"}",
                column(group, "contacts.csv", "corrected").path("datatype").toString());
    }

    @Test
    void keysTellWhichRowsBelongTogether() throws IOException {
        JsonNode contacts = written(TableFormat.DEFAULT).at("/tables/2");
        assertEquals("contacts.csv", contacts.path("url").asText());
        assertEquals(
                "[\"clip\",\"contact\"]", contacts.at("/tableSchema/primaryKey").toString());
        assertEquals(
                "[{\"columnReference\":\"clip\",\"reference\":{\"resource\":\"attempts.csv\",\"columnReference\":\"clip\"}}]",
                contacts.at("/tableSchema/foreignKeys").toString());
    }

    @Test
    void theDialectIsThatOfTheTables() throws IOException {
        JsonNode dialect = written(new TableFormat('\t', ',')).path("dialect");
        assertEquals("\t", dialect.path("delimiter").asText());
        assertEquals("[\"\\r\\n\"]", dialect.path("lineTerminators").toString());
        assertFalse(dialect.path("trim").asBoolean(true));
    }

    @Test
    void aByteOrderMarkIsToldAndTheFormCanBeReadBack() throws IOException {
        for (char separator : new char[] {',', ';', '\t'}) {
            for (char decimal : separator == ',' ? new char[] {'.'} : new char[] {'.', ','}) {
                TableFormat format = new TableFormat(separator, decimal, true, false);
                JsonNode group = written(format);
                assertEquals("utf-8", group.at("/dialect/encoding").asText());
                assertTrue(group.path("dc:description").asText().endsWith("The files begin with a byte order mark."));
                assertEquals(
                        new TableFormat(separator, decimal),
                        WrittenFormat.in(folder).orElseThrow());
            }
        }
    }

    /** A text may hold everything that tables know how to quote; the description must still fit. */
    @Test
    void awkwardTextsStayValid() throws IOException {
        for (TableFormat format :
                List.of(TableFormat.DEFAULT, new TableFormat(';', ',', true, false), new TableFormat('\t', ','))) {
            TableWriter writer = new TableWriter(folder, format);
            writer.describe();
            List<String> names = List.of(" a;\"b\",\t.mp4", "=x\r\n.mp4", "\u00FC \uD83D\uDE00 .mp4 ");
            writer.write(
                    ClipRow.TABLE, names.stream().map(TableSchemasTest::clip).toList());
            writer.write(AttemptRow.TABLE, List.of());
            writer.write(PhaseRow.TABLE, List.of());
            writer.write(ContactRow.TABLE, List.of());
            writer.write(IntervalRow.TABLE, List.of());
            writer.write(ObservationRow.TABLE, List.of());
            writer.write(AthleteRow.TABLE, List.of());
            assertEquals(List.of(), CsvwValidator.problems(folder));
        }
    }

    private static ClipRow clip(String name) {
        return new ClipRow(
                name, Outcome.SKIPPED, null, name, 240, 59.94, 4.004, 1280, 720, null, null, 99.96, 0.0, null);
    }

    /** An angle beyond what its definition allows, from the program's own writer: the description does not merely repeat it. */
    @Test
    void anImpossibleAngleIsFound() throws IOException {
        TableWriter writer = new TableWriter(folder, TableFormat.DEFAULT);
        writer.describe();
        for (Table<?> table : TableSchemas.TABLES) {
            writer.write(table, List.of());
        }
        InstantAngles knee =
                new InstantAngles(181.0, null, null, null, null, null, null, null, null, null, null, null, null, null);
        writer.write(
                ContactRow.TABLE,
                List.of(new ContactRow(
                        "a.mp4",
                        0,
                        ContactKind.BOARD,
                        Foot.LEFT,
                        1.0,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        null,
                        knee,
                        InstantAngles.NONE,
                        Map.of())));
        assertEquals(
                List.of(
                        "contacts.csv row 1 knee_touchdown_deg: 181.0 is more than 180",
                        "contacts.csv: [a.mp4] is not in attempts.csv once"),
                CsvwValidator.problems(folder));
    }

    @Test
    void leavesNothingElseBehind() throws IOException {
        written(TableFormat.DEFAULT);
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(folder.resolve("tables.json")), files.toList());
        }
    }
}
