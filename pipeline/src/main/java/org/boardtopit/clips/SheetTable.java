package org.boardtopit.clips;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A CSV table that a spreadsheet program or a text editor wrote, read with the place of every cell.
 *
 * <p>RFC 4180, and what is met beside it: a byte order mark, cells separated by semicolons or tabs, decimal commas,
 * empty lines, rows that end early, unused columns at the right edge. The separator is whichever of the three is most
 * frequent in the first line, which has no other reason to hold any.
 */
final class SheetTable {
    private static final int LONGEST_CELL = 200;

    /** Fifty times the clips of a large competition; what is compared row by row with clips must not take the night. */
    private static final int MOST_ROWS = 20_000;

    private static final Pattern NUMBER = Pattern.compile("[+-]?([0-9]+([.,][0-9]*)?|[.,][0-9]+)");

    private final Path file;
    private final List<String> columns;
    private final List<Row> rows = new ArrayList<>();

    private SheetTable(Path file, List<String> columns) {
        this.file = file;
        this.columns = columns;
    }

    /**
     * Reads a table whose columns are among the known ones, in any order.
     *
     * @param known all columns it may have
     * @param needed those it must have
     */
    static List<Row> read(Path file, List<String> known, List<String> needed) throws InputException {
        String text = InputText.read(file);
        if (text.isBlank()) {
            throw new InputException(file, "the file is empty; its first line must name the columns: " + list(known));
        }
        return read(file, text, Optional.of(known), needed);
    }

    /** Reads a table that a program wrote: it may be larger and have any columns beside the needed ones. */
    static List<Row> readWide(Path file, int mostBytes, List<String> needed) throws InputException {
        String text = InputText.read(file, mostBytes);
        if (text.isBlank()) {
            throw new InputException(file, "the file is empty; its first line must name the columns");
        }
        return read(file, text, Optional.empty(), needed);
    }

    private static List<Row> read(Path file, String text, Optional<List<String>> known, List<String> needed)
            throws InputException {
        CSVFormat format =
                CSVFormat.RFC4180.builder().setDelimiter(separator(text)).get();
        int line = 1;
        try (CSVParser parser = CSVParser.parse(text, format)) {
            Iterator<CSVRecord> records = parser.iterator();
            SheetTable table = new SheetTable(file, header(file, records.next(), known, needed));
            line = (int) parser.getCurrentLineNumber() + 1;
            while (records.hasNext()) {
                table.add(line, records.next());
                if (known.isPresent() && table.rows.size() > MOST_ROWS) {
                    throw new InputException(
                            file, line, "", "more than " + MOST_ROWS + " rows; a sheet has one for each clip");
                }
                line = (int) parser.getCurrentLineNumber() + 1;
            }
            return List.copyOf(table.rows);
        } catch (UncheckedIOException | IOException e) {
            throw new InputException(
                    file, line, "", "the quotes in this row do not match; write a quote within a cell twice");
        }
    }

    private static char separator(String text) {
        String first = text.lines().findFirst().orElse("");
        char best = ',';
        for (char candidate : new char[] {';', '\t'}) {
            if (count(first, candidate) > count(first, best)) {
                best = candidate;
            }
        }
        return best;
    }

    private static long count(String text, char wanted) {
        return text.chars().filter(c -> c == wanted).count();
    }

    private static List<String> header(Path file, CSVRecord first, Optional<List<String>> known, List<String> needed)
            throws InputException {
        List<String> names = new ArrayList<>();
        for (String cell : first) {
            String name = trim(cell);
            if (!name.isEmpty() && known.isPresent() && !known.get().contains(name)) {
                throw unknownColumn(file, name, known.get());
            }
            if (!name.isEmpty() && names.contains(name)) {
                throw new InputException(file, 1, name, "this column is there twice");
            }
            names.add(name);
        }
        for (String name : needed) {
            if (!names.contains(name)) {
                throw new InputException(file, 1, "", "the column " + InputException.quoted(name) + " is missing");
            }
        }
        return names;
    }

    private static InputException unknownColumn(Path file, String name, List<String> known) {
        String hint = NearMiss.hint(name, known);
        String advice = hint.isEmpty() ? "; the first line names columns among " + list(known) : hint;
        return new InputException(file, 1, "", "unknown column " + InputException.quoted(name) + advice);
    }

    private static String list(List<String> names) {
        return String.join(", ", names);
    }

    private void add(int line, CSVRecord record) throws InputException {
        List<String> cells = new ArrayList<>();
        for (String cell : record) {
            cells.add(trim(cell));
        }
        for (int i = 0; i < cells.size(); i++) {
            String name = i < columns.size() ? columns.get(i) : "";
            if (name.isEmpty() && !cells.get(i).isEmpty()) {
                throw new InputException(
                        file,
                        line,
                        "",
                        "cell " + (i + 1) + " (" + InputException.quoted(cells.get(i))
                                + ") has no column; put text that holds the separator in quotes");
            }
            checkText(line, name, cells.get(i));
        }
        if (!cells.stream().allMatch(String::isEmpty)) {
            rows.add(new Row(line, cells));
        }
    }

    private void checkText(int line, String column, String cell) throws InputException {
        if (cell.length() > LONGEST_CELL) {
            throw new InputException(file, line, column, "the cell is longer than " + LONGEST_CELL + " characters");
        }
        if (cell.chars().anyMatch(Character::isISOControl)) {
            throw new InputException(
                    file, line, column, "the cell must stay on one line and hold no control characters");
        }
    }

    /** Spreadsheets paste no-break spaces, which strip() leaves. */
    private static String trim(String cell) {
        return cell.replace('\u00A0', ' ').strip();
    }

    /** A row that is not empty. */
    final class Row {
        private final int line;
        private final List<String> cells;

        private Row(int line, List<String> cells) {
            this.line = line;
            this.cells = cells;
        }

        /** Line of the file on which the row begins, counted from 1. */
        int line() {
            return line;
        }

        /** Empty when the cell is, or when the table has no such column. */
        String text(String column) {
            int index = columns.indexOf(column);
            return index < 0 || index >= cells.size() ? "" : cells.get(index);
        }

        String neededText(String column) throws InputException {
            String text = text(column);
            if (text.isEmpty()) {
                throw problem(column, "must not be empty");
            }
            return text;
        }

        /** A number with dot or comma; NaN when the cell is empty. */
        double number(String column, double least, double most, String example) throws InputException {
            String text = text(column).replace('\u2212', '-');
            if (text.isEmpty()) {
                return Double.NaN;
            }
            if (!NUMBER.matcher(text).matches()) {
                throw problem(column, "must be a number such as " + example + ", was " + InputException.quoted(text));
            }
            double value = Double.parseDouble(text.replace(',', '.'));
            if (value < least || value > most) {
                throw problem(column, "must be from " + plain(least) + " to " + plain(most) + ", was " + text);
            }
            return value;
        }

        double neededNumber(String column, double least, double most, String example) throws InputException {
            neededText(column);
            return number(column, least, most, example);
        }

        /** One of a few words, in capital or small letters; null when the cell is empty. */
        <T> T oneOf(String column, Map<String, T> words) throws InputException {
            String text = text(column);
            if (text.isEmpty()) {
                return null;
            }
            for (Map.Entry<String, T> word : words.entrySet()) {
                if (word.getKey().equalsIgnoreCase(text)) {
                    return word.getValue();
                }
            }
            throw problem(
                    column,
                    "must be one of " + String.join(", ", words.keySet()) + ", was " + InputException.quoted(text));
        }

        InputException problem(String column, String problem) {
            return new InputException(file, line, column, problem);
        }

        private static String plain(double limit) {
            return limit == Math.rint(limit) ? Long.toString((long) limit) : Double.toString(limit);
        }
    }
}
