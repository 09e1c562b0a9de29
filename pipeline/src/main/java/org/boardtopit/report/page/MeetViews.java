package org.boardtopit.report.page;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.report.page.AttemptView.Link;
import org.boardtopit.report.page.MeetView.MissingView;
import org.boardtopit.report.page.MeetView.ResultView;
import org.boardtopit.report.page.MeetView.SortKeys;
import org.boardtopit.report.page.MeetView.Trouble;
import org.boardtopit.report.tables.AthleteRow;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.PhaseRow;
import org.boardtopit.report.tables.WorkbookCopy;
import org.boardtopit.wording.Warnings;
import org.boardtopit.wording.Words;

/** Puts a competition into words. */
final class MeetViews {
    private static final List<String> TABLES = List.of(
            WorkbookCopy.FILE_NAME,
            AttemptRow.TABLE.fileName(),
            PhaseRow.TABLE.fileName(),
            ContactRow.TABLE.fileName(),
            ObservationRow.TABLE.fileName(),
            IntervalRow.TABLE.fileName(),
            AthleteRow.TABLE.fileName(),
            ClipRow.TABLE.fileName());

    private final Words words;
    private final Warnings warnings;
    private final Figures figures;
    private final Naming naming;
    private final PageFiles files;

    MeetViews(Words words, PageFiles files) {
        this.words = words;
        this.warnings = new Warnings(words.language());
        this.figures = new Figures(words);
        this.naming = new Naming(words);
        this.files = files;
    }

    MeetView view(String competition, Optional<LocalDate> date, PageRows rows) {
        List<Series> all = new SeriesFinder(rows, date).series();
        SeriesViews views = new SeriesViews(words, files, all);
        List<SeriesView> series = all.stream().map(views::view).toList();
        return new MeetView(
                words.language().code(),
                words::get,
                competition.isBlank() ? words.get("no_competition") : competition,
                subtitle(date, rows),
                unfinished(rows),
                series,
                rows.attempts().stream().anyMatch(row -> row.windMs() != null),
                all.stream().flatMap(one -> results(one).stream()).toList(),
                missing(rows.clips()),
                TABLES.stream()
                        .flatMap(table -> files.table(table).stream().map(link -> new Link(link, table)))
                        .toList());
    }

    private String subtitle(Optional<LocalDate> date, PageRows rows) {
        List<String> parts = new ArrayList<>();
        date.map(words::date).ifPresent(parts::add);
        parts.add(words.format("measured_count", rows.attempts().size()));
        return String.join(" · ", parts);
    }

    private String unfinished(PageRows rows) {
        long done = rows.clips().stream()
                .filter(clip -> clip.outcome() != Outcome.SKIPPED)
                .count();
        return done >= rows.files().size()
                ? ""
                : words.format("unfinished", done, rows.files().size());
    }

    private List<ResultView> results(Series series) {
        return series.attempts().stream()
                .map(attempt -> result(series, attempt))
                .toList();
    }

    private ResultView result(Series series, Attempt attempt) {
        AttemptRow row = attempt.row();
        return new ResultView(
                AttemptViews.id(attempt),
                series.bib(),
                series.athlete().equals(series.bib()) ? "" : series.athlete(),
                naming.shortly(series, attempt),
                naming.distance(figures, attempt),
                row.windMs() == null ? "" : figures.signed(row.windMs(), 1, ""),
                share(attempt, "hop"),
                share(attempt, "step"),
                share(attempt, "jump"),
                effort(row),
                attempt.intervals()
                        .ofAttempt("approach_speed_ms")
                        .map(figures::value)
                        .orElse(""),
                row.quality() == null ? "" : naming.word("quality", row.quality()),
                row.quality() == null ? "" : row.quality().label(),
                series.isBest(attempt),
                attempt.isCorrected(),
                sortKeys(attempt));
    }

    private String share(Attempt attempt, String phase) {
        return attempt.intervals()
                .ofPhase(phase, "share_pct")
                .map(figures::value)
                .orElse("");
    }

    /** A class that the uncertainty may change is told as such. */
    private String effort(AttemptRow row) {
        if (row.effortClass() == null) {
            return "";
        }
        String name = naming.word("effort", row.effortClass());
        boolean sure =
                row.leadPct() != null && row.leadPctPm() != null && Math.abs(row.leadPct() - 2) > row.leadPctPm();
        return sure ? name : words.format("effort_unsure", name);
    }

    private static SortKeys sortKeys(Attempt attempt) {
        AttemptRow row = attempt.row();
        return new SortKeys(
                row.attempt() == null ? "" : row.attempt().toString(),
                attempt.hasDistance() ? plain(row.officialM()) : "",
                plain(row.windMs()),
                plain(row.hopPct()),
                plain(row.stepPct()),
                plain(row.jumpPct()),
                plain(row.approachSpeedMs()));
    }

    private static String plain(Double value) {
        return value == null ? "" : String.format(Locale.ROOT, "%.4f", value);
    }

    private MissingView missing(List<ClipRow> clips) {
        List<Trouble> failed = troubles(clips, Outcome.NOT_MEASURED);
        List<Trouble> withheld = troubles(clips, Outcome.WITHHELD);
        List<Trouble> skipped = troubles(clips, Outcome.SKIPPED);
        return new MissingView(
                failed,
                withheld.isEmpty() ? "" : words.format("withheld_count", withheld.size()),
                withheld.stream().map(Trouble::file).toList(),
                skipped.isEmpty() ? "" : words.format("skipped_count", skipped.size()),
                skipped);
    }

    private List<Trouble> troubles(List<ClipRow> clips, Outcome outcome) {
        return clips.stream()
                .filter(clip -> clip.outcome() == outcome)
                .map(clip -> new Trouble(clip.clip(), clip.reason() == null ? "" : warnings.of(clip.reason())))
                .toList();
    }
}
