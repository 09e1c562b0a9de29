package org.boardtopit.season;

import java.io.IOException;
import java.text.Normalizer;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.clips.InputException;
import org.boardtopit.measures.Quality;
import org.boardtopit.report.tables.AthleteRow;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.FinishedFolder;
import org.boardtopit.report.tables.FinishedRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.season.Entrant.Remark;

/** Reads the athletes of one finished folder with their attempts. */
final class FolderReader {
    /** What {@code tidy} and pseudonyms leave of names; the same one in another folder is somebody else. */
    private static final String MADE_NAME = "athlete( [0-9]+|-[a-z0-9]{5,20})";

    /** Measures of intervals.csv that are looked at; most are not. */
    private static final Set<String> MEASURES = Set.of(
            "approach_speed_ms",
            "share_pct",
            "distance_m",
            "support_time_s",
            "leg_plant_touchdown_deg",
            "foot_ahead_touchdown_m");

    private final FinishedFolder folder;
    private final Map<String, Map<String, String>> kindsByClip = new HashMap<>();
    private final Map<String, List<IntervalRow>> intervalsByClip = new HashMap<>();
    private final Map<String, List<Remark>> remarksByClip = new HashMap<>();
    private final Map<String, List<MeasuredAttempt>> attempts = new HashMap<>();
    private final Map<String, List<Remark>> remarks = new HashMap<>();

    FolderReader(FinishedFolder folder) {
        this.folder = folder;
    }

    /** In the order of athletes.csv; attempts of nobody are left out. */
    List<Entrant> read() throws InputException, IOException {
        folder.read(
                ContactRow.TABLE,
                row -> kindsByClip
                        .computeIfAbsent(row.text("clip"), clip -> new HashMap<>())
                        .put(row.text("contact"), row.text("kind")));
        folder.read(IntervalRow.TABLE, this::interval);
        folder.read(ObservationRow.TABLE, this::remark);
        folder.read(AttemptRow.TABLE, this::attempt);
        Map<String, Entrant> entrants = new LinkedHashMap<>();
        folder.read(AthleteRow.TABLE, row -> entrants.put(key(row), entrant(row)));
        return List.copyOf(entrants.values());
    }

    private void interval(FinishedRow row) throws InputException {
        if (MEASURES.contains(row.text("measure"))) {
            String clip = row.text("clip");
            double value = row.known("value");
            // The ends are rounded each by itself; a value on its end may lie outside by the last digit.
            double low = Math.min(value, row.known("low_90"));
            double high = Math.max(value, row.known("high_90"));
            intervalsByClip
                    .computeIfAbsent(clip, unused -> new ArrayList<>())
                    .add(new IntervalRow(
                            clip, row.text("of"), row.text("part"), row.text("measure"), value, low, high, ""));
        }
    }

    /** Those that were held against a guide: the others say what is, not whether it is good. */
    private void remark(FinishedRow row) throws InputException {
        if (row.number("severity") != null) {
            String clip = row.text("clip");
            remarksByClip
                    .computeIfAbsent(clip, unused -> new ArrayList<>())
                    .add(new Remark(
                            clip,
                            row.text("phase"),
                            row.text("topic"),
                            row.text("kind"),
                            row.text("finding"),
                            row.text("heading")));
        }
    }

    private void attempt(FinishedRow row) throws InputException {
        String clip = row.text("clip");
        String key = key(row);
        MeasuredAttempt.Card card = new MeasuredAttempt.Card(
                clip,
                result(row.text("result")),
                row.number("official_m"),
                row.number("wind_ms"),
                row.number("effective_m"),
                row.text("quality").equals(Quality.POOR.label()) ? Quality.POOR : Quality.GOOD);
        MeasuredAttempt.of(
                        card, kindsByClip.getOrDefault(clip, Map.of()), intervalsByClip.getOrDefault(clip, List.of()))
                .ifPresent(attempt -> {
                    attempts.computeIfAbsent(key, unused -> new ArrayList<>()).add(attempt);
                    remarks.computeIfAbsent(key, unused -> new ArrayList<>())
                            .addAll(remarksByClip.getOrDefault(clip, List.of()));
                });
    }

    /** As attempts were put together when athletes.csv was made. */
    private static String key(FinishedRow row) throws InputException {
        String bib = row.text("bib");
        return bib.isEmpty() ? "name " + row.text("athlete") : "bib " + bib;
    }

    private Entrant entrant(FinishedRow row) throws InputException {
        LocalDate date = row.date("date")
                .orElseThrow(
                        () -> row.wrong(
                                "date",
                                "a season needs the day of every competition; give the key date in meet.yaml and run process again"));
        String shown = row.text("athlete");
        Double born = row.number("born");
        return new Entrant(
                folder.folder(),
                row.text("competition"),
                date,
                row.text("athlete_id"),
                row.text("bib"),
                nameOf(shown),
                shown,
                born == null ? null : born.intValue(),
                attempts.getOrDefault(key(row), List.of()),
                remarks.getOrDefault(key(row), List.of()));
    }

    /** The same letters may be written in two ways (Unicode Standard Annex 15), and blanks are not seen. */
    private static String nameOf(String shown) {
        String name = Normalizer.normalize(shown, Normalizer.Form.NFC).strip().replaceAll("\\s+", " ");
        return name.matches(MADE_NAME) ? "" : name;
    }

    private static AttemptResult result(String symbol) {
        for (AttemptResult result : AttemptResult.values()) {
            if (result.symbol().equals(symbol)) {
                return result;
            }
        }
        return null;
    }
}
