package org.boardtopit.season;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Knows athletes again from one competition to the next, and never by guessing: what is not certain stays apart and is told.
 *
 * <ol>
 *   <li>Who has the same id is the same, whatever the name and the bib.
 *   <li>Who has the same name is the same, if nothing speaks against it: two of the name in one competition, two years of birth,
 *       two ids. If something does, only those are joined who also have the same year of birth.
 *   <li>Bibs change from one competition to the next; they join only those without a name, and only when the user says that
 *       they stay.
 * </ol>
 */
public final class AthleteJoin {
    private final boolean bibsStay;
    private final List<String> notices = new ArrayList<>();
    private List<Entrant> entrants = List.of();
    private int[] leader = {};
    private JoinedBy[] weakest = {};

    /**
     * A join.
     *
     * @param bibsStay true when a bib belongs to one athlete for the whole season
     */
    public AthleteJoin(boolean bibsStay) {
        this.bibsStay = bibsStay;
    }

    /** What is worth knowing about who was joined and who was not. */
    public List<String> notices() {
        return List.copyOf(notices);
    }

    /** The athletes, in the order of their names. */
    public List<SeasonAthlete> join(List<Entrant> all) {
        entrants = all.stream().sorted(Comparator.comparing(Entrant::date)).toList();
        leader = new int[entrants.size()];
        weakest = new JoinedBy[entrants.size()];
        for (int i = 0; i < leader.length; i++) {
            leader[i] = i;
            weakest[i] = JoinedBy.NOTHING;
        }
        groups(Entrant::id).values().forEach(this::joinById);
        groups(Entrant::name).values().forEach(this::joinByName);
        if (bibsStay) {
            groups(Entrant::bib).values().forEach(this::joinByBib);
        }
        tellOfLikeNames();
        tellOfTheNameless();
        return athletes();
    }

    /** Numbers of the entrants that have something in common. */
    private Map<String, List<Integer>> groups(Function<Entrant, String> of) {
        Map<String, List<Integer>> groups = new TreeMap<>();
        for (int i = 0; i < entrants.size(); i++) {
            String common = of.apply(entrants.get(i));
            if (!common.isEmpty()) {
                groups.computeIfAbsent(common, unused -> new ArrayList<>()).add(i);
            }
        }
        return groups;
    }

    private void joinById(List<Integer> same) {
        Set<String> names = values(same, Entrant::name);
        if (names.size() > 1) {
            notices.add("the id " + entrants.get(same.get(0)).id() + " has the names " + String.join(", ", names)
                    + "; taken as one athlete");
        }
        same.forEach(i -> join(same.get(0), i, JoinedBy.ID));
    }

    private void joinByName(List<Integer> same) {
        if (isOne(same)) {
            same.forEach(i -> join(same.get(0), i, by(same)));
            return;
        }
        Map<Integer, List<Integer>> byYear = new TreeMap<>();
        for (int i : same) {
            Integer born = entrants.get(i).born();
            if (born != null) {
                byYear.computeIfAbsent(born, unused -> new ArrayList<>()).add(i);
            }
        }
        for (List<Integer> year : byYear.values()) {
            if (isOne(year)) {
                year.forEach(i -> join(year.get(0), i, JoinedBy.NAME_AND_BORN));
            }
        }
        boolean apart = same.stream().map(this::leaderOf).distinct().count() > 1;
        if (apart) {
            notices.add("there is more than one " + entrants.get(same.get(0)).name()
                    + ", or nothing says that it is one: kept apart are "
                    + same.stream().map(i -> entrants.get(i).inWords()).collect(Collectors.joining("; "))
                    + ". The key athletes.id in meet.yaml, or born, says who is who");
        }
    }

    /** Nothing speaks against their being the same athlete. */
    private boolean isOne(List<Integer> same) {
        Set<Object> years = new TreeSet<>();
        Set<Object> ids = new TreeSet<>();
        for (int i : same) {
            // What an id has joined counts with all that is known of it.
            for (int k = 0; k < entrants.size(); k++) {
                if (leaderOf(k) == leaderOf(i)) {
                    Entrant entrant = entrants.get(k);
                    if (entrant.born() != null) {
                        years.add(entrant.born());
                    }
                    if (!entrant.id().isEmpty()) {
                        ids.add(entrant.id());
                    }
                }
            }
        }
        return years.size() <= 1 && ids.size() <= 1 && !isTwiceInAFolder(same);
    }

    private boolean isTwiceInAFolder(List<Integer> same) {
        long folders =
                same.stream().map(i -> entrants.get(i).folder()).distinct().count();
        return folders < same.size();
    }

    private JoinedBy by(List<Integer> same) {
        return same.stream().allMatch(i -> entrants.get(i).born() != null) ? JoinedBy.NAME_AND_BORN : JoinedBy.NAME;
    }

    private void joinByBib(List<Integer> same) {
        List<Integer> nameless =
                same.stream().filter(i -> entrants.get(i).name().isEmpty()).toList();
        if (nameless.isEmpty()) {
            return;
        }
        Set<String> names = values(same, Entrant::name);
        if (names.size() > 1 || !isOne(same)) {
            notices.add("bib " + entrants.get(same.get(0)).bib() + " was not that of one athlete only; kept apart");
            return;
        }
        same.forEach(i -> join(same.get(0), i, JoinedBy.BIB));
    }

    private Set<String> values(List<Integer> numbers, Function<Entrant, String> of) {
        return numbers.stream()
                .map(i -> of.apply(entrants.get(i)))
                .filter(text -> !text.isEmpty())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private void join(int a, int b, JoinedBy by) {
        int first = leaderOf(a);
        int second = leaderOf(b);
        if (first == second) {
            return;
        }
        JoinedBy least = by;
        for (int one : new int[] {first, second}) {
            if (weakest[one] != JoinedBy.NOTHING && weakest[one].compareTo(least) > 0) {
                least = weakest[one];
            }
        }
        leader[Math.max(first, second)] = Math.min(first, second);
        weakest[Math.min(first, second)] = least;
    }

    private int leaderOf(int i) {
        int one = i;
        while (leader[one] != one) {
            one = leader[one];
        }
        return one;
    }

    /** Kept apart and told: a slip of the pen is likely, and only the user knows. */
    private void tellOfLikeNames() {
        Map<String, Set<String>> byPlain = new TreeMap<>();
        for (Entrant entrant : entrants) {
            byPlain.computeIfAbsent(plain(entrant.name()), unused -> new TreeSet<>())
                    .add(entrant.name());
        }
        byPlain.values().stream()
                .filter(names -> names.size() > 1)
                .forEach(names -> notices.add(String.join(" and ", names)
                        + " are written differently and not joined by name; athletes.id would join them"));
    }

    private static String plain(String name) {
        return Normalizer.normalize(name, Normalizer.Form.NFD)
                .replaceAll("[^\\p{L}\\p{N}]", "")
                .toLowerCase(Locale.ROOT);
    }

    private void tellOfTheNameless() {
        List<Entrant> alone = new ArrayList<>();
        for (int i = 0; i < entrants.size(); i++) {
            boolean nothing = weakest[leaderOf(i)] == JoinedBy.NOTHING;
            if (nothing
                    && entrants.get(i).name().isEmpty()
                    && entrants.get(i).id().isEmpty()) {
                alone.add(entrants.get(i));
            }
        }
        if (!alone.isEmpty()) {
            notices.add(alone.size()
                    + " appearances have neither a name nor an id that means something in another competition, and are"
                    + " joined with nothing, beginning with " + alone.get(0).inWords()
                    + (bibsStay ? "" : "; --bibs-stay joins by bib"));
        }
    }

    private List<SeasonAthlete> athletes() {
        Map<Integer, List<Entrant>> byLeader = new LinkedHashMap<>();
        for (int i = 0; i < entrants.size(); i++) {
            byLeader.computeIfAbsent(leaderOf(i), unused -> new ArrayList<>()).add(entrants.get(i));
        }
        Map<String, Long> uses =
                byLeader.values().stream().collect(Collectors.groupingBy(AthleteJoin::label, Collectors.counting()));
        List<SeasonAthlete> athletes = new ArrayList<>();
        Set<String> taken = new TreeSet<>();
        byLeader.forEach((one, appearances) -> {
            String label = label(appearances);
            if (uses.get(label) > 1) {
                label = told(label, appearances);
            }
            String free = label;
            for (int n = 2; !taken.add(free); n++) {
                free = label + " #" + n;
            }
            athletes.add(new SeasonAthlete(free, weakest[one], appearances));
        });
        athletes.sort(Comparator.comparing(SeasonAthlete::label));
        return List.copyOf(athletes);
    }

    /** What the latest competition calls the athlete. */
    private static String label(List<Entrant> appearances) {
        Entrant last = appearances.get(appearances.size() - 1);
        return last.shown().isEmpty() ? "bib " + last.bib() : last.shown();
    }

    private static String told(String label, List<Entrant> appearances) {
        return appearances.stream()
                .map(Entrant::born)
                .filter(Objects::nonNull)
                .findFirst()
                .map(born -> label + " (" + born + ")")
                .orElseGet(() ->
                        label + " (" + appearances.get(appearances.size() - 1).date() + ")");
    }
}
