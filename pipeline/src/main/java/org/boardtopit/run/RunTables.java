package org.boardtopit.run;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Stream;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.Clip;
import org.boardtopit.report.page.PageRows;
import org.boardtopit.report.tables.AthleteRow;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.PhaseRow;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.season.AthleteRegister;
import org.boardtopit.season.AthleteTable;
import org.boardtopit.season.MeasuredAttempt;

/** The rows of a run so far, in the order of its clips, and the tables that hold them. */
final class RunTables {
    private final TableWriter writer;
    private final List<ClipRow> skipped;
    private final AthleteRegister register;
    private final ClipResult[] results;
    private final ClipRow[] clips;

    /**
     * Without a row yet.
     *
     * @param clips how many there are
     */
    RunTables(TableWriter writer, int clips, List<ClipRow> skipped, AthleteRegister register) {
        this.writer = writer;
        this.skipped = List.copyOf(skipped);
        this.register = register;
        this.results = new ClipResult[clips];
        this.clips = new ClipRow[clips];
    }

    /** The rows of a measured clip, by its number from 0. */
    void put(int number, ClipResult result) {
        results[number] = result;
        clips[number] = result.clip();
    }

    /** A clip without results. */
    void put(int number, ClipRow row) {
        results[number] = null;
        clips[number] = row;
    }

    /** Of one clip; null while it is not done. */
    ClipRow clip(int number) {
        return clips[number];
    }

    /** Clips that are done, without the skipped files. */
    List<ClipRow> clips() {
        return Arrays.stream(clips).filter(Objects::nonNull).toList();
    }

    /** Of the measured clips. */
    List<ClipRecord> records() {
        return measured().map(ClipResult::record).toList();
    }

    List<ClipRow> skipped() {
        return skipped;
    }

    private List<AthleteRow> athletes() {
        AthleteTable athletes = new AthleteTable(register);
        measured()
                .filter(r -> r.joinedTo().isEmpty())
                .forEach(r -> attempt(r).ifPresent(a -> athletes.add(r.attempt(), a)));
        return athletes.rows();
    }

    private static Optional<MeasuredAttempt> attempt(ClipResult result) {
        AttemptRow row = result.attempt();
        Map<String, String> kinds = new HashMap<>();
        result.contacts()
                .forEach(c -> kinds.put(Integer.toString(c.contact()), c.kind().label()));
        return MeasuredAttempt.of(
                new MeasuredAttempt.Card(
                        row.clip(), row.result(), row.officialM(), row.windMs(), row.effectiveM(), row.quality()),
                kinds,
                result.intervals());
    }

    private Stream<ClipResult> measured() {
        return Arrays.stream(results).filter(Objects::nonNull);
    }

    private <R> List<R> rows(Function<ClipResult, List<R>> of) {
        return measured().flatMap(result -> of.apply(result).stream()).toList();
    }

    /**
     * What the page is made from.
     *
     * @param all clips of the run, in its order
     */
    PageRows page(List<Clip> all) {
        List<PageRows.ClipFile> files = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Clip clip = all.get(i);
            boolean mayBeSlow =
                    clip.entry().map(entry -> entry.captureFps() > 0).orElse(false);
            files.add(new PageRows.ClipFile(
                    clip.fileName(),
                    clip.name(),
                    results[i] == null ? Optional.empty() : results[i].joinedTo(),
                    mayBeSlow,
                    clip.athlete().map(Athlete::bornYear).orElse(OptionalInt.empty()),
                    clip.corrections()));
        }
        return new PageRows(
                files,
                attempts(),
                rows(ClipResult::phases),
                rows(ClipResult::contacts),
                rows(ClipResult::intervals),
                rows(ClipResult::observations),
                Stream.concat(clips().stream(), skipped.stream()).toList());
    }

    private List<AttemptRow> attempts() {
        return rows(r -> r.joinedTo().isEmpty() ? List.of(r.attempt()) : List.<AttemptRow>of());
    }

    /** The attempts of the measured clips that tell of one by themselves. */
    List<RunComparisons.Attempt> attempts(List<Clip> all) {
        List<RunComparisons.Attempt> attempts = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (results[i] != null && results[i].joinedTo().isEmpty()) {
                attempts.add(new RunComparisons.Attempt(all.get(i), results[i].attempt()));
            }
        }
        return attempts;
    }

    /** Makes the workbook that is a copy of the tables, where one is asked for. */
    void copy() throws IOException {
        writer.copy();
    }

    /** Replaces all tables. A clip that clips.csv lists is in the others, as it is written last. */
    void write() throws IOException {
        writer.describe();
        writer.write(IntervalRow.TABLE, rows(ClipResult::intervals));
        writer.write(ObservationRow.TABLE, rows(ClipResult::observations));
        writer.write(ContactRow.TABLE, rows(ClipResult::contacts));
        writer.write(PhaseRow.TABLE, rows(ClipResult::phases));
        writer.write(AttemptRow.TABLE, attempts());
        writer.write(AthleteRow.TABLE, athletes());
        writer.write(
                ClipRow.TABLE, Stream.concat(clips().stream(), skipped.stream()).toList());
    }
}
