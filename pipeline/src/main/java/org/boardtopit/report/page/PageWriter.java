package org.boardtopit.report.page;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.report.tables.WholeFile;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;

/** Writes the page of a competition into the output folder. */
public final class PageWriter {
    public static final String FILE_NAME = "index.html";

    private final Path folder;
    private final String competition;
    private final Optional<LocalDate> date;
    private final Language language;

    /**
     * A writer of one run.
     *
     * @param folder the output folder, which exists
     */
    public PageWriter(Path folder, MeetSheet meet) {
        this(folder, meet.competition(), meet.date(), meet.language());
    }

    /**
     * A writer for a competition.
     *
     * @param competition its name; may be empty
     */
    PageWriter(Path folder, String competition, Optional<LocalDate> date, Language language) {
        this.folder = folder;
        this.competition = competition;
        this.date = date;
        this.language = language;
    }

    /**
     * Writes the page; an earlier one stays untouched until the new one is complete.
     *
     * @return the file
     */
    public Path write(PageRows rows) throws IOException {
        Words words = Words.of("page", language);
        MeetView view = new MeetViews(words, PageFiles.in(folder)).view(competition, date, rows);
        String page = Templates.render("meet", view);
        Path file = folder.resolve(FILE_NAME);
        WholeFile.write(file, out -> out.write(page));
        return file;
    }
}
