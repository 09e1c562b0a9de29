package org.boardtopit.contacts;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.boardtopit.clips.Pattern;
import org.boardtopit.clips.Pattern.Flight;
import org.boardtopit.clips.TakeoffFoot;

/**
 * Chooses among the candidates the contacts of a drill whose pattern is known.
 *
 * <p>Method: dynamic programming over candidates and places of the pattern, maximising a sum of log likelihoods: support and
 * flight times of drills, wide ones (supports of 0.1 to 0.5 s, flights of 0.1 to 0.8 s; common practice, no source), feet, and a
 * cost for each candidate that is left unexplained between the first contact and the last. A wrong foot costs but is not
 * forbidden, as in {@link SequenceDecoder}; where the costs of what does not fit are too large for the length of the pattern,
 * there is no answer. How sure a contact is tells the best order without it: a pattern that fits at two places of a clip is
 * not sure of any.
 */
final class PatternDecoder {
    private static final double WRONG_FOOT = 8;
    private static final double UNEXPLAINED = 4;
    private static final double BESIDE = 0.3; // a touch of the other foot during a support
    /** Of a landing on both; the far foot may be hidden. */
    private static final double OTHER_FOOT_MISSING = 2.5;
    /** Of a contact on one foot: the other comes down with it and stays as long. */
    private static final double OTHER_FOOT_TOO = 6;

    private static final double TOGETHER_S = 0.06;
    /** Who lands on both feet stays; after a contact on one foot nobody does for so long. */
    private static final double STAYS_S = 0.5;

    private static final double STAYS_TO_LAST_S = 0.35;
    private static final double NOT_FROM_A_STRIDE = 2;
    /** Of each contact of a skip, so that all are taken that fit. */
    private static final double EXPLAINED = 3;
    /** What does not fit may cost as much: less than one plain contact that the pattern does not have, where it is short. */
    private static final double MOST_MISFIT = 3.5;

    private static final double MOST_MISFIT_PER_CONTACT = 0.75;
    /** A shorter pattern with a wrong foot may as well be another pattern. */
    private static final int FEWEST_PER_WRONG_FOOT = 6;

    private static final int FEWEST_OF_A_SKIP = 4;
    /** One hop between strides is no skip, as the hop of a triple jump is none. */
    private static final int FEWEST_HOPS_OF_A_SKIP = 2;

    private static final double SUPPORT_S = 0.19;
    private static final double SUPPORT_LOG_SD = 0.45;
    private static final double FLIGHT_LOG_SD = 0.5;
    private static final double SHORTEST_FLIGHT_S = 0.02; // rough ends of candidates are off by some hundredths
    private static final double LONGEST_FLIGHT_S = 1.0;
    private static final double LONGEST_STRIDE_FLIGHT_S = 0.28;
    private static final double LONGEST_PAUSE_S = 0.6;
    /** A skip on the spot may come down a little behind where it left. */
    private static final double BACKWARDS_STATURE = 0.15;

    /**
     * The chosen candidates.
     *
     * @param approach running strides before the pattern, in time order
     * @param contacts those of the pattern
     * @param feet what the pattern says of each
     * @param margins by how much the best order without each is worse, in log likelihood
     * @param wrongFeet how many were seen on the other foot
     */
    record Found(
            List<Candidate> approach, List<Candidate> contacts, List<Foot> feet, List<Double> margins, int wrongFeet) {

        /** By how much any other choice is worse; a skip may always end earlier or begin later. */
        double margin(boolean open) {
            int n = margins.size();
            return margins.subList(open ? 1 : 0, open ? n - 1 : n).stream()
                    .mapToDouble(m -> m)
                    .min()
                    .orElse(0);
        }
    }

    /** A contact that the pattern has, and which may come next. */
    private record Place(Foot foot, boolean first, boolean last, Flight flight, List<Integer> next) {}

    private record Path(List<Integer> candidates, List<Integer> places, double score) {}

    private final Pattern pattern;
    private final List<Place> places;
    private final double statureM;

    /**
     * For one clip.
     *
     * @param first foot of the first contact, where the sheet tells it
     */
    PatternDecoder(Pattern pattern, Optional<TakeoffFoot> first, double statureM) {
        this.pattern = pattern;
        this.places = pattern.isSkip() ? skip() : chains(pattern, first);
        this.statureM = statureM;
    }

    private static List<Place> skip() {
        List<Place> places = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Foot foot = i < 2 ? Foot.RIGHT : Foot.LEFT;
            places.add(new Place(foot, true, true, Flight.SKIP, List.of((i + 1) % 4)));
        }
        return places;
    }

    private static List<Place> chains(Pattern pattern, Optional<TakeoffFoot> first) {
        List<Place> places = new ArrayList<>();
        for (List<Pattern.Feet> order : pattern.orders(first)) {
            int last = order.size() - 1;
            for (int i = 0; i <= last; i++) {
                places.add(new Place(
                        foot(order.get(i)),
                        i == 0,
                        i == last,
                        pattern.flights().get(Math.min(i, last - 1)),
                        i == last ? List.of() : List.of(places.size() + 1)));
            }
        }
        return places;
    }

    private static Foot foot(Pattern.Feet feet) {
        return switch (feet) {
            case LEFT -> Foot.LEFT;
            case RIGHT -> Foot.RIGHT;
            case BOTH -> Foot.BOTH;
        };
    }

    /** The contacts of the pattern; empty when nothing fits it. */
    Optional<Found> decode(List<Candidate> candidates) {
        List<Candidate> all = candidates.stream()
                .sorted(Comparator.comparingDouble(Candidate::middleS))
                .toList();
        Search search = new Search(all);
        boolean[] allowed = new boolean[all.size()];
        Arrays.fill(allowed, true);
        Optional<Path> best = search.best(allowed, c -> true, c -> true);
        if (best.isEmpty() || !search.fits(best.get())) {
            return Optional.empty();
        }
        List<Candidate> contacts =
                best.get().candidates().stream().map(all::get).toList();
        List<Double> margins = new ArrayList<>();
        for (int k = 0; k < contacts.size(); k++) {
            boolean end = pattern.isSkip() && (k == 0 || k == contacts.size() - 1);
            // A contact beside a skip is one all the same.
            margins.add(best.get().score() - search.without(contacts, k) + (end ? EXPLAINED : 0));
        }
        Candidate first = contacts.get(0);
        return Optional.of(new Found(
                first.fromFirst() ? List.of() : approach(all, first),
                contacts,
                best.get().places().stream().map(p -> places.get(p).foot()).toList(),
                margins,
                search.wrongFeet(best.get())));
    }

    /** Without a stride that was down when the athlete came into view. */
    private static List<Candidate> approach(List<Candidate> all, Candidate first) {
        return SequenceDecoder.approach(all, first).stream()
                .filter(c -> !c.fromFirst())
                .toList();
    }

    /** Over one clip's candidates, in the order of their middles. */
    private final class Search {
        private final List<Candidate> all;

        Search(List<Candidate> all) {
            this.all = all;
        }

        /**
         * Score of the best order without a contact. A skip may always be shorter, so that of its inner contacts only orders
         * count that still lead from the first to the last.
         */
        double without(List<Candidate> contacts, int k) {
            int n = contacts.size();
            boolean bridged = pattern.isSkip() && k > 0 && k < n - 1;
            boolean[] allowed = new boolean[all.size()];
            for (int i = 0; i < allowed.length; i++) {
                allowed[i] = !all.get(i).overlaps(contacts.get(k));
            }
            Predicate<Candidate> begins = c -> !bridged || c.overlaps(contacts.get(0));
            Predicate<Candidate> ends = c -> !bridged || c.overlaps(contacts.get(n - 1));
            return best(allowed, begins, ends).map(Path::score).orElse(Double.NEGATIVE_INFINITY);
        }

        /** The best order through the candidates that are allowed; the others still have to be explained. */
        Optional<Path> best(boolean[] allowed, Predicate<Candidate> begins, Predicate<Candidate> ends) {
            int n = all.size();
            double[][] score = new double[n][places.size()];
            int[][] before = new int[n][places.size()];
            int[][] placeBefore = new int[n][places.size()];
            for (int c = 0; c < n; c++) {
                for (int p = 0; p < places.size(); p++) {
                    boolean first = allowed[c] && places.get(p).first() && begins.test(all.get(c));
                    score[c][p] = first ? start(c) + node(c, p) : Double.NEGATIVE_INFINITY;
                    before[c][p] = -1;
                }
            }
            for (int c = 0; c < n; c++) {
                for (int p = 0; p < places.size(); p++) {
                    if (score[c][p] > Double.NEGATIVE_INFINITY) {
                        extend(allowed, c, p, score, before, placeBefore);
                    }
                }
            }
            Path best = null;
            for (int c = 0; c < n; c++) {
                for (int p = 0; p < places.size(); p++) {
                    boolean last =
                            places.get(p).last() && score[c][p] > Double.NEGATIVE_INFINITY && ends.test(all.get(c));
                    if (last && (best == null || score[c][p] > best.score())) {
                        Path path = path(c, p, score[c][p], before, placeBefore);
                        best = path.candidates().size() >= fewest() ? path : best;
                    }
                }
            }
            return Optional.ofNullable(best);
        }

        private void extend(boolean[] allowed, int c, int p, double[][] score, int[][] before, int[][] placeBefore) {
            for (int next : places.get(p).next()) {
                for (int d = c + 1; d < all.size(); d++) {
                    if (!allowed[d] || !follows(all.get(c), all.get(d))) {
                        continue;
                    }
                    double s = score[c][p] + edge(c, d, p, next) + node(d, next);
                    if (s > score[d][next]) {
                        score[d][next] = s;
                        before[d][next] = c;
                        placeBefore[d][next] = p;
                    }
                }
            }
        }

        private int fewest() {
            return pattern.isSkip() ? FEWEST_OF_A_SKIP : pattern.flights().size() + 1;
        }

        private Path path(int c, int p, double score, int[][] before, int[][] placeBefore) {
            List<Integer> candidates = new ArrayList<>();
            List<Integer> at = new ArrayList<>();
            int candidate = c;
            int place = p;
            while (candidate >= 0) {
                candidates.add(0, candidate);
                at.add(0, place);
                int earlier = before[candidate][place];
                place = placeBefore[candidate][place];
                candidate = earlier;
            }
            return new Path(candidates, at, score);
        }

        private boolean follows(Candidate a, Candidate b) {
            double flight = b.touchdownS() - a.toeOffS();
            return flight > SHORTEST_FLIGHT_S
                    && flight < LONGEST_FLIGHT_S
                    && b.alongM() > a.alongM() - BACKWARDS_STATURE * statureM;
        }

        /** What comes before the first contact is a running stride, or nothing. */
        private double start(int c) {
            Candidate first = all.get(c);
            if (pattern.isSkip() || first.fromFirst()) {
                return 0;
            }
            for (int i = c - 1; i >= 0; i--) {
                Candidate earlier = all.get(i);
                double flight = first.touchdownS() - earlier.toeOffS();
                if (earlier.overlaps(first) || flight > LONGEST_PAUSE_S) {
                    continue;
                }
                boolean stride = earlier.foot() != first.foot() && flight < LONGEST_STRIDE_FLIGHT_S;
                return stride ? 0 : -NOT_FROM_A_STRIDE * earlier.strength();
            }
            return 0;
        }

        private double node(int c, int p) {
            Candidate contact = all.get(c);
            boolean wholeSeen = !contact.fromFirst() && !contact.toLast();
            boolean lands = places.get(p).foot() == Foot.BOTH && places.get(p).last();
            double support = wholeSeen && !lands
                    ? logNormal(contact.toeOffS() - contact.touchdownS(), SUPPORT_S, SUPPORT_LOG_SD)
                    : -0.5;
            return support
                    + 2 * Math.log(contact.strength())
                    - footCost(contact, places.get(p).foot())
                    + (pattern.isSkip() ? EXPLAINED : 0);
        }

        private double footCost(Candidate contact, Foot expected) {
            Optional<Candidate> other = partner(all, contact);
            if (expected == Foot.BOTH) {
                double lasts = contact.toeOffS() - contact.touchdownS();
                boolean stays = lasts > STAYS_S || (contact.toLast() && lasts > STAYS_TO_LAST_S);
                return other.isPresent() ? 0 : stays ? OTHER_FOOT_MISSING : OTHER_FOOT_TOO;
            }
            double together = contact.fromFirst()
                    ? 0
                    : other.filter(o -> standTogether(o, contact))
                            .map(o -> OTHER_FOOT_TOO * o.strength())
                            .orElse(0.0);
            return together + (contact.foot() == expected ? 0 : WRONG_FOOT);
        }

        private static boolean standTogether(Candidate a, Candidate b) {
            double both = Math.min(a.toeOffS(), b.toeOffS()) - Math.max(a.touchdownS(), b.touchdownS());
            return Math.abs(a.touchdownS() - b.touchdownS()) < TOGETHER_S
                    && both > 0.7 * (b.toeOffS() - b.touchdownS());
        }

        private double edge(int a, int b, int place, int next) {
            double flight = all.get(b).touchdownS() - all.get(a).toeOffS();
            return logNormal(flight, usualFlightS(places.get(place).flight()), FLIGHT_LOG_SD) - between(a, b, next);
        }

        /** Of the candidates after one contact up to the next. */
        private double between(int a, int b, int next) {
            Candidate from = all.get(a);
            Candidate to = all.get(b);
            boolean both = places.get(next).foot() == Foot.BOTH;
            double cost = 0;
            for (int i = a + 1; i < b; i++) {
                Candidate c = all.get(i);
                if (c.overlaps(to)) {
                    cost += both ? 0 : BESIDE;
                } else {
                    cost += c.overlaps(from) ? BESIDE : UNEXPLAINED * c.strength();
                }
            }
            return cost;
        }

        int wrongFeet(Path path) {
            int wrong = 0;
            for (int i = 0; i < path.candidates().size(); i++) {
                Foot expected = places.get(path.places().get(i)).foot();
                wrong += expected != Foot.BOTH
                                && expected != all.get(path.candidates().get(i)).foot()
                        ? 1
                        : 0;
            }
            return wrong;
        }

        private int hops(Path path) {
            int hops = 0;
            for (int i = 1; i < path.places().size(); i++) {
                Foot before = places.get(path.places().get(i - 1)).foot();
                hops += places.get(path.places().get(i)).foot() == before ? 1 : 0;
            }
            return hops;
        }

        boolean fits(Path path) {
            int n = path.candidates().size();
            double misfit = 0;
            for (int i = 0; i < n; i++) {
                int c = path.candidates().get(i);
                int p = path.places().get(i);
                Foot expected = places.get(p).foot();
                // A wrong foot has a rule of its own.
                misfit += footCost(
                        all.get(c),
                        expected == Foot.BOTH ? expected : all.get(c).foot());
                misfit += i == 0 ? 0 : between(path.candidates().get(i - 1), c, p);
            }
            return (!pattern.isSkip() || hops(path) >= FEWEST_HOPS_OF_A_SKIP)
                    && misfit <= Math.max(MOST_MISFIT, MOST_MISFIT_PER_CONTACT * n)
                    && wrongFeet(path) * FEWEST_PER_WRONG_FOOT <= n;
        }
    }

    /** The other foot of a landing on both. */
    static Optional<Candidate> partner(List<Candidate> all, Candidate contact) {
        return all.stream()
                .filter(c -> c.foot() != contact.foot() && c.overlaps(contact))
                .max(Comparator.comparingDouble(c ->
                        Math.min(c.toeOffS(), contact.toeOffS()) - Math.max(c.touchdownS(), contact.touchdownS())));
    }

    /** Middle of what is usual in drills; their spread is a factor of 1.6 (common practice, no source). */
    private static double usualFlightS(Flight flight) {
        return switch (flight) {
            case HOP -> 0.35;
            case STEP -> 0.32;
            case JUMP -> 0.45;
            case SKIP -> 0.22;
        };
    }

    /** Log of the density without its constant, capped so that one odd value does not decide alone. */
    private static double logNormal(double value, double middle, double sd) {
        double z = Math.log(Math.max(1e-3, value) / middle) / sd;
        return Math.max(-6, -0.5 * z * z);
    }
}
