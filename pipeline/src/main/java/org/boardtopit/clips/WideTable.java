package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.List;

/**
 * A CSV table of numbers that a program wrote: a row for every frame of a clip, say, with dozens of columns of which a few
 * are wanted. Read by the same rules as a club's sheet, but larger, and with any columns beside the needed ones.
 */
public final class WideTable {
    /** Some ten thousand frames with a hundred columns. */
    private static final int MOST_BYTES = 16 << 20;

    private final List<SheetTable.Row> rows;

    private WideTable(List<SheetTable.Row> rows) {
        this.rows = rows;
    }

    /** Reads the table; an InputException says what is wrong and where. */
    public static WideTable read(Path file, List<String> needed) throws InputException {
        return new WideTable(SheetTable.readWide(file, MOST_BYTES, needed));
    }

    /** Rows that are not empty. */
    public int rowCount() {
        return rows.size();
    }

    /** A cell; empty when the cell is, or when the table has no such column. */
    public String text(int row, String column) {
        return rows.get(row).text(column);
    }

    /** A number of any size; NaN when the cell is empty. */
    public double number(int row, String column) throws InputException {
        return rows.get(row).number(column, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, "1.25");
    }

    /** A number of any size that must be there. */
    public double neededNumber(int row, String column) throws InputException {
        return rows.get(row).neededNumber(column, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, "1.25");
    }

    /** Something is wrong with a cell. */
    public InputException problem(int row, String column, String problem) {
        return rows.get(row).problem(column, problem);
    }
}
