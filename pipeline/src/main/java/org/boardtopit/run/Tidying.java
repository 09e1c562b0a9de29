package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.boardtopit.report.page.PageWriter;
import org.boardtopit.report.tables.WrittenRun;
import org.boardtopit.report.tables.WrittenTables;

/**
 * Takes everything out of an output folder that shows or names people: pictures, what was read from the clips, names and bibs.
 * Tables of numbers stay, and so does everything that the program did not write. Links are removed and never followed.
 */
public final class Tidying {
    private static final List<String> PICTURES = List.of("overlays", "stills", "comparisons", "cameras");
    private static final String WORK = "work";

    private final Path folder;
    private final WrittenRun run;

    /** Of a folder and its run.json. */
    public Tidying(Path folder, WrittenRun run) {
        this.folder = folder;
        this.run = run;
    }

    /**
     * What was removed, or would be.
     *
     * @param pictures files of overlays, stills, comparisons, camera pictures, and the page that shows them
     * @param landmarks files that were read from the clips
     * @param names rows of tables in which somebody was named or had a bib
     */
    public record Removed(int pictures, int landmarks, int names) {}

    /** Counts and changes nothing. */
    public Removed look() throws IOException {
        int work = remove(folder.resolve(WORK), false)
                - remove(folder.resolve(WORK).resolve(RunLock.FILE_NAME), false);
        return new Removed(pictures(false), work, new WrittenTables(folder).removeNames(false));
    }

    /**
     * Removes. When it is stopped half-way, doing it again does the rest; the folder counts as tidied from the start on, so that
     * no run puts back what is gone already.
     *
     * @param lock of the folder, which the caller holds; its file stays
     */
    public Removed tidy(LocalDate today, RunLock lock) throws IOException {
        run.writeTidied(today);
        return new Removed(pictures(true), removeWork(lock), removeNames());
    }

    /** The lock's own file holds a number of a process; with it gone, two could hold the lock at once. */
    private int removeWork(RunLock lock) throws IOException {
        int files = 0;
        try (DirectoryStream<Path> content = Files.newDirectoryStream(folder.resolve(WORK))) {
            for (Path path : content) {
                files += lock.isOwn(path) ? 0 : remove(path, true);
            }
        }
        return files;
    }

    private int removeNames() throws IOException {
        WrittenTables tables = new WrittenTables(folder);
        int rows = tables.removeNames(true);
        tables.renewWorkbook();
        return rows;
    }

    private int pictures(boolean really) throws IOException {
        int files = remove(folder.resolve(PageWriter.FILE_NAME), really);
        for (String name : PICTURES) {
            files += remove(folder.resolve(name), really);
        }
        return files;
    }

    private static int remove(Path path, boolean really) throws IOException {
        if (!Files.exists(path, LinkOption.NOFOLLOW_LINKS)) {
            return 0;
        }
        int files = OutputFiles.count(path);
        if (really) {
            OutputFiles.delete(path);
        }
        return files;
    }
}
