package org.boardtopit.report.tables;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.report.tables.TableDescription.ColumnDescription;
import org.dhatim.fastexcel.Worksheet;

/**
 * One column of a sheet: its two lines of header, and what its cells are.
 *
 * @param name as in the table
 * @param title in words, with its unit
 * @param decimal sign of the numbers in the table
 */
record SheetColumn(String name, String title, CellType type, char decimal) {

    /** Columns of a written table, in its order; one that the program does not write holds text. */
    static List<SheetColumn> of(Table<?> table, List<String> header, char decimal) {
        Map<String, CellType> types = new LinkedHashMap<>();
        table.columns().forEach(column -> types.put(column.name(), column.type()));
        Optional<TableDescription> description = TableDescription.of(table.fileName());
        return header.stream()
                .map(name -> new SheetColumn(
                        name,
                        title(name, description.flatMap(d -> d.column(name))),
                        types.getOrDefault(name, CellType.TEXT),
                        decimal))
                .toList();
    }

    private static String title(String name, Optional<ColumnDescription> description) {
        String title = description.map(ColumnDescription::title).orElse(name);
        return Unit.of(name)
                .filter(unit -> unit != Unit.ONE)
                .map(unit -> title + " (" + unit.symbol() + ")")
                .orElse(title);
    }

    /** Puts a cell's text in as what it is. What is no number in a column of numbers stays the text it is. */
    void put(Worksheet sheet, int row, int column, String text) {
        if (text.isEmpty()) {
            return;
        }
        boolean put =
                switch (type.base()) {
                    case "integer", "decimal" -> putNumber(sheet, row, column, text);
                    case "date" -> putDate(sheet, row, column, text);
                    default -> false;
                };
        if (!put) {
            sheet.value(row, column, text);
        }
    }

    /** With as many decimals as the table has. */
    private boolean putNumber(Worksheet sheet, int row, int column, String text) {
        String plain = text.replace(decimal, '.');
        if (!plain.matches("-?[0-9]+(\\.[0-9]+)?")) {
            return false;
        }
        sheet.value(row, column, Double.valueOf(plain));
        int dot = plain.indexOf('.');
        String format = dot < 0 ? "0" : "0." + "0".repeat(plain.length() - dot - 1);
        sheet.style(row, column).format(format).set();
        return true;
    }

    private static boolean putDate(Worksheet sheet, int row, int column, String text) {
        try {
            sheet.value(row, column, LocalDate.parse(text));
        } catch (DateTimeParseException e) {
            return false;
        }
        sheet.style(row, column).format("yyyy-mm-dd").set();
        return true;
    }
}
