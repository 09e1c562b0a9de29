package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.clips.AutomaticComparison;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.run.RunComparisons.Attempt;
import org.boardtopit.run.RunComparisons.PairMaker;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunComparisonsTest {
    private final List<String> made = new ArrayList<>();
    private final List<String> troubles = new ArrayList<>();

    private static Attempt attempt(
            String name, String bib, String team, AttemptResult result, Double officialM, Double effectiveM) {
        Athlete athlete = new Athlete(bib, "", Optional.empty(), Double.NaN, OptionalInt.empty(), "", team, "");
        Clip clip = new Clip(Path.of(name + ".mp4"), name, Optional.empty(), Optional.empty(), Optional.of(athlete));
        AttemptRow row = new AttemptRow(
                name + ".mp4",
                "",
                "",
                bib,
                "",
                1,
                result,
                officialM,
                null,
                null,
                null,
                null,
                effectiveM,
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
                null,
                null,
                null,
                null,
                List.of(),
                Map.of());
        return new Attempt(clip, row);
    }

    private final List<Attempt> attempts = List.of(
            attempt("a1", "1", "x", AttemptResult.VALID, 14.0, 14.5),
            attempt("a2", "1", "x", AttemptResult.FAILED, null, 15.0),
            attempt("a3", "1", "x", AttemptResult.VALID, 13.0, 12.0),
            attempt("a4", "1", "x", null, null, 13.5),
            attempt("b1", "2", "x", AttemptResult.VALID, null, 12.0),
            attempt("b2", "2", "x", AttemptResult.VALID, null, null),
            attempt("c1", "3", "", AttemptResult.VALID, 16.0, null));

    private void run(Set<AutomaticComparison> wanted, PairMaker maker) {
        new RunComparisons(wanted, maker).makeAll(attempts, troubles::add);
    }

    @Test
    void comparesTheBestValidAttemptOfAnAthleteWithTheWorst() {
        run(Set.of(AutomaticComparison.BEST_AND_WORST), (a, b) -> made.add(a + b));
        assertEquals(List.of("a1a3"), made, "the failed one is longer, the unmeasured one has no distance");
    }

    @Test
    void comparesTeamMatesWhenAsked() {
        run(Set.of(AutomaticComparison.TEAM_MATES), (a, b) -> made.add(a + b));
        assertEquals(List.of("a1b1"), made);
    }

    @Test
    void oneThatFailsCostsALineAndNotTheOthers() {
        run(Set.of(AutomaticComparison.BEST_AND_WORST, AutomaticComparison.TEAM_MATES), (a, b) -> {
            made.add(a + b);
            if (b.equals("a3")) {
                throw new ClipsNotComparedException("a3.mp4 is gone\nmore");
            }
        });
        assertEquals(List.of("a1a3", "a1b1"), made);
        assertEquals(List.of("no comparison of a1 and a3: a3.mp4 is gone"), troubles);
    }

    @Test
    void aFaultOfTheProgramIsALineToo() {
        run(Set.of(AutomaticComparison.TEAM_MATES), (a, b) -> {
            throw new IllegalStateException("oh");
        });
        assertEquals(1, troubles.size());
        assertTrue(troubles.get(0).contains("fault of the program"));
    }

    @Test
    void aRunComparesBehindItsLastClipAndKeepsItsTablesWhateverComesOfIt(@TempDir Path out) throws IOException {
        List<Clip> clips = List.of(attempts.get(0).clip(), attempts.get(2).clip());
        ScriptedMeasurer scripted = new ScriptedMeasurer();
        ClipMeasurer measurer = (clip, listener) -> {
            made.add("measured " + clip.name());
            return withRow(scripted.measure(clip, listener), clip);
        };
        RunComparisons comparisons = new RunComparisons(Set.of(AutomaticComparison.BEST_AND_WORST), (a, b) -> {
            made.add("compared " + a + b);
            throw new IOException("no room");
        });
        RunFacts facts = new RunFacts(Instant.EPOCH, Map.of("boardtopit", "0"), Map.of(), Map.of());
        RunSummary summary = new MeetRunner(
                        measurer, new TableWriter(out, TableFormat.DEFAULT), out, facts, new Troubled())
                .with(comparisons)
                .run(new ClipList(clips, List.of()));
        assertEquals(List.of("measured a1", "measured a3", "compared a1a3"), made);
        assertEquals(List.of("no comparison of a1 and a3: no room"), troubles);
        assertEquals(2, summary.measured());
        assertTrue(Files.exists(out.resolve("clips.csv")));
    }

    private ClipResult withRow(ClipResult result, Clip clip) {
        AttemptRow row = attempts.stream()
                .filter(attempt -> attempt.clip().equals(clip))
                .findFirst()
                .orElseThrow()
                .row();
        return new ClipResult(
                row,
                result.phases(),
                result.contacts(),
                result.intervals(),
                result.observations(),
                result.clip(),
                result.record());
    }

    /** Hears of troubles only. */
    private final class Troubled implements RunListener {
        @Override
        public void begun(int kept, int clips) {}

        @Override
        public void progress(Progress progress) {}

        @Override
        public void clipDone(ClipRow row, List<String> warnings, int number, int clips) {}

        @Override
        public void trouble(String what) {
            troubles.add(what);
        }
    }
}
