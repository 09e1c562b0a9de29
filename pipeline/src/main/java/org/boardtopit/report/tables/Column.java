package org.boardtopit.report.tables;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.boardtopit.clips.Label;
import org.boardtopit.clips.TableFormat;

/**
 * One column of a table: its name, what its cells may hold, and how a row's value becomes the text of a cell. What the column
 * means is in columns.yaml beside this class ({@link TableDescription}).
 *
 * @param name of the header row
 * @param cell text of the cell, before quoting; empty when not measurable
 */
record Column<R>(String name, CellType type, Cell<R> cell) {

    /** Makes the text of a cell. */
    @FunctionalInterface
    interface Cell<R> {
        String text(R row, TableFormat format);
    }

    /** Free text, made harmless; null is an empty cell. */
    static <R> Column<R> text(String name, Function<R, String> value) {
        return new Column<>(name, CellType.TEXT, (row, format) -> {
            String text = value.apply(row);
            return text == null ? "" : FormulaGuard.guard(text);
        });
    }

    /**
     * A word from a fixed list.
     *
     * @param words regular expression of all words, such as {@link #oneOf} makes
     */
    static <R> Column<R> label(String name, String words, Function<R, ? extends Label> value) {
        return new Column<>(name, CellType.word(words), (row, format) -> {
            Label label = value.apply(row);
            return label == null ? "" : label.label();
        });
    }

    /** The words as a regular expression. */
    static String oneOf(Label... words) {
        return Arrays.stream(words).map(Label::label).collect(Collectors.joining("|"));
    }

    /** A number that counts something. */
    static <R> Column<R> whole(String name, Function<R, ? extends Number> value) {
        return new Column<>(name, CellType.WHOLE, (row, format) -> {
            Number number = value.apply(row);
            return number == null ? "" : Long.toString(number.longValue());
        });
    }

    /** A measured number with a fixed count of decimals, rounded half up. */
    static <R> Column<R> number(String name, int decimals, Function<R, Double> value) {
        return rounded(name, decimals, RoundingMode.HALF_UP, value);
    }

    /** A number that is never rounded up, as the rules of the event have it for official distances. */
    static <R> Column<R> truncated(String name, int decimals, Function<R, Double> value) {
        return rounded(name, decimals, RoundingMode.DOWN, value);
    }

    private static <R> Column<R> rounded(String name, int decimals, RoundingMode mode, Function<R, Double> value) {
        return new Column<>(name, CellType.NUMBER, (row, format) -> {
            Double number = value.apply(row);
            if (number == null || !Double.isFinite(number)) {
                return "";
            }
            // BigDecimal.valueOf takes the shortest decimal of the double: 14.88 stays 14.88 when it is cut off. It
            // also knows no negative zero.
            String plain = BigDecimal.valueOf(number).setScale(decimals, mode).toPlainString();
            return plain.replace('.', format.decimal());
        });
    }

    /** A day, as ISO 8601 has it; null is an empty cell. */
    static <R> Column<R> date(String name, Function<R, LocalDate> value) {
        return new Column<>(name, CellType.DATE, (row, format) -> {
            LocalDate day = value.apply(row);
            return day == null ? "" : day.toString();
        });
    }

    /** yes or no; null is an empty cell. */
    static <R> Column<R> yesOrNo(String name, Function<R, Boolean> value) {
        return new Column<>(name, CellType.YES_OR_NO, (row, format) -> {
            Boolean answer = value.apply(row);
            return answer == null ? "" : answer ? "yes" : "no";
        });
    }
}
