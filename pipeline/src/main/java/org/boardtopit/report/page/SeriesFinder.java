package org.boardtopit.report.page;

import static java.util.stream.Collectors.groupingBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.boardtopit.report.page.PageRows.ClipFile;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.PhaseRow;

/** Joins the rows of a run to attempts, and these to series: by bib, else by name; a clip with neither stands alone. */
final class SeriesFinder {
    private static final int AGE_OF_MAJORITY = 18;

    private final PageRows rows;
    private final Optional<LocalDate> date;
    private final Map<String, ClipFile> files;
    private final Map<String, List<PhaseRow>> phases;
    private final Map<String, List<ContactRow>> contacts;
    private final Map<String, List<IntervalRow>> intervals;
    private final Map<String, List<ObservationRow>> observations;
    private final Map<String, ClipRow> clips;

    SeriesFinder(PageRows rows, Optional<LocalDate> date) {
        this.rows = rows;
        this.date = date;
        this.files = rows.files().stream().collect(Collectors.toMap(ClipFile::fileName, Function.identity()));
        this.phases = rows.phases().stream().collect(groupingBy(PhaseRow::clip));
        this.contacts = rows.contacts().stream().collect(groupingBy(ContactRow::clip));
        this.intervals = rows.intervals().stream().collect(groupingBy(IntervalRow::clip));
        this.observations = rows.observations().stream().collect(groupingBy(ObservationRow::clip));
        this.clips = rows.clips().stream().collect(Collectors.toMap(ClipRow::clip, Function.identity(), (a, b) -> a));
    }

    /** In the order in which the athletes come in the run. */
    List<Series> series() {
        Map<String, List<Attempt>> byAthlete = new LinkedHashMap<>();
        for (AttemptRow row : rows.attempts()) {
            List<Attempt> theirs = byAthlete.computeIfAbsent(key(row), unused -> new ArrayList<>());
            theirs.add(attempt(row));
        }
        List<Series> series = new ArrayList<>();
        int attempts = 0;
        for (List<Attempt> theirs : byAthlete.values()) {
            theirs.sort(Comparator.comparing(
                    attempt -> attempt.row().attempt(), Comparator.nullsLast(Comparator.naturalOrder())));
            List<Attempt> numbered = new ArrayList<>();
            for (Attempt one : theirs) {
                attempts++;
                numbered.add(one.numbered(attempts));
            }
            series.add(new Series(series.size() + 1, numbered, numbered.stream().noneMatch(this::isMinor)));
        }
        return series;
    }

    /** Who turns 18 in the year of the competition may still be 17; where the day is not known, everybody whose year of birth is. */
    private boolean isMinor(Attempt attempt) {
        OptionalInt born = attempt.file().bornYear();
        return born.isPresent()
                && date.map(day -> day.getYear() - born.getAsInt() <= AGE_OF_MAJORITY)
                        .orElse(true);
    }

    private static String key(AttemptRow row) {
        if (row.bib() != null && !row.bib().isBlank()) {
            return "bib " + row.bib();
        }
        return row.athlete() != null && !row.athlete().isBlank() ? "name " + row.athlete() : "clip " + row.clip();
    }

    private Attempt attempt(AttemptRow row) {
        ClipFile file = files.get(row.clip());
        if (file == null) {
            throw new IllegalArgumentException("an attempt's clip is one of the files, was " + row.clip());
        }
        List<ClipFile> others = rows.files().stream()
                .filter(other -> other.joinedTo().equals(Optional.of(row.clip())))
                .toList();
        ClipRow clip = clips.get(row.clip());
        return new Attempt(
                0,
                row,
                file,
                clip == null ? null : clip.durationS(),
                phases.getOrDefault(row.clip(), List.of()),
                contacts.getOrDefault(row.clip(), List.of()),
                new Intervals(intervals.getOrDefault(row.clip(), List.of())),
                observations.getOrDefault(row.clip(), List.of()),
                others);
    }
}
