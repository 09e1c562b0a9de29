package org.boardtopit.report.tables;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.TableFormat;

/** The tables of a folder of results, read in whatever form they are written; the folder stays as it is. */
public final class FinishedFolder {
    private final Path folder;
    private final WrittenRun run;
    private final TableFormat format;

    private FinishedFolder(Path folder, WrittenRun run, TableFormat format) {
        this.folder = folder;
        this.run = run;
        this.format = format;
    }

    /**
     * Opens a folder.
     *
     * @param version of this program: tables that a later one wrote may mean something else
     * @throws InputException when the folder is none of results, or of a later version
     */
    public static FinishedFolder open(Path folder, String version) throws InputException, IOException {
        if (!Files.isDirectory(folder)) {
            throw new InputException(folder, "there is no such folder");
        }
        WrittenRun run = WrittenRun.in(folder)
                .orElseThrow(() ->
                        new InputException(folder, "not a folder of results: it has no run.json of this program"));
        if (isLater(run.version(), version)) {
            throw new InputException(
                    folder,
                    "its tables were written by version " + run.version() + ", and this is version " + version
                            + "; use that version or a later one");
        }
        TableFormat format = WrittenFormat.in(folder)
                .orElseThrow(
                        () -> new InputException(
                                folder,
                                "it has no readable tables.json, which tells how its tables are written; run process into it again"));
        return new FinishedFolder(folder, run, format);
    }

    /** By its numbers; what follows them, as in 0.2.0-rc1, does not count. */
    private static boolean isLater(String theirs, String ours) {
        List<Integer> there = numbers(theirs);
        List<Integer> here = numbers(ours);
        for (int i = 0; i < Math.max(there.size(), here.size()); i++) {
            int difference = (i < there.size() ? there.get(i) : 0) - (i < here.size() ? here.get(i) : 0);
            if (difference != 0) {
                return difference > 0;
            }
        }
        return false;
    }

    private static List<Integer> numbers(String version) {
        List<Integer> numbers = new ArrayList<>();
        for (String part : version.replaceFirst("[^0-9.].*$", "").split("\\.", -1)) {
            if (part.matches("[0-9]{1,6}")) {
                numbers.add(Integer.valueOf(part));
            }
        }
        return numbers;
    }

    public Path folder() {
        return folder;
    }

    /** How its tables are written, and whether there is a workbook beside them. */
    public TableFormat format() {
        return format;
    }

    /** True when people were taken out of it: its athletes have numbers, which mean nothing elsewhere. */
    public boolean isTidied() {
        return run.isTidied();
    }

    /** Takes one row after the other. */
    @FunctionalInterface
    public interface RowTaker {
        void take(FinishedRow row) throws InputException;
    }

    /**
     * Reads a table.
     *
     * @throws InputException when there is no such table in the folder, it is damaged, or the taker throws it
     */
    public void read(Table<?> table, RowTaker taker) throws InputException, IOException {
        Path file = folder.resolve(table.fileName());
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            throw new InputException(
                    folder, "it has no " + table.fileName() + "; run process into it again, which keeps what was read");
        }
        try (WrittenTable written = WrittenTable.open(file)) {
            for (String[] cells = written.next(); cells != null; cells = written.next()) {
                taker.take(new FinishedRow(file, written.line(), written.header(), cells, format.decimal()));
            }
        } catch (CharacterCodingException e) {
            throw new InputException(file, "the file is not UTF-8; it was changed by another program");
        } catch (WrittenTable.DamagedException e) {
            throw new InputException(file, e.getMessage());
        }
    }
}
