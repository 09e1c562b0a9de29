package org.boardtopit.observations;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.clips.Athlete.Sex;

/**
 * The guides of one rule by group of athletes.
 *
 * @param byGroup keys out of {@link #GROUPS}: {@code all}, a level, or a level and a sex such as {@code senior_women}; the
 *     narrowest group counts
 */
public record Guides(Map<String, Guide> byGroup) {
    static final String ALL = "all";
    private static final List<AthleteLevel> LEVELS =
            List.of(AthleteLevel.SENIOR, AthleteLevel.JUNIOR, AthleteLevel.MASTERS);
    private static final String MEN = "_men";
    private static final String WOMEN = "_women";

    /** All groups there are, the widest first. */
    static final List<String> GROUPS = groups();

    public Guides {
        byGroup = Map.copyOf(new LinkedHashMap<>(byGroup));
        for (AthleteLevel level : LEVELS) {
            if (missing(byGroup, level)) {
                throw new IllegalArgumentException("there is no guide for " + level.label());
            }
        }
    }

    private static List<String> groups() {
        List<String> groups = new ArrayList<>(List.of(ALL));
        for (AthleteLevel level : LEVELS) {
            groups.add(level.label());
            groups.add(level.label() + MEN);
            groups.add(level.label() + WOMEN);
        }
        return List.copyOf(groups);
    }

    /** A level without guide in a set of groups. */
    static Optional<String> missing(Map<String, Guide> byGroup) {
        return LEVELS.stream()
                .filter(level -> missing(byGroup, level))
                .map(AthleteLevel::label)
                .findFirst();
    }

    private static boolean missing(Map<String, Guide> byGroup, AthleteLevel level) {
        return !byGroup.containsKey(ALL)
                && !byGroup.containsKey(level.label())
                && !(byGroup.containsKey(level.label() + MEN) && byGroup.containsKey(level.label() + WOMEN));
    }

    /** For an athlete; where the level or the sex is not known, the narrowest guide that holds all that may be meant. */
    Guide at(AthleteLevel level, Optional<Sex> sex) {
        if (level != AthleteLevel.NOT_STATED) {
            return at(level.label(), sex);
        }
        return LEVELS.stream()
                .map(each -> at(each.label(), sex))
                .reduce(Guide::joined)
                .orElseThrow();
    }

    private Guide at(String level, Optional<Sex> sex) {
        if (sex.isPresent()) {
            return ofSex(level, sex.get() == Sex.FEMALE ? WOMEN : MEN);
        }
        return ofSex(level, MEN).joined(ofSex(level, WOMEN));
    }

    private Guide ofSex(String level, String suffix) {
        Guide own = byGroup.get(level + suffix);
        Guide ofLevel = own != null ? own : byGroup.get(level);
        return ofLevel != null ? ofLevel : byGroup.get(ALL);
    }
}
