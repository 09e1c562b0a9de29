package org.boardtopit.clips;

/**
 * How the tables are written.
 *
 * @param separator between cells: comma, semicolon or tab
 * @param decimal sign of numbers: dot or comma, not the same as the separator
 */
public record TableFormat(char separator, char decimal) {
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
}
