package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.Locale;

/**
 * Something in the inputs is wrong and the user can put it right.
 *
 * <p>The message is one line: file, line and column where they are known, what is wrong and what would be right.
 */
public final class InputException extends Exception {
    private static final long serialVersionUID = 1L;
    private static final int LONGEST_QUOTE = 60;

    private final String file;
    private final int line;
    private final String column;

    /** About a file or a folder as a whole. */
    public InputException(Path file, String problem) {
        this(file, 0, "", problem);
    }

    /**
     * About one place in a file.
     *
     * @param line counted from 1; 0 when the file as a whole is meant
     * @param column the place in the line, counted from 1, or in a table the name of the column; empty when the whole
     *     line is meant
     */
    public InputException(Path file, int line, String column, String problem) {
        super(place(file, line, column) + ": " + oneLine(problem));
        this.file = file.toString();
        this.line = line;
        this.column = column;
    }

    private static String place(Path file, int line, String column) {
        return oneLine(file.toString())
                + (line > 0 ? ", line " + line : "")
                + (column.isEmpty() ? "" : ", column " + oneLine(column));
    }

    /** A piece of the user's text, in quotes and short enough for a message of one line. */
    public static String quoted(String text) {
        boolean cut = text.codePointCount(0, text.length()) > LONGEST_QUOTE;
        String shown = cut ? text.substring(0, text.offsetByCodePoints(0, LONGEST_QUOTE)) + "..." : text;
        return "'" + oneLine(shown) + "'";
    }

    /** Control characters could end the line or colour the terminal, so they are shown as their code. */
    private static String oneLine(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> {
            if (Character.isISOControl(c)) {
                shown.append(String.format(Locale.ROOT, "\\u%04x", c));
            } else {
                shown.appendCodePoint(c);
            }
        });
        return shown.toString();
    }

    /** The file or folder as the user named it. */
    public String file() {
        return file;
    }

    /** Counted from 1; 0 when the file as a whole is meant. */
    public int line() {
        return line;
    }

    /** Place in the line counted from 1, or the name of a table's column; empty when the whole line is meant. */
    public String column() {
        return column;
    }
}
