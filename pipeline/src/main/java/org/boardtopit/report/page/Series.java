package org.boardtopit.report.page;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.boardtopit.report.tables.AttemptRow;

/**
 * The attempts of one athlete, in their order.
 *
 * @param number place among the athletes of the page, from 1
 * @param attempts at least one
 * @param mayBeNamed false for minors, whose pictures are on the page: no name stands with a picture of theirs
 */
record Series(int number, List<Attempt> attempts, boolean mayBeNamed) {

    Series {
        attempts = List.copyOf(attempts);
        if (attempts.isEmpty()) {
            throw new IllegalArgumentException("a series needs an attempt");
        }
    }

    private AttemptRow first() {
        return attempts.get(0).row();
    }

    /** Empty text when the sheet has none. */
    String bib() {
        return first().bib() == null ? "" : first().bib();
    }

    /** As the tables have it, a pseudonym where they have one; empty text when there is none or it may not be told. */
    String athlete() {
        return first().athlete() == null || !mayBeNamed ? "" : first().athlete();
    }

    /** True for the best of several. */
    boolean isBest(Attempt attempt) {
        return attempts.size() > 1
                && best().filter(best -> best.number() == attempt.number()).isPresent();
    }

    /** Those with a distance that counts. */
    List<Attempt> withDistance() {
        return attempts.stream().filter(Attempt::hasDistance).toList();
    }

    /** Of two of the same distance the earlier. */
    Optional<Attempt> best() {
        return withDistance().stream()
                .max(Comparator.comparingDouble(
                                (Attempt attempt) -> attempt.row().officialM())
                        .thenComparing(
                                Comparator.comparingInt(attempts::indexOf).reversed()));
    }

    List<Attempt> tripleJumps() {
        return attempts.stream().filter(Attempt::isTripleJump).toList();
    }
}
