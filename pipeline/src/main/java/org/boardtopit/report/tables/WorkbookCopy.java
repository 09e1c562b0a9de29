package org.boardtopit.report.tables;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import org.boardtopit.clips.TableFormat;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/**
 * A copy of the tables of a folder in one workbook for spreadsheet programs: the file tables.xlsx (ISO/IEC 29500), one sheet per table.
 *
 * <p>It holds values only, and the same ones: it is made from the tables as they are written. Row by row, so that it needs no more
 * memory for more clips. <a href="../../../../../../../../docs/decisions/0025-one-workbook-made-from-the-tables.md">Decision 0025</a>
 * says why of this kind and by this library.
 */
public final class WorkbookCopy {
    public static final String FILE_NAME = "tables.xlsx";

    private static final String APPLICATION = "Board to Pit";

    /** Of the application's entry in the file's properties, which must be of this form. */
    private static final String APPLICATION_VERSION = "00.0100";

    private final List<Table<?>> all;
    private final TableFormat format;

    /** Of tables that are written so; those that are not there are left out. */
    WorkbookCopy(List<Table<?>> all, TableFormat format) {
        this.all = all;
        this.format = format;
    }

    /** Replaces an earlier copy; it stays untouched until the new one is complete. Without any table nothing is written. */
    void write(Path folder) throws IOException {
        List<Table<?>> tables = all.stream()
                .filter(table -> Files.isRegularFile(folder.resolve(table.fileName()), LinkOption.NOFOLLOW_LINKS))
                .toList();
        if (tables.isEmpty()) {
            return;
        }
        WholeFile.writeBytes(folder.resolve(FILE_NAME), out -> {
            try (Workbook book = new Workbook(new LeftOpen(out), APPLICATION, APPLICATION_VERSION)) {
                for (Table<?> table : tables) {
                    copy(table, folder.resolve(table.fileName()), book);
                }
            }
        });
    }

    private void copy(Table<?> table, Path file, Workbook book) throws IOException {
        try (WrittenTable written = WrittenTable.open(file);
                Worksheet sheet = book.newWorksheet(table.fileName().replaceFirst("\\.csv$", ""))) {
            TableSheet copy = new TableSheet(sheet, SheetColumn.of(table, written.header(), format.decimal()));
            for (String[] row = written.next(); row != null; row = written.next()) {
                copy.add(row);
            }
            copy.end();
        }
    }

    static void remove(Path folder) throws IOException {
        Files.deleteIfExists(folder.resolve(FILE_NAME));
    }

    /** The library closes what it writes to, and the file has to be forced to the disk before that. */
    private static final class LeftOpen extends FilterOutputStream {
        LeftOpen(OutputStream out) {
            super(out);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            out.write(bytes, from, count);
        }

        @Override
        public void close() throws IOException {
            flush();
        }
    }
}
