package org.boardtopit.report.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import org.boardtopit.report.comparison.ComparisonPairs.Candidate;
import org.boardtopit.report.comparison.ComparisonPairs.Pair;
import org.junit.jupiter.api.Test;

class ComparisonPairsTest {
    private final ComparisonPairs pairs = new ComparisonPairs(List.of(
            new Candidate("a1", "214", "Juniors", 13.90),
            new Candidate("b1", "087", "Juniors", 14.20),
            new Candidate("a2", "214", "Juniors", 14.02),
            new Candidate("c1", "131", "", 12.00),
            new Candidate("a3", "214", "Juniors", 13.50),
            new Candidate("c2", "131", "", 12.00),
            new Candidate("d1", "156", "Seniors", 15.00),
            new Candidate("e1", "042", "Juniors", 13.95)));

    @Test
    void theBestOfEachAthleteIsComparedWithTheWorst() {
        assertEquals(Set.of(new Pair("a2", "a3"), new Pair("c1", "c2")), pairs.bestAndWorst());
    }

    @Test
    void theBestOfATeamIsComparedWithTheBestOfEachOther() {
        assertEquals(List.of(new Pair("b1", "a2"), new Pair("b1", "e1")), List.copyOf(pairs.teamMates()));
    }
}
