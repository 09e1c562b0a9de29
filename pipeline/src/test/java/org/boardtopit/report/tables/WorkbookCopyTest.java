package org.boardtopit.report.tables;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.report.tables.OfficeWorkbook.Cell;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Read back without the library that writes it: Java's own zip and XML, after ISO/IEC 29500 ({@link OfficeWorkbook}). */
class WorkbookCopyTest {
    private static final TableFormat GERMAN = new TableFormat(';', ',', true, true);

    @TempDir
    Path folder;

    private static ClipRow clip(String name, String reason, Double fps, Integer frames) {
        return new ClipRow(
                name,
                Outcome.NOT_MEASURED,
                "survey",
                reason,
                frames,
                fps,
                null,
                1280,
                720,
                null,
                null,
                null,
                0.0,
                null);
    }

    private OfficeWorkbook copied(TableFormat format, List<ClipRow> clips) throws Exception {
        TableWriter writer = new TableWriter(folder, format);
        writer.write(
                IntervalRow.TABLE, List.of(new IntervalRow("a.mp4", "attempt", "", "lead_pct", -3.2, -4, -2.5, "")));
        writer.write(ClipRow.TABLE, clips);
        writer.copy();
        return new OfficeWorkbook(folder.resolve("tables.xlsx"));
    }

    @ParameterizedTest
    @CsvSource({"',', ., false", "';', ',', true", "'\t', ',', false"})
    void everyCellIsThatOfTheTableWhateverItsForm(char separator, char decimal, boolean bom) throws Exception {
        List<ClipRow> clips = new ArrayList<>();
        for (int seed = 0; seed < 1200; seed++) {
            clips.add(clip("clip " + seed + ".mp4", seed % 3 == 0 ? null : "a, b; \"" + seed, seed * 0.037, seed));
        }
        OfficeWorkbook book = copied(new TableFormat(separator, decimal, bom, true), clips);
        Map<String, Cell> cells = book.cells("clips");
        String text = Files.readString(folder.resolve("clips.csv"));
        List<List<String>> rows = Rfc4180.read(bom ? text.substring(1) : text, separator);
        int seen = 0;
        for (int row = 0; row < rows.size(); row++) {
            for (int column = 0; column < rows.get(row).size(); column++) {
                String wanted = rows.get(row).get(column);
                Cell cell = cells.get((char) ('A' + column) + "" + (row + 2));
                boolean number = row > 0 && Set.of(4, 5, 7, 8, 12).contains(column);
                if (wanted.isEmpty()) {
                    assertNull(cell, "empty is empty, row " + row);
                } else if (number) {
                    assertEquals("n", cell.type());
                    assertEquals(Double.parseDouble(wanted.replace(decimal, '.')), Double.parseDouble(cell.value()));
                    seen++;
                } else {
                    assertEquals(new Cell("s", wanted, cell.numberFormat()), cell);
                    seen++;
                }
            }
        }
        assertEquals(cells.size() - ClipRow.TABLE.header().size(), seen, "all but the titles");
    }

    @Test
    void numbersShowTheDecimalsOfTheTable() throws Exception {
        Map<String, Cell> cells =
                copied(GERMAN, List.of(clip("a.mp4", "", 60.0, 240))).cells("clips");
        assertEquals(new Cell("n", "240", "0"), integer(cells.get("E3")));
        assertEquals("0.000", cells.get("F3").numberFormat());
        assertEquals("0.0", cells.get("M3").numberFormat());
    }

    private static Cell integer(Cell cell) {
        return new Cell(cell.type(), cell.value().replaceFirst("\\.0$", ""), cell.numberFormat());
    }

    @Test
    void theHeaderHasTitlesWithUnitsAndNamesStaysInViewAndFilters() throws Exception {
        OfficeWorkbook book = copied(GERMAN, List.of(clip("a.mp4", "", 60.0, 240)));
        Map<String, Cell> cells = book.cells("clips");
        assertEquals("Duration (s)", cells.get("G1").value());
        assertEquals("duration_s", cells.get("G2").value());
        var pane = book.elements("clips", "pane").get(0);
        assertEquals("frozen", pane.getAttribute("state"));
        assertEquals("2", pane.getAttribute("ySplit"));
        assertEquals("1", pane.getAttribute("xSplit"));
        assertEquals(
                "A2:N3",
                book.elements("clips", "autoFilter").get(0).getAttribute("ref").replace("$", ""));
        for (var column : book.elements("clips", "col")) {
            double width = Double.parseDouble(column.getAttribute("width"));
            assertTrue(width >= 8 && width <= 50, "width " + width);
        }
    }

    @Test
    void holdsValuesOnlyOneSheetPerTable() throws Exception {
        OfficeWorkbook book = copied(GERMAN, List.of(clip("=1+1", "=HYPERLINK(\"http://a\")", 60.0, 240)));
        assertEquals(List.of("intervals", "clips"), book.sheetNames());
        assertEquals(List.of(), book.elements("clips", "f"));
        assertEquals(List.of(), book.elements("clips", "hyperlink"));
        assertEquals(
                new TreeSet<>(),
                book.partNames().stream()
                        .filter(part -> part.contains("vba") || part.contains("external") || part.contains("calcChain"))
                        .collect(java.util.stream.Collectors.toCollection(TreeSet::new)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+1",
                "-1",
                "@SUM(A1)",
                "12",
                "1e5",
                "<b>&amp;\u00FC\uD83D\uDE00</b>",
                " a ",
                "a\r\nb",
                "1\u0001b"
            })
    void textStaysText(String text) throws Exception {
        OfficeWorkbook book = copied(GERMAN, List.of(clip("a.mp4", text, 60.0, 240)));
        Cell cell = book.cells("clips").get("D3");
        assertEquals("s", cell.type());
        // Control characters are no part of XML 1.0 (section 2.2), and XML reads CR LF as LF (section 2.11).
        String table = FormulaGuard.guard(text).replace("\u0001", "").replace("\r\n", "\n");
        assertEquals(table, cell.value().replace("\r\n", "\n").replace("_x0001_", ""));
    }

    @Test
    void aCellThatSomebodyChangedToNoNumberStaysAsItIs() throws Exception {
        copied(GERMAN, List.of(clip("a.mp4", "", 60.0, 240)));
        Path file = folder.resolve("clips.csv");
        Files.writeString(file, Files.readString(file).replace("60,000", "about 60"));
        new TableWriter(folder, GERMAN).copy();
        assertEquals(
                "about 60",
                new OfficeWorkbook(folder.resolve("tables.xlsx"))
                        .cells("clips")
                        .get("F3")
                        .value());
    }

    @Test
    void isNotMadeUnlessAskedForAndLeavesNoHalves() throws Exception {
        TableWriter writer = new TableWriter(folder, TableFormat.DEFAULT);
        writer.write(ClipRow.TABLE, List.of());
        Path mine = Files.writeString(folder.resolve("tables.xlsx"), "mine");
        writer.copy();
        assertEquals("mine", Files.readString(mine));
        copied(GERMAN, List.of());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(
                    List.of("clips.csv", "intervals.csv", "tables.xlsx"),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void anEarlierWorkbookStaysWhenTheNewOneFails() throws Exception {
        copied(GERMAN, List.of(clip("a.mp4", "", 60.0, 240)));
        byte[] before = Files.readAllBytes(folder.resolve("tables.xlsx"));
        Files.write(folder.resolve("clips.csv"), "clip;frames\r\n\"a".getBytes(StandardCharsets.UTF_8));
        assertThrows(IOException.class, () -> new TableWriter(folder, GERMAN).copy());
        assertArrayEquals(before, Files.readAllBytes(folder.resolve("tables.xlsx")));
        assertFalse(Files.exists(folder.resolve("tables.xlsx.part")));
    }

    @Test
    void longTextsAreCutToWhatACellHolds() throws Exception {
        OfficeWorkbook book = copied(GERMAN, List.of(clip("a.mp4", "x".repeat(40_000), 60.0, 240)));
        assertEquals(
                TableSheet.LONGEST_TEXT, book.cells("clips").get("D3").value().length());
        assertEquals(1_048_576, Worksheet.MAX_ROWS, "ISO/IEC 29500 and its programs");
    }

    @Test
    void pseudonymsReplaceNamesInTheWorkbookToo() throws Exception {
        TableWriter writer = new TableWriter(folder, GERMAN);
        writer.describe();
        writer.write(ClipRow.TABLE, List.of());
        String header = String.join(";", AttemptRow.TABLE.header());
        String rows = IntStream.range(0, 3)
                .mapToObj(i -> "\r\n" + i + ".mp4;Meeting;;214;Corin Vask")
                .reduce("", String::concat);
        Files.writeString(folder.resolve("attempts.csv"), "\uFEFF" + header + rows + "\r\n");
        writer.copy();
        WrittenTables tables = new WrittenTables(folder);
        assertEquals(3, tables.removeNames(true));
        tables.renewWorkbook();
        Map<String, Cell> cells = new OfficeWorkbook(folder.resolve("tables.xlsx")).cells("attempts");
        assertEquals("athlete 1", cells.get("E3").value());
        assertFalse(cells.values().stream()
                .anyMatch(c -> c.value().contains("Vask") || c.value().equals("214")));
        assertTrue(Files.readString(folder.resolve("attempts.csv")).startsWith("\uFEFFclip;"), "the mark stays");
    }
}
