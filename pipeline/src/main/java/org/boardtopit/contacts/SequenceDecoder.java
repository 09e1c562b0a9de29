package org.boardtopit.contacts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Chooses among the candidates the legal order of a triple jump: board and hop landing with the same foot, step landing with
 * the other, then the pit (World Athletics Technical Rules, TR31; from memory).
 *
 * <p>Method: all combinations are scored jointly by a sum of log likelihoods: flight and support times of jumpers from club to
 * elite (biomechanics literature aggregated from memory, medium sure, widened), feet, place of the board, and a cost for each
 * candidate that a combination leaves unexplained. Wrong feet cost but do not forbid, because the network may take one leg
 * for the other through a whole contact.
 */
final class SequenceDecoder {
    private static final double WRONG_FOOT = 5;
    private static final double UNEXPLAINED = 4;
    private static final double NO_PIT = 3;
    private static final double BOARD_CAP = 8;
    /** Flight of a running stride (common practice, no source). */
    private static final double STRIDE_FLIGHT_S = 0.12;

    private static final double STRIDE_FLIGHT_SD_S = 0.05;

    /** The chosen candidates; pit may be absent, the approach is in time order. */
    record Sequence(
            List<Candidate> approach,
            Candidate board,
            Candidate hopLanding,
            Candidate stepLanding,
            Optional<Candidate> pit,
            double score,
            double margin) {

        /** The take-off foot: two of the three contacts decide. */
        Foot takeoffFoot() {
            int left = (board.foot() == Foot.LEFT ? 1 : 0)
                    + (hopLanding.foot() == Foot.LEFT ? 1 : 0)
                    + (stepLanding.foot() == Foot.RIGHT ? 1 : 0);
            return left >= 2 ? Foot.LEFT : Foot.RIGHT;
        }

        boolean feetAgree() {
            return board.foot() == hopLanding.foot()
                    && stepLanding.foot() == board.foot().other();
        }
    }

    private final boolean metresFromBoard;
    private final Optional<Foot> expectedFoot;
    private final double statureM;

    /**
     * For one clip.
     *
     * @param metresFromBoard true when the candidates' places count from the take-off line
     * @param expectedFoot take-off foot of the sheet
     */
    SequenceDecoder(boolean metresFromBoard, Optional<Foot> expectedFoot, double statureM) {
        this.metresFromBoard = metresFromBoard;
        this.expectedFoot = expectedFoot;
        this.statureM = statureM;
    }

    /** The best sequence; empty when no three candidates can be one, or when running strides explain them better. */
    Optional<Sequence> decode(List<Candidate> candidates) {
        Sequence chosen = null;
        for (Candidate board : candidates) {
            for (Candidate hop : candidates) {
                for (Candidate step : candidates) {
                    if (!follows(board, hop) || !follows(hop, step)) {
                        continue;
                    }
                    Optional<Candidate> pit = pit(candidates, step);
                    double score = score(candidates, board, hop, step, pit);
                    if (chosen == null || score > chosen.score()) {
                        chosen = new Sequence(List.of(), board, hop, step, pit, score, 0);
                    }
                }
            }
        }
        if (chosen == null) {
            return Optional.empty();
        }
        double overStrides = chosen.score() - strides(candidates, chosen);
        if (overStrides <= 0) {
            return Optional.empty(); // a run through the pit
        }
        return Optional.of(new Sequence(
                approach(candidates, chosen.board()),
                chosen.board(),
                chosen.hopLanding(),
                chosen.stepLanding(),
                chosen.pit(),
                chosen.score(),
                Math.min(overStrides, rivalMargin(candidates, chosen))));
    }

    /** How well running strides, each from the other foot, explain what lies from the board contact to the last one. */
    private static double strides(List<Candidate> candidates, Sequence chosen) {
        double end = chosen.pit().orElse(chosen.stepLanding()).middleS();
        List<Candidate> steps = candidates.stream()
                .filter(c -> c.middleS() >= chosen.board().middleS() && c.middleS() <= end)
                .sorted(Comparator.comparingDouble(Candidate::middleS))
                .toList();
        double score = 0;
        for (int i = 1; i < steps.size(); i++) {
            Candidate a = steps.get(i - 1);
            Candidate b = steps.get(i);
            score += normal(b.touchdownS() - a.toeOffS(), STRIDE_FLIGHT_S, STRIDE_FLIGHT_SD_S);
            score -= a.foot() == b.foot() ? WRONG_FOOT : 0;
        }
        return score;
    }

    /** By how much the best sequence with another board contact is worse. */
    private double rivalMargin(List<Candidate> candidates, Sequence chosen) {
        double rival = Double.NEGATIVE_INFINITY;
        for (Candidate board : candidates) {
            if (Math.abs(board.middleS() - chosen.board().middleS()) < 0.08) {
                continue;
            }
            for (Candidate hop : candidates) {
                for (Candidate step : candidates) {
                    if (follows(board, hop) && follows(hop, step)) {
                        rival = Math.max(rival, score(candidates, board, hop, step, pit(candidates, step)));
                    }
                }
            }
        }
        return chosen.score() - rival;
    }

    private static boolean follows(Candidate first, Candidate next) {
        double flight = next.touchdownS() - first.toeOffS();
        return flight > 0.12 && flight < 1.1 && next.alongM() > first.alongM();
    }

    /** The first candidate of either foot after a jump's flight; both feet land together. */
    private static Optional<Candidate> pit(List<Candidate> candidates, Candidate step) {
        return candidates.stream()
                .filter(c -> c.touchdownS() - step.toeOffS() > 0.28
                        && c.touchdownS() - step.toeOffS() < 1.2
                        && c.alongM() > step.alongM())
                .min((a, b) -> Double.compare(a.touchdownS(), b.touchdownS()));
    }

    private double score(List<Candidate> all, Candidate board, Candidate hop, Candidate step, Optional<Candidate> pit) {
        double score = normal(hop.touchdownS() - board.toeOffS(), 0.45, 0.11)
                + normal(step.touchdownS() - hop.toeOffS(), 0.36, 0.10)
                + normal(hop.alongM() - board.alongM(), 2.8 * statureM, 0.7 * statureM)
                + normal(step.alongM() - hop.alongM(), 2.2 * statureM, 0.7 * statureM);
        for (Candidate c : List.of(board, hop, step)) {
            score += normal(c.toeOffS() - c.touchdownS(), 0.14, 0.05) + 2 * Math.log(c.strength());
        }
        score -= board.foot() == hop.foot() ? 0 : WRONG_FOOT;
        score -= step.foot() == board.foot() || step.foot() == hop.foot() ? WRONG_FOOT : 0;
        score -= expectedFoot.isPresent() && expectedFoot.get() != board.foot() ? WRONG_FOOT : 0;
        score += pit.map(p -> normal(p.touchdownS() - step.toeOffS(), 0.60, 0.14))
                .orElse(-NO_PIT);
        if (metresFromBoard) {
            // Athletes hit the board or miss it by a few decimetres; a foul goes a little beyond the line.
            score += Math.max(-BOARD_CAP, normal(board.alongM(), -0.15, 0.25));
        }
        score += lastStride(all, board);
        double end = pit.map(Candidate::touchdownS).orElse(step.toeOffS() + 0.4);
        for (Candidate c : all) {
            boolean used = c.equals(board) || c.equals(hop) || c.equals(step);
            if (!used && c.middleS() > board.middleS() && c.middleS() < end) {
                score -= overlapsUsed(c, board, hop, step) ? 0.3 : UNEXPLAINED * c.strength();
            }
        }
        return score;
    }

    private static boolean overlapsUsed(Candidate c, Candidate... used) {
        for (Candidate u : used) {
            if (c.overlaps(u)) {
                return true;
            }
        }
        return false;
    }

    /** The stride before the board is a run's: a short flight from the other foot. */
    private static double lastStride(List<Candidate> all, Candidate board) {
        return before(all, board)
                .map(c -> normal(board.touchdownS() - c.toeOffS(), STRIDE_FLIGHT_S, STRIDE_FLIGHT_SD_S)
                        - (c.foot() == board.foot() ? 2 : 0))
                .orElse(-2.0);
    }

    private static Optional<Candidate> before(List<Candidate> all, Candidate contact) {
        return all.stream()
                .filter(c -> c.middleS() < contact.middleS() - 0.1 && contact.touchdownS() - c.toeOffS() < 0.35)
                .max((a, b) -> Double.compare(a.middleS(), b.middleS()));
    }

    /** Back from the board: each contact from the other foot, a running stride earlier; one that was missed is bridged. */
    static List<Candidate> approach(List<Candidate> all, Candidate board) {
        List<Candidate> strides = new ArrayList<>();
        Candidate later = board;
        while (true) {
            Candidate next = later;
            Optional<Candidate> earlier = latest(all, next, next.foot().other(), 0.14, 0.42)
                    .or(() -> latest(all, next, next.foot(), 0.36, 0.62));
            if (earlier.isEmpty()) {
                return strides;
            }
            strides.add(0, earlier.get());
            later = earlier.get();
        }
    }

    private static Optional<Candidate> latest(
            List<Candidate> all, Candidate next, Foot foot, double leastS, double mostS) {
        return all.stream()
                .filter(c -> c.foot() == foot)
                .filter(c -> next.middleS() - c.middleS() > leastS && next.middleS() - c.middleS() < mostS)
                .filter(c -> c.alongM() < next.alongM())
                .max(Comparator.comparingDouble(Candidate::middleS));
    }

    /** Log of a normal density without its constant, capped so that one odd value does not decide alone. */
    private static double normal(double value, double mean, double sd) {
        double z = (value - mean) / sd;
        return Math.max(-12, -0.5 * z * z);
    }
}
