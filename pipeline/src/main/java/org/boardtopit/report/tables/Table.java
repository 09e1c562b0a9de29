package org.boardtopit.report.tables;

import java.util.List;

/**
 * The fixed shape of one table: its file name and its columns.
 *
 * <p>The tables are the constants TABLE of {@link AttemptRow}, {@link PhaseRow}, {@link ContactRow}, {@link IntervalRow}
 * and {@link ClipRow}; {@link TableSchemas} has them all.
 *
 * @param <R> what a row is made of
 */
public final class Table<R> {
    private final String fileName;
    private final String kind;
    private final List<Column<R>> columns;

    Table(String fileName, List<Column<R>> columns) {
        this(fileName, fileName, columns);
    }

    private Table(String fileName, String kind, List<Column<R>> columns) {
        this.fileName = fileName;
        this.kind = kind;
        this.columns = List.copyOf(columns);
    }

    /** Name of the file in the output folder. */
    public String fileName() {
        return fileName;
    }

    /** The same columns in a file of another name, where there are several of a kind; the name may hold a folder. */
    public Table<R> in(String otherFile) {
        return new Table<>(otherFile, kind, columns);
    }

    /** By what its columns are described: the name of its file, or what stands for it where there are several of a kind. */
    String kind() {
        return kind;
    }

    /** Names of the columns, in order. */
    public List<String> header() {
        return columns.stream().map(Column::name).toList();
    }

    List<Column<R>> columns() {
        return columns;
    }
}
