package org.boardtopit.season;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.observations.AthleteLevel;
import org.boardtopit.observations.Confidence;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.tables.AthleteRow;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.InstantAngles;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.PhaseRow;
import org.boardtopit.report.tables.RunRecord;
import org.boardtopit.report.tables.TableWriter;

/**
 * Folders of results of invented competitions, written by the program's own writers: only what a season reads is in them. The athletes
 * are those of the invented club; the step's share is what a test gives, everything else follows from it or from the seed.
 */
public final class DrawnSeason {
    private final Path folder;
    private final TableFormat format;
    private final String competition;
    private final LocalDate date;
    private final List<Athlete> athletes = new ArrayList<>();
    private final List<AttemptRow> attempts = new ArrayList<>();
    private final List<ContactRow> contacts = new ArrayList<>();
    private final List<IntervalRow> intervals = new ArrayList<>();
    private final List<ObservationRow> observations = new ArrayList<>();
    private final List<ClipRow> clips = new ArrayList<>();
    private final Random random;

    /** An empty competition; its day seeds what is random. */
    public DrawnSeason(Path folder, TableFormat format, String competition, LocalDate date) {
        this.folder = folder;
        this.format = format;
        this.competition = competition;
        this.date = date;
        this.random = new Random(date.toEpochDay());
    }

    /** An athlete with an attempt for each share of the step. */
    public DrawnSeason add(String id, String bib, String name, Integer born, double... stepPct) {
        athletes.add(new Athlete(
                bib,
                name,
                Optional.empty(),
                Double.NaN,
                born == null ? OptionalInt.empty() : OptionalInt.of(born),
                "",
                "",
                id));
        for (double step : stepPct) {
            attempt(bib, name, step);
        }
        return this;
    }

    private void attempt(String bib, String name, double stepPct) {
        String clip = "attempt-" + (attempts.size() + 1) + ".mp4";
        double officialM = Math.floor(100 * (14 + 0.1 * random.nextGaussian())) / 100;
        attempts.add(new AttemptRow(
                clip,
                competition,
                "Triple Jump",
                bib,
                name,
                attempts.size() + 1,
                AttemptResult.VALID,
                officialM,
                0.4,
                Foot.LEFT,
                null,
                60.0,
                officialM + 0.08,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                ScaleSource.MARKS,
                null,
                null,
                Quality.GOOD,
                List.of(),
                Map.of()));
        clips.add(new ClipRow(
                clip, Outcome.MEASURED, null, null, 240, 60.0, 4.0, 1280, 720, 20.0, "full", 99.0, 99.0, 1.0));
        List<ContactKind> kinds =
                List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT);
        for (int i = 0; i < kinds.size(); i++) {
            contacts.add(new ContactRow(
                    clip,
                    i,
                    kinds.get(i),
                    Foot.LEFT,
                    1.0 + i,
                    0.01,
                    null,
                    null,
                    null,
                    null,
                    60,
                    null,
                    null,
                    null,
                    1.0,
                    false,
                    InstantAngles.NONE,
                    InstantAngles.NONE,
                    Map.of()));
            if (i < 3) {
                interval(clip, "contact", Integer.toString(i), "support_time_s", 0.11 + 0.02 * i, 0.01);
                interval(clip, "contact", Integer.toString(i), "leg_plant_touchdown_deg", 68, 5);
                interval(clip, "contact", Integer.toString(i), "foot_ahead_touchdown_m", 0.5, 0.09);
            }
        }
        double hopPct = 100 - stepPct - 34;
        interval(clip, "phase", "hop", "share_pct", hopPct, 0.3);
        interval(clip, "phase", "step", "share_pct", stepPct, 0.3);
        interval(clip, "phase", "jump", "share_pct", 34, 0.3);
        for (String phase : List.of("hop", "step", "jump")) {
            interval(clip, "phase", phase, "distance_m", 4.7, 0.05);
        }
        interval(clip, "attempt", "", "approach_speed_ms", 9.1 + 0.1 * random.nextGaussian(), 0.05);
        if (stepPct < 28) {
            observations.add(observation(clip));
        }
    }

    private void interval(String clip, String of, String part, String measure, double value, double half) {
        intervals.add(new IntervalRow(clip, of, part, measure, value, value - half, value + half, ""));
    }

    private static ObservationRow observation(String clip) {
        return new ObservationRow(
                clip,
                PhaseName.STEP,
                2.0,
                120,
                "effort_distribution",
                "short step",
                26.0,
                "%",
                28.0,
                null,
                "drawn",
                Confidence.MEDIUM,
                "The step was short.",
                "",
                1,
                Kind.PRIORITY,
                1,
                "",
                AthleteLevel.SENIOR,
                "step",
                "share_pct",
                25.7,
                26.3,
                1.5,
                "short step");
    }

    /** Writes the folder. */
    public Path write() {
        return write("0.1.0");
    }

    /** The same as another version of the program. */
    public Path write(String version) {
        try {
            Files.createDirectories(folder);
            TableWriter writer = new TableWriter(folder, format);
            writer.describe();
            writer.write(AttemptRow.TABLE, attempts);
            writer.write(PhaseRow.TABLE, List.of());
            writer.write(ContactRow.TABLE, contacts);
            writer.write(IntervalRow.TABLE, intervals);
            writer.write(ObservationRow.TABLE, observations);
            writer.write(AthleteRow.TABLE, athleteRows());
            writer.write(ClipRow.TABLE, clips);
            Instant noon = Instant.parse("2026-06-14T12:00:00Z");
            new RunRecord(noon, noon, Map.of("boardtopit", version), Map.of(), Map.of(), Map.of(), List.of())
                    .write(folder);
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<AthleteRow> athleteRows() {
        AthleteTable table = new AthleteTable(new AthleteRegister(Optional.of(date), athletes, true));
        for (AttemptRow row : attempts) {
            Map<String, String> kinds = Map.of("0", "board", "1", "hop_landing", "2", "step_landing", "3", "pit");
            MeasuredAttempt.of(
                            new MeasuredAttempt.Card(
                                    row.clip(),
                                    row.result(),
                                    row.officialM(),
                                    row.windMs(),
                                    row.effectiveM(),
                                    row.quality()),
                            kinds,
                            intervals.stream()
                                    .filter(i -> i.clip().equals(row.clip()))
                                    .toList())
                    .ifPresent(attempt -> table.add(row, attempt));
        }
        return table.rows();
    }
}
