package org.boardtopit.run;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.clips.AutomaticComparison;
import org.boardtopit.clips.Clip;
import org.boardtopit.report.comparison.ComparisonPairs;
import org.boardtopit.report.comparison.ComparisonPairs.Candidate;
import org.boardtopit.report.comparison.ComparisonPairs.Pair;
import org.boardtopit.report.tables.AttemptRow;

/** The comparisons that a run makes by itself, once all its clips are measured. One that fails costs a line and no more. */
public final class RunComparisons {
    private final Set<AutomaticComparison> wanted;
    private final PairMaker maker;

    /** Makes one comparison where it is not there. */
    @FunctionalInterface
    public interface PairMaker {
        /**
         * Makes it.
         *
         * @param a name of the first clip
         * @param b name of the second
         */
        void make(String a, String b) throws ClipsNotComparedException, IOException;
    }

    /**
     * An attempt that was measured.
     *
     * @param row its row of attempts.csv
     */
    public record Attempt(Clip clip, AttemptRow row) {}

    /** Is told of what fails. */
    @FunctionalInterface
    public interface Trouble {
        /** One line. */
        void tell(String what);
    }

    /**
     * Of one run.
     *
     * @param wanted which are made; may be none
     */
    public RunComparisons(Set<AutomaticComparison> wanted, PairMaker maker) {
        this.wanted = Set.copyOf(wanted);
        this.maker = maker;
    }

    /** True when there is nothing to do, whatever was measured. */
    public boolean isEmpty() {
        return wanted.isEmpty();
    }

    /** Makes all, one after the other. */
    public void makeAll(List<Attempt> attempts, Trouble trouble) {
        for (Pair pair : pairs(attempts)) {
            try {
                maker.make(pair.a(), pair.b());
            } catch (ClipsNotComparedException | IOException | RuntimeException e) {
                // Whatever it is, the tables are there, and the other comparisons can be made.
                trouble.tell("no comparison of " + pair.a() + " and " + pair.b() + ": " + firstLine(e));
            }
        }
    }

    private static String firstLine(Exception e) {
        String message = e instanceof RuntimeException ? "a fault of the program (" + e + ")" : e.getMessage();
        return message == null ? e.toString() : message.lines().findFirst().orElse(e.toString());
    }

    private Set<Pair> pairs(List<Attempt> attempts) {
        List<Candidate> candidates = new ArrayList<>();
        attempts.forEach(attempt -> candidate(attempt).ifPresent(candidates::add));
        ComparisonPairs all = new ComparisonPairs(candidates);
        Set<Pair> pairs = new LinkedHashSet<>();
        if (wanted.contains(AutomaticComparison.BEST_AND_WORST)) {
            pairs.addAll(all.bestAndWorst());
        }
        if (wanted.contains(AutomaticComparison.TEAM_MATES)) {
            pairs.addAll(all.teamMates());
        }
        return pairs;
    }

    /** A valid attempt of a known athlete; the sheet's distance counts before the measured one. */
    private static Optional<Candidate> candidate(Attempt attempt) {
        AttemptRow row = attempt.row();
        String athlete = row.bib() == null || row.bib().isBlank() ? row.athlete() : row.bib();
        Double distance = row.officialM() != null ? row.officialM() : row.effectiveM();
        boolean failed = row.result() != null && row.result() != AttemptResult.VALID;
        if (failed || athlete == null || athlete.isBlank() || distance == null || !Double.isFinite(distance)) {
            return Optional.empty();
        }
        String team = attempt.clip().athlete().map(Athlete::team).orElse("");
        return Optional.of(new Candidate(attempt.clip().name(), athlete, team, distance));
    }
}
