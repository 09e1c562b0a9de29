package org.boardtopit.report.tables;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.InputException;

/** One row of a table of a finished folder, with its place for messages. */
public final class FinishedRow {
    private final Path file;
    private final long line;
    private final List<String> header;
    private final String[] cells;
    private final char decimal;

    FinishedRow(Path file, long line, List<String> header, String[] cells, char decimal) {
        this.file = file;
        this.line = line;
        this.header = header;
        this.cells = cells;
        this.decimal = decimal;
    }

    /** Of a cell; empty when there is nothing in it. */
    public String text(String column) throws InputException {
        int at = header.indexOf(column);
        if (at < 0) {
            throw new InputException(
                    file,
                    "the column " + column
                            + " is missing; the table is of another version or was changed: run process into its folder again");
        }
        return at < cells.length ? cells[at] : "";
    }

    /** Null when the cell is empty. */
    public Double number(String column) throws InputException {
        String text = text(column);
        if (text.isEmpty()) {
            return null;
        }
        String plain = text.replace(decimal, '.');
        if (!plain.matches("-?[0-9]+(\\.[0-9]+)?")) {
            throw wrong(column, "a number such as 14" + decimal + "88 is expected, was " + InputException.quoted(text));
        }
        return Double.valueOf(plain);
    }

    /** A number that must be there. */
    public double known(String column) throws InputException {
        Double number = number(column);
        if (number == null) {
            throw wrong(column, "a number is missing");
        }
        return number;
    }

    public Optional<LocalDate> date(String column) throws InputException {
        String text = text(column);
        try {
            return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
        } catch (DateTimeParseException e) {
            throw wrong(column, "a day such as 2026-06-14 is expected, was " + InputException.quoted(text));
        }
    }

    /** A message about a cell of this row. */
    public InputException wrong(String column, String problem) {
        return new InputException(file, (int) line, column, problem);
    }
}
