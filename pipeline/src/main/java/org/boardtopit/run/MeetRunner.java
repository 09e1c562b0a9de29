package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.LongSupplier;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.SkippedFile;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.RunRecord;
import org.boardtopit.report.tables.TableWriter;

/**
 * Measures the clips of a competition one after the other, in the order of the list.
 *
 * <p>After every clip all tables and run.json are on disk, complete up to that clip, so that a later clip, a bug or a
 * power cut takes nothing away. A clip that cannot be measured, also because of a bug or because memory ran out, becomes
 * a row that says so, and the run goes on. A clip whose athlete did not agree is not opened, and what an earlier run left of
 * it is removed before the first clip ({@link WithheldClips}).
 *
 * <p>Tables that cannot be written, because a spreadsheet program has one open or the disk is full, are tried again after
 * the next clip; only if the last try fails does the run.
 */
public final class MeetRunner {
    private static final String NO_STAGE_YET = "start";

    private final ClipMeasurer measurer;
    private final TableWriter tables;
    private final Path out;
    private final RunFacts facts;
    private final RunListener listener;
    private final LongSupplier nanoTime;

    /**
     * A run.
     *
     * @param out the output folder, which exists; the tables' writer writes into it too
     */
    public MeetRunner(ClipMeasurer measurer, TableWriter tables, Path out, RunFacts facts, RunListener listener) {
        this(measurer, tables, out, facts, listener, System::nanoTime);
    }

    MeetRunner(
            ClipMeasurer measurer,
            TableWriter tables,
            Path out,
            RunFacts facts,
            RunListener listener,
            LongSupplier nanoTime) {
        this.measurer = measurer;
        this.tables = tables;
        this.out = out;
        this.facts = facts;
        this.listener = listener;
        this.nanoTime = nanoTime;
    }

    /**
     * Measures all clips.
     *
     * @throws IOException when the tables of the whole run cannot be written
     */
    public RunSummary run(ClipList list) throws IOException {
        return new Run(list).measureAll();
    }

    private final class Run {
        private final List<Clip> clips;
        private final RunTables rows;
        private final RunLog log = new RunLog(out);
        private final StageTimes times = new StageTimes(nanoTime);
        private final Workload work;
        private final long startNs = nanoTime.getAsLong();
        private String stage;
        private int bugs;

        Run(ClipList list) {
            clips = list.clips();
            rows = new RunTables(
                    tables, list.skipped().stream().map(MeetRunner::skippedRow).toList());
            work = Workload.of(clips);
        }

        RunSummary measureAll() throws IOException {
            log.begin();
            WithheldClips.remove(out, clips);
            IOException unwritten = null;
            for (int i = 0; i < clips.size(); i++) {
                List<String> warnings = add(i);
                unwritten = write();
                listener.clipDone(rows.clips().get(i), warnings, i + 1, clips.size());
            }
            if (unwritten != null) {
                throw unwritten;
            }
            return summary();
        }

        /** Adds the rows of a clip and gives its warnings. */
        private List<String> add(int i) {
            Clip clip = clips.get(i);
            if (clip.withheld().isPresent()) {
                rows.add(row(clip, Outcome.WITHHELD, null, clip.withheld().get(), null));
                return List.of();
            }
            stage = NO_STAGE_YET;
            long clipStartNs = nanoTime.getAsLong();
            try {
                ClipResult result = measurer.measure(clip, (name, share) -> tell(i, name, share));
                rows.add(judged(result, secondsSince(clipStartNs)));
                return result.attempt().warnings();
            } catch (ClipNotMeasuredException e) {
                rows.add(row(clip, Outcome.NOT_MEASURED, e.stage(), e.getMessage(), secondsSince(clipStartNs)));
            } catch (RuntimeException | Error e) {
                bugs++;
                keepTrace(clip, e);
                String what = e.toString().lines().findFirst().orElse("");
                String reason = "a fault of the program (" + what + "); " + RunLog.FILE_NAME + " has more";
                rows.add(row(clip, Outcome.NOT_MEASURED, stage, reason, secondsSince(clipStartNs)));
            } finally {
                times.pause();
            }
            return List.of();
        }

        private void tell(int i, String name, double share) {
            stage = name;
            times.at(name, share);
            double done = work.share(i, share);
            double remainingS = Workload.remainingS(done, secondsSince(startNs));
            listener.progress(new Progress(i + 1, clips.size(), clips.get(i).fileName(), name, done, remainingS));
        }

        private void keepTrace(Clip clip, Throwable bug) {
            try {
                log.add(clip.fileName(), stage, bug);
            } catch (IOException e) {
                listener.trouble(RunLog.FILE_NAME + " cannot be written: " + e.getMessage());
            }
        }

        /** What kept the tables from being written, or null. */
        private IOException write() {
            try {
                rows.write();
                record().write(out);
                return null;
            } catch (IOException e) {
                listener.trouble("the tables cannot be written now: " + e.getMessage());
                return e;
            }
        }

        private RunRecord record() {
            return new RunRecord(
                    facts.startedAt(),
                    facts.startedAt().plusNanos(nanoTime.getAsLong() - startNs),
                    facts.versions(),
                    facts.hashes(),
                    facts.settings(),
                    times.secondsByStage(),
                    rows.records());
        }

        private double secondsSince(long thenNs) {
            return (nanoTime.getAsLong() - thenNs) * 1e-9;
        }

        private RunSummary summary() {
            int withWarnings = count(Outcome.MEASURED_WITH_WARNINGS);
            return new RunSummary(
                    count(Outcome.MEASURED) + withWarnings,
                    withWarnings,
                    count(Outcome.NOT_MEASURED),
                    bugs,
                    count(Outcome.WITHHELD),
                    rows.skipped().size(),
                    secondsSince(startNs),
                    times.secondsByStage());
        }

        private int count(Outcome outcome) {
            return (int) rows.clips().stream()
                    .filter(row -> row.outcome() == outcome)
                    .count();
        }
    }

    /** The outcome follows from the attempt's warnings; how long it took, only the run knows. */
    private static ClipResult judged(ClipResult result, double seconds) {
        ClipRow row = result.clip();
        Outcome outcome = result.attempt().warnings().isEmpty() ? Outcome.MEASURED : Outcome.MEASURED_WITH_WARNINGS;
        ClipRow judged = new ClipRow(
                row.clip(),
                outcome,
                row.stage(),
                row.reason(),
                row.frames(),
                row.fps(),
                row.durationS(),
                row.widthPx(),
                row.heightPx(),
                seconds,
                row.network(),
                row.subjectSeenPct(),
                row.registeredPct(),
                row.meanConfidence());
        return new ClipResult(
                result.attempt(),
                result.phases(),
                result.contacts(),
                result.intervals(),
                result.observations(),
                judged,
                result.record(),
                result.joinedTo());
    }

    private static ClipRow skippedRow(SkippedFile file) {
        return row(file.file().getFileName().toString(), Outcome.SKIPPED, null, file.reason(), null);
    }

    private static ClipRow row(Clip clip, Outcome outcome, String stage, String reason, Double seconds) {
        return row(clip.fileName(), outcome, stage, reason, seconds);
    }

    private static ClipRow row(String name, Outcome outcome, String stage, String reason, Double seconds) {
        return new ClipRow(name, outcome, stage, reason, null, null, null, null, null, seconds, null, null, null, null);
    }
}
