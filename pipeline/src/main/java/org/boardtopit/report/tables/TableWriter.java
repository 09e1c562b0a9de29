package org.boardtopit.report.tables;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.QuoteMode;
import org.boardtopit.clips.TableFormat;

/** Writes tables into the output folder; the package comment describes the format. */
public final class TableWriter {
    private final Path folder;
    private final TableFormat format;
    private final List<Table<?>> tables;

    /**
     * A writer of one run.
     *
     * @param folder the output folder, which exists
     */
    public TableWriter(Path folder, TableFormat format) {
        this(folder, format, TableSchemas.TABLES);
    }

    private TableWriter(Path folder, TableFormat format, List<Table<?>> tables) {
        this.folder = folder;
        this.format = format;
        this.tables = tables;
    }

    /** A writer of one season, into a folder of its own. */
    public static TableWriter ofSeason(Path folder, TableFormat format) {
        return new TableWriter(folder, format, TableSchemas.SEASON_TABLES);
    }

    /**
     * Writes a whole table, in the order of the rows; an earlier one stays untouched until the new one is complete.
     *
     * @return the file
     */
    public <R> Path write(Table<R> table, List<R> rows) throws IOException {
        Path file = folder.resolve(table.fileName());
        WholeFile.write(file, out -> {
            if (format.bom()) {
                out.append(WrittenTable.BYTE_ORDER_MARK);
            }
            append(table, rows, out);
        });
        return file;
    }

    /**
     * Writes what the columns of all tables of a run hold, as tables.json.
     * @return the file
     */
    public Path describe() throws IOException {
        return new TableSchemas(tables, format).write(folder);
    }

    /**
     * Copies the tables that are there into a workbook when the format asks for one. Otherwise a file of that name stays as it is: it may
     * be the user's own.
     */
    public void copy() throws IOException {
        if (format.workbook()) {
            new WorkbookCopy(tables, format).write(folder);
        }
    }

    <R> void append(Table<R> table, List<R> rows, Appendable out) throws IOException {
        CSVFormat csv = CSVFormat.RFC4180
                .builder()
                .setDelimiter(format.separator())
                .setQuoteMode(QuoteMode.MINIMAL)
                .get();
        csv.printRecord(out, table.header().toArray());
        for (R row : rows) {
            csv.printRecord(out, cells(table, row));
        }
    }

    private <R> Object[] cells(Table<R> table, R row) {
        return table.columns().stream()
                .map(column -> column.cell().text(row, format))
                .toArray();
    }
}
