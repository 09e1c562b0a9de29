package org.boardtopit.report.tables;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.dhatim.fastexcel.PaperSize;
import org.dhatim.fastexcel.Worksheet;

/**
 * One sheet while its rows come. Its header has two lines, titles with units and the names of the table's columns, and stays in
 * view, as the first column does; the names carry a filter.
 *
 * <p>The widths stand in the file before the rows, so the first rows wait until there are enough of them to tell.
 */
final class TableSheet {
    /** Lines of the header, and the number from 0 of the first row behind it. */
    private static final int HEADER = 2;

    private static final int ROWS_TO_TELL_WIDTHS = 200;

    /** Rows kept in memory before they go to the file. */
    private static final int ROWS_AT_ONCE = 500;

    private static final double LEAST_WIDTH = 8;
    private static final double LARGEST_WIDTH = 48;

    /** Of the filter's button and the cell's rim, in characters. */
    private static final double RIM = 3.5;

    private static final double TITLE_HEIGHT_POINTS = 45;

    /** A cell cannot hold more characters (ISO/IEC 29500-1, and the limits of the programs). */
    static final int LONGEST_TEXT = 32_767;

    private final Worksheet sheet;
    private final List<SheetColumn> columns;
    private final List<String[]> waiting = new ArrayList<>();
    private boolean begun;
    private int rows;

    TableSheet(Worksheet sheet, List<SheetColumn> columns) {
        this.sheet = sheet;
        this.columns = columns;
    }

    /**
     * Adds a row.
     *
     * @throws IOException when the file cannot be written, or when a sheet holds no more rows
     */
    void add(String[] row) throws IOException {
        if (begun) {
            put(row);
            return;
        }
        waiting.add(row);
        if (waiting.size() == ROWS_TO_TELL_WIDTHS) {
            begin();
        }
    }

    /** Must be called behind the last row. */
    void end() throws IOException {
        if (!begun) {
            begin();
        }
        sheet.setAutoFilter(HEADER - 1, 0, HEADER - 1 + rows, columns.size() - 1);
    }

    private void begin() throws IOException {
        begun = true;
        sheet.freezePane(1, HEADER);
        sheet.rowHeight(0, TITLE_HEIGHT_POINTS);
        sheet.paperSize(PaperSize.A4_PAPER);
        sheet.pageOrientation("landscape");
        sheet.repeatRows(0, HEADER - 1);
        for (int i = 0; i < columns.size(); i++) {
            SheetColumn column = columns.get(i);
            sheet.width(i, width(i));
            sheet.value(0, i, column.title());
            sheet.style(0, i).bold().wrapText(true).verticalAlignment("top").set();
            sheet.value(1, i, column.name());
            sheet.style(1, i).italic().set();
        }
        for (String[] row : waiting) {
            put(row);
        }
        waiting.clear();
    }

    /** Of the name or the longest cell so far; titles go on in a second and third line. */
    private double width(int column) {
        int longest = columns.get(column).name().length();
        for (String[] row : waiting) {
            longest = Math.max(longest, column < row.length ? row[column].length() : 0);
        }
        return Math.max(LEAST_WIDTH, Math.min(LARGEST_WIDTH, longest + RIM));
    }

    private void put(String[] row) throws IOException {
        if (HEADER + rows >= Worksheet.MAX_ROWS) {
            throw new IOException("the table " + sheet.getName() + " has more than " + (Worksheet.MAX_ROWS - HEADER)
                    + " rows, which no sheet of a workbook can hold");
        }
        for (int i = 0; i < Math.min(row.length, columns.size()); i++) {
            String text = row[i].length() > LONGEST_TEXT ? row[i].substring(0, LONGEST_TEXT) : row[i];
            columns.get(i).put(sheet, HEADER + rows, i, text);
        }
        rows++;
        if (rows % ROWS_AT_ONCE == 0) {
            sheet.flush();
        }
    }
}
