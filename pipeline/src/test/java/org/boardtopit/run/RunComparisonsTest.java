package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
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
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.run.RunComparisons.Attempt;
import org.boardtopit.run.RunComparisons.PairMaker;
import org.junit.jupiter.api.Test;

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
}
