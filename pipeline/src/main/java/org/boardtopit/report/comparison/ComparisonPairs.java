package org.boardtopit.report.comparison;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/** Chooses which attempts of a competition are worth a comparison. Pure; the same attempts give the same pairs in the same order. */
public final class ComparisonPairs {
    private final List<Candidate> candidates;

    /**
     * A measured, valid attempt.
     *
     * @param clip name of its clip
     * @param athlete tells one from the others; not blank
     * @param team blank for one of no team
     * @param distanceM what attempts are ordered by
     */
    public record Candidate(String clip, String athlete, String team, double distanceM) {
        public Candidate {
            if (athlete.isBlank() || !Double.isFinite(distanceM)) {
                throw new IllegalArgumentException(
                        "a candidate needs an athlete and a distance, was '" + athlete + "', " + distanceM);
            }
        }
    }

    /**
     * Two attempts to compare, the longer first.
     *
     * @param a name of the clip
     */
    public record Pair(String a, String b) {}

    public ComparisonPairs(List<Candidate> candidates) {
        this.candidates = List.copyOf(candidates);
    }

    /** The best attempt of each athlete with the worst; nothing of who has one only. */
    public Set<Pair> bestAndWorst() {
        Set<Pair> pairs = new LinkedHashSet<>();
        for (List<Candidate> own : groups(candidates, Candidate::athlete)) {
            if (own.size() > 1) {
                pairs.add(new Pair(own.get(0).clip(), own.get(own.size() - 1).clip()));
            }
        }
        return pairs;
    }

    /** The best attempt of each team with the best one of each of its other athletes. */
    public Set<Pair> teamMates() {
        List<Candidate> bests = groups(candidates, Candidate::athlete).stream()
                .map(own -> own.get(0))
                .filter(best -> !best.team().isBlank())
                .toList();
        Set<Pair> pairs = new LinkedHashSet<>();
        for (List<Candidate> team : groups(bests, Candidate::team)) {
            for (Candidate mate : team.subList(1, team.size())) {
                pairs.add(new Pair(team.get(0).clip(), mate.clip()));
            }
        }
        return pairs;
    }

    /** In the order in which they first come; in each the longest attempt first, of two as long the earlier. */
    private static List<List<Candidate>> groups(List<Candidate> all, Function<Candidate, String> by) {
        Map<String, List<Candidate>> groups = new LinkedHashMap<>();
        all.forEach(one -> groups.computeIfAbsent(by.apply(one), unused -> new ArrayList<>())
                .add(one));
        groups.values().forEach(group -> group.sort(Comparator.comparingDouble(one -> -one.distanceM())));
        return List.copyOf(groups.values());
    }
}
