package org.boardtopit.clips;

/**
 * How the tables are written.
 *
 * @param separator between cells: comma, semicolon or tab
 * @param decimal sign of numbers: dot or comma, not the same as the separator
 * @param bom whether a file begins with a byte order mark, by which some spreadsheet programs know UTF-8
 * @param workbook whether there is a copy of all tables in one workbook beside them
 */
public record TableFormat(char separator, char decimal, boolean bom, boolean workbook) {
    public static final TableFormat DEFAULT = new TableFormat(',', '.');

    public TableFormat {
        if (separator != ',' && separator != ';' && separator != '\t') {
            throw new IllegalArgumentException("separator must be comma, semicolon or tab");
        }
        if (decimal != '.' && decimal != ',') {
            throw new IllegalArgumentException("decimal must be dot or comma");
        }
        if (separator == decimal) {
            throw new IllegalArgumentException("separator and decimal must not both be a comma");
        }
    }

    /** Without a byte order mark and without a workbook. */
    public TableFormat(char separator, char decimal) {
        this(separator, decimal, false, false);
    }
}
