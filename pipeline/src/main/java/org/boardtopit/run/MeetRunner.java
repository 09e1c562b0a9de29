package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Queue;
import java.util.function.LongSupplier;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.SkippedFile;
import org.boardtopit.report.page.PageWriter;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.RunRecord;
import org.boardtopit.report.tables.TableWriter;

/**
 * Measures the clips of a competition, one after the other or side by side; the rows are in the order of the list either way.
 *
 * <p>After every clip all tables and run.json are on disk, complete for the clips that are done, so that a later clip, a bug or
 * a power cut takes nothing away. A clip that cannot be measured, also because of a bug or because memory ran out, becomes
 * a row that says so, and the run goes on. A clip whose athlete did not agree is not opened, and what an earlier run left of
 * it is removed before the first clip ({@link WithheldClips}). Clips that show the same attempt are measured one after the other, for they use each other's landmarks.
 *
 * <p>The page is written after the last clip, and from time to time before.
 *
 * <p>Tables that cannot be written, because a spreadsheet program has one open or the disk is full, are tried again after
 * the next clip; only if the last try fails does the run.
 */
public final class MeetRunner {
    private static final String NO_STAGE_YET = "start";

    /** A page takes a tenth of a second to write; nobody looks at every one of 400. */
    private static final double PAGE_EVERY_S = 30;

    private final ClipMeasurer measurer;
    private final int lanes;
    private final TableWriter tables;
    private final Path out;
    private final RunFacts facts;
    private final RunListener listener;
    private final LongSupplier nanoTime;
    private final Clock clock;
    private final Optional<PageWriter> page;
    private final Optional<RunComparisons> comparisons;

    /**
     * A run of one clip after the other.
     *
     * @param out the output folder, which exists; the tables' writer writes into it too
     */
    public MeetRunner(ClipMeasurer measurer, TableWriter tables, Path out, RunFacts facts, RunListener listener) {
        this(measurer, 1, tables, out, facts, listener);
    }

    /**
     * A run.
     *
     * @param measurer must bear as many calls at once as there are lanes
     * @param lanes how many clips are measured side by side
     * @param out the output folder, which exists; the tables' writer writes into it too
     */
    public MeetRunner(
            ClipMeasurer measurer, int lanes, TableWriter tables, Path out, RunFacts facts, RunListener listener) {
        this(measurer, lanes, tables, out, facts, listener, System::nanoTime);
    }

    MeetRunner(
            ClipMeasurer measurer,
            int lanes,
            TableWriter tables,
            Path out,
            RunFacts facts,
            RunListener listener,
            LongSupplier nanoTime) {
        this(measurer, lanes, tables, out, facts, listener, nanoTime, Clock.system(ZoneId.systemDefault()));
    }

    MeetRunner(
            ClipMeasurer measurer,
            int lanes,
            TableWriter tables,
            Path out,
            RunFacts facts,
            RunListener listener,
            LongSupplier nanoTime,
            Clock clock) {
        this(measurer, lanes, tables, out, facts, listener, nanoTime, clock, Optional.empty(), Optional.empty());
    }

    private MeetRunner(
            ClipMeasurer measurer,
            int lanes,
            TableWriter tables,
            Path out,
            RunFacts facts,
            RunListener listener,
            LongSupplier nanoTime,
            Clock clock,
            Optional<PageWriter> page,
            Optional<RunComparisons> comparisons) {
        if (lanes < 1) {
            throw new IllegalArgumentException("lanes must be 1 or more, was " + lanes);
        }
        this.measurer = measurer;
        this.lanes = lanes;
        this.tables = tables;
        this.out = out;
        this.facts = facts;
        this.listener = listener;
        this.nanoTime = nanoTime;
        this.clock = clock;
        this.page = page;
        this.comparisons = comparisons;
    }

    /** The same run, which also writes the page: at its end, and now and then before. */
    public MeetRunner with(PageWriter writer) {
        return new MeetRunner(
                measurer, lanes, tables, out, facts, listener, nanoTime, clock, Optional.of(writer), comparisons);
    }

    /** The same run, which also makes comparisons when the last clip is done. */
    public MeetRunner with(RunComparisons wanted) {
        return new MeetRunner(
                measurer, lanes, tables, out, facts, listener, nanoTime, clock, page, Optional.of(wanted));
    }

    /**
     * Measures all clips.
     *
     * @throws IOException when the tables of the whole run cannot be written
     */
    public RunSummary run(ClipList list) throws IOException {
        return run(list, Map.of());
    }

    /**
     * Measures the clips that an earlier start has not.
     *
     * @param kept what became of the others, by their names
     * @throws IOException when the tables of the whole run cannot be written
     */
    public RunSummary run(ClipList list, Map<String, StoredResult> kept) throws IOException {
        return new Run(list).measureAll(kept);
    }

    /** Everything but measuring happens under its monitor. */
    private final class Run {
        private final ClipList list;
        private final List<Clip> clips;
        private final AttemptViews views;
        private final RunTables rows;
        private final RunLog log = new RunLog(out, clock);
        private final StageTimes times = new StageTimes(nanoTime);
        private final Workload work;
        private final long startNs = nanoTime.getAsLong();
        private final Queue<List<Integer>> waiting = new ArrayDeque<>();
        private int kept;
        private int bugs;
        private int done;
        private boolean logTroubleTold;
        private IOException unwritten;
        private IOException pageUnwritten;
        private RuntimeException pageFault;
        private Double pageAtS;

        Run(ClipList list) {
            this.list = list;
            clips = list.clips();
            views = list.views();
            rows = new RunTables(
                    tables,
                    clips.size(),
                    list.skipped().stream().map(MeetRunner::skippedRow).toList(),
                    facts.register());
            work = Workload.of(clips);
        }

        RunSummary measureAll(Map<String, StoredResult> earlier) throws IOException {
            WithheldClips.remove(out, list);
            begin(earlier);
            new Lanes(lanes).runAll(this::measureWaiting);
            comparisons.filter(wanted -> !wanted.isEmpty()).ifPresent(this::compare);
            copyTables();
            writeLastPage();
            RunSummary summary = summary();
            log.add("end: " + summary.measured() + " measured, " + summary.notMeasured() + " not, " + summary.withheld()
                    + " withheld" + (unwritten == null ? "" : "; the tables could not be written")
                    + (pageUnwritten == null ? "" : "; the page could not be written"));
            throwTroubles();
            return summary;
        }

        /** tables.json and the page are written once more, for they tell of comparisons. */
        private void compare(RunComparisons wanted) {
            wanted.makeAll(rows.attempts(clips), what -> {
                log.add(what);
                listener.trouble(what);
            });
            synchronized (this) {
                write();
            }
        }

        private void throwTroubles() throws IOException {
            if (pageFault != null) {
                throw pageFault;
            }
            if (unwritten != null) {
                throw unwritten;
            }
            if (pageUnwritten != null) {
                throw pageUnwritten;
            }
        }

        private synchronized void begin(Map<String, StoredResult> earlier) {
            for (int i = 0; i < clips.size(); i++) {
                StoredResult result =
                        clips.get(i).isAgreed() ? earlier.get(clips.get(i).name()) : null;
                if (result != null) {
                    keep(i, result);
                }
            }
            done = kept;
            log.add("start: " + clips.size() + " clips, " + kept + " done by an earlier start; " + facts.settings());
            listener.begun(kept, clips.size());
            line();
            if (waiting.isEmpty()) {
                write();
            }
        }

        private void keep(int i, StoredResult stored) {
            kept++;
            work.leaveOut(i);
            Clip clip = clips.get(i);
            if (stored.result().isPresent()) {
                rows.put(i, judged(stored.result().get(), stored.seconds()));
            } else {
                rows.put(i, row(clip, Outcome.NOT_MEASURED, stored.stage(), stored.reason(), stored.seconds()));
            }
        }

        /** Clips that wait, those of one attempt together. */
        private void line() {
            Map<String, List<Integer>> byAttempt = new LinkedHashMap<>();
            for (int i = 0; i < clips.size(); i++) {
                if (rows.clip(i) == null) {
                    String side =
                            views.sideOf(clips.get(i)).orElse(clips.get(i)).name();
                    byAttempt.computeIfAbsent(side, unused -> new ArrayList<>()).add(i);
                }
            }
            waiting.addAll(byAttempt.values());
        }

        private void measureWaiting() {
            for (List<Integer> attempt = next(); attempt != null; attempt = next()) {
                for (int i : attempt) {
                    measure(i);
                }
            }
        }

        private synchronized List<Integer> next() {
            return waiting.poll();
        }

        private void measure(int i) {
            Clip clip = clips.get(i);
            if (!clip.isAgreed()) {
                put(i, row(clip, Outcome.WITHHELD, null, clip.withheld().orElseThrow(), null), List.of());
                return;
            }
            Heard heard = new Heard(i);
            long clipStartNs = nanoTime.getAsLong();
            Runnable putting; // what the listener throws then is not the clip's
            try {
                ClipResult result = measurer.measure(clip, heard);
                Double took = result.clip().seconds();
                ClipResult judged = judged(result, took == null ? secondsSince(clipStartNs) : took);
                putting = () -> put(i, judged);
            } catch (ClipNotMeasuredException e) {
                double seconds = Double.isNaN(e.seconds()) ? secondsSince(clipStartNs) : e.seconds();
                ClipRow row = row(clip, Outcome.NOT_MEASURED, e.stage(), e.getMessage(), seconds);
                putting = () -> put(i, row, List.of());
            } catch (RuntimeException | Error e) {
                double seconds = secondsSince(clipStartNs);
                putting = () -> putFault(i, heard.stage, e, seconds);
            }
            heard.end();
            putting.run();
        }

        private synchronized void putFault(int i, String stage, Throwable fault, double seconds) {
            bugs++;
            String name = clips.get(i).fileName();
            String what = fault.toString();
            if (fault instanceof WorkerFaultException remote) {
                what = remote.getMessage();
                log.add(name + ", stage " + stage + ": a fault of the program", remote.remoteTrace());
            } else {
                log.add(name + ", stage " + stage + ": a fault of the program", fault);
            }
            what = what.lines().findFirst().orElse("");
            String reason = "a fault of the program (" + what + "); " + RunLog.FILE_NAME + " has more";
            put(i, row(clips.get(i), Outcome.NOT_MEASURED, stage, reason, seconds), List.of());
        }

        private synchronized void put(int i, ClipResult result) {
            rows.put(i, result);
            finish(i, result.attempt().warnings());
        }

        private synchronized void put(int i, ClipRow row, List<String> warnings) {
            rows.put(i, row);
            finish(i, warnings);
        }

        private void finish(int i, List<String> warnings) {
            work.done(i, 1);
            done++;
            ClipRow row = rows.clip(i);
            log.add(row.clip() + ": " + row.outcome().label() + inSeconds(row) + failure(row));
            write();
            tellOfLog();
            listener.clipDone(row, warnings, done, clips.size());
        }

        private void tellOfLog() {
            if (log.failure() != null && !logTroubleTold) {
                logTroubleTold = true;
                listener.trouble(RunLog.FILE_NAME + " cannot be written: "
                        + log.failure().getMessage());
            }
        }

        private void write() {
            try {
                rows.write();
                record().write(out);
                unwritten = null;
            } catch (IOException e) {
                log.add("the tables cannot be written now: " + e.getMessage());
                listener.trouble("the tables cannot be written now: " + e.getMessage());
                unwritten = e;
            }
            page.ifPresent(this::writeNowAndThen);
        }

        private void writeNowAndThen(PageWriter writer) {
            boolean due = pageAtS == null || secondsSince(startNs) - pageAtS >= PAGE_EVERY_S;
            if (due && done < clips.size()) {
                write(writer);
            }
        }

        private synchronized void writeLastPage() {
            page.ifPresent(this::write);
        }

        /** A page that fails, for whatever reason, costs no table. */
        private void write(PageWriter writer) {
            pageAtS = secondsSince(startNs);
            try {
                writer.write(rows.page(clips));
                pageUnwritten = null;
            } catch (IOException e) {
                log.add("the page cannot be written now: " + e.getMessage());
                listener.trouble("the page cannot be written now: " + e.getMessage());
                pageUnwritten = e;
            } catch (RuntimeException e) {
                if (pageFault == null) {
                    log.add("the page cannot be made: a fault of the program", e);
                    listener.trouble(
                            "the page cannot be made, a fault of the program; " + RunLog.FILE_NAME + " has more");
                }
                pageFault = e;
            }
        }

        /** Once, behind the last clip: what it holds is in the tables, so that a run does not fail for it. */
        private synchronized void copyTables() {
            try {
                rows.copy();
            } catch (IOException e) {
                log.add("the workbook cannot be written: " + e.getMessage());
                listener.trouble("the workbook cannot be written: " + e.getMessage());
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

        private synchronized RunSummary summary() {
            int withWarnings = count(Outcome.MEASURED_WITH_WARNINGS);
            return new RunSummary(
                    count(Outcome.MEASURED) + withWarnings,
                    withWarnings,
                    count(Outcome.NOT_MEASURED),
                    bugs,
                    count(Outcome.WITHHELD),
                    rows.skipped().size(),
                    kept,
                    secondsSince(startNs),
                    times.secondsByStage());
        }

        private int count(Outcome outcome) {
            return (int) rows.clips().stream()
                    .filter(row -> row.outcome() == outcome)
                    .count();
        }

        /** Hears of the stages of one clip. */
        private final class Heard implements StageListener {
            private final int number;
            private final StageTimes clipTimes = new StageTimes(nanoTime);
            private String stage = NO_STAGE_YET;

            Heard(int number) {
                this.number = number;
            }

            @Override
            public void at(String name, double share) {
                stage = name;
                clipTimes.at(name, share);
                synchronized (Run.this) {
                    work.done(number, share);
                    double all = work.share();
                    listener.progress(new Progress(
                            done + 1,
                            clips.size(),
                            clips.get(number).fileName(),
                            name,
                            all,
                            Workload.remainingS(all, secondsSince(startNs))));
                }
            }

            void end() {
                clipTimes.pause();
                synchronized (Run.this) {
                    times.add(clipTimes);
                }
            }
        }
    }

    private static String inSeconds(ClipRow row) {
        return row.seconds() == null ? "" : String.format(Locale.ROOT, " in %.1f s", row.seconds());
    }

    private static String failure(ClipRow row) {
        if (row.outcome() != Outcome.NOT_MEASURED) {
            return "";
        }
        return " (" + row.stage() + "): " + row.reason();
    }

    /** The outcome follows from the attempt's warnings. */
    private static ClipResult judged(ClipResult result, double seconds) {
        boolean clean = result.attempt().warnings().isEmpty();
        return result.with(clean ? Outcome.MEASURED : Outcome.MEASURED_WITH_WARNINGS, seconds);
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
