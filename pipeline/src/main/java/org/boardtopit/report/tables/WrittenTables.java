package org.boardtopit.report.tables;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.boardtopit.clips.TableFormat;

/**
 * Takes people out of the tables of an earlier run. All other cells stay as they are written.
 *
 * <p>Only the tables that the program writes are looked at, in the form that their first line shows, and never through a link.
 */
public final class WrittenTables {
    private static final String CLIP = "clip";
    private static final String BIB = "bib";
    private static final String ATHLETE = "athlete";

    /** What also tells who somebody is. */
    private static final List<String> TELLING = List.of("athlete_id", "born");

    private final Path folder;

    /** Of an output folder. */
    public WrittenTables(Path folder) {
        this.folder = folder;
    }

    /** Makes the workbook beside the tables again, where there is one: what was taken out of them is not to be left in there. */
    public void renewWorkbook() throws IOException {
        boolean there = Files.exists(folder.resolve(WorkbookCopy.FILE_NAME), LinkOption.NOFOLLOW_LINKS);
        Optional<TableFormat> format = WrittenFormat.in(folder);
        WorkbookCopy.remove(folder);
        if (there && format.isPresent()) {
            new WorkbookCopy(TableSchemas.TABLES, format.get()).write(folder);
        }
    }

    /**
     * Removes the rows of clips, but for those of clips.csv, which say no more of a clip than that it is there.
     *
     * @param fileNames which, by the names of their files
     * @return rows removed
     */
    public int removeClips(Predicate<String> fileNames) throws IOException {
        int removed = 0;
        for (Path file : files()) {
            Content table = Content.read(file);
            int clip = table.column(CLIP);
            if (clip >= 0 && !file.getFileName().toString().equals(ClipRow.TABLE.fileName())) {
                int before = table.rows().size();
                table.rows().removeIf(row -> clip < row.length && fileNames.test(row[clip]));
                removed += before - table.rows().size();
                table.writeIfChanged(before != table.rows().size());
            }
        }
        // Its numbers are of all clips of an athlete together; the run makes it anew.
        Files.deleteIfExists(folder.resolve(AthleteRow.TABLE.fileName()));
        return removed;
    }

    /**
     * Replaces athletes by numbers, the same one in all tables, in the order in which they come, and empties their bibs.
     *
     * @param really false to count only
     * @return rows in which somebody was named
     */
    public int removeNames(boolean really) throws IOException {
        Map<String, String> numbers = new LinkedHashMap<>();
        UnaryOperator<String> number =
                who -> numbers.computeIfAbsent(who, unused -> ATHLETE + " " + (numbers.size() + 1));
        int rows = 0;
        for (Path file : files()) {
            Content table = Content.read(file);
            int changed = 0;
            for (String[] row : table.rows()) {
                changed += table.removeName(row, number) ? 1 : 0;
            }
            rows += changed;
            table.writeIfChanged(really && changed > 0);
        }
        return rows;
    }

    private List<Path> files() {
        return Stream.concat(TableSchemas.TABLES.stream(), Stream.of(ReviewRow.TABLE))
                .map(table -> folder.resolve(table.fileName()))
                .filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                .toList();
    }

    /** One table in memory. */
    private record Content(Path file, WrittenTable.Form form, List<String> header, List<String[]> rows) {

        static Content read(Path file) throws IOException {
            try (WrittenTable table = WrittenTable.open(file)) {
                List<String[]> rows = new ArrayList<>();
                for (String[] row = table.next(); row != null; row = table.next()) {
                    rows.add(row);
                }
                return new Content(file, table.form(), table.header(), rows);
            }
        }

        int column(String name) {
            return header.indexOf(name);
        }

        /** True when the row named somebody. */
        boolean removeName(String[] row, UnaryOperator<String> number) {
            String bib = cell(row, BIB);
            String athlete = cell(row, ATHLETE);
            boolean done = bib.isEmpty()
                    && (athlete.isEmpty() || athlete.matches(ATHLETE + " [0-9]+"))
                    && TELLING.stream().allMatch(column -> cell(row, column).isEmpty());
            if (done) {
                return false;
            }
            String numbered = number.apply(bib.isEmpty() ? "name " + athlete : "bib " + bib);
            set(row, BIB, "");
            set(row, ATHLETE, numbered);
            for (String column : TELLING) {
                set(row, column, "");
            }
            return true;
        }

        private String cell(String[] row, String name) {
            int column = column(name);
            return column < 0 || column >= row.length ? "" : row[column];
        }

        private void set(String[] row, String name, String text) {
            int column = column(name);
            if (column >= 0 && column < row.length) {
                row[column] = text;
            }
        }

        void writeIfChanged(boolean changed) throws IOException {
            if (!changed) {
                return;
            }
            CSVFormat format = form.csv();
            WholeFile.write(file, out -> {
                if (form.bom()) {
                    out.append(WrittenTable.BYTE_ORDER_MARK);
                }
                format.printRecord(out, header.toArray());
                for (String[] row : rows) {
                    format.printRecord(out, (Object[]) row);
                }
            });
        }
    }
}
