package org.boardtopit.observations;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Findings by weight, causes before what they set up.
 *
 * <p>A finding takes over the weight of what it set up, so that it comes first; but only when its own weight is at least a third of
 * that: a slight finding does not explain a large one, though it is named. Cause links have no circles (the reader refuses
 * them).
 */
final class CauseOrder {
    /** A first guess, not tuned. */
    private static final double EXPLAINING_SHARE = 1.0 / 3;

    private final Map<String, Finding> byRule = new HashMap<>();
    private final Map<String, Double> pull = new HashMap<>();

    CauseOrder(List<Finding> findings) {
        findings.forEach(f -> byRule.put(f.rule().name(), f));
        findings.forEach(f -> pull.put(f.rule().name(), pull(f, findings)));
    }

    /** The heaviest finding that set up this one. */
    Optional<Finding> cause(Finding finding) {
        return finding.rule().setUpBy().stream()
                .filter(byRule::containsKey)
                .map(byRule::get)
                .max(Comparator.comparingDouble(Finding::weight));
    }

    /** True when a finding has taken over the weight of one that it set up. */
    boolean explainsAHeavierOne(Finding finding) {
        Double taken = pull.get(finding.rule().name());
        return taken != null && taken > finding.weight();
    }

    /** In order; equal ones stay as they are. */
    List<Finding> sorted(List<Finding> findings) {
        return findings.stream()
                .sorted(Comparator.<Finding>comparingDouble(
                                f -> -pull.get(f.rule().name()))
                        .thenComparingInt(this::depth)
                        .thenComparingDouble(f -> -f.weight()))
                .toList();
    }

    private double pull(Finding finding, List<Finding> all) {
        double most = finding.weight();
        for (Finding other : all) {
            if (other.rule().setUpBy().contains(finding.rule().name())) {
                double of = pull(other, all);
                most = finding.weight() >= EXPLAINING_SHARE * of ? Math.max(most, of) : most;
            }
        }
        return most;
    }

    private int depth(Finding finding) {
        return finding.rule().setUpBy().stream()
                .filter(byRule::containsKey)
                .mapToInt(name -> 1 + depth(byRule.get(name)))
                .max()
                .orElse(0);
    }
}
