package org.boardtopit.subject;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.subject.SubjectTrack.Square;

/**
 * Chooses among the people in view the one who comes towards the camera, or goes away from it: the chain of sightings whose
 * size changes most, the right way and as smoothly as a runner's does.
 *
 * <p>Method: our own; dynamic programming over sightings. A chain's score is {@value #WORTH_REWARD} of the sum of
 * the sightings' worth, plus {@value #GROWTH_REWARD} times the growth of the logarithm of the size from its first to its last sighting (negative for one
 * who should go away), less what its jumps cost. Officials and bystanders do not grow; a walker grows little. Fails when two
 * people run side by side.
 */
final class OncomingChoice {
    private static final double GROWTH_REWARD = 60;
    /** Longest time without a sighting, as when an official's arm hides the athlete. */
    private static final double LONGEST_GAP_S = 0.5;

    private static final double GAP_COST_PER_S = 20;
    /** Steps of a chain that change by more than this many times the usual are none. */
    private static final double LARGEST_STEP = 1.5;
    /** So much that who stands still and moves all the time does not outweigh who comes. */
    private static final double WORTH_REWARD = 0.3;

    /** Growth from which on somebody comes: nearer by a sixth. */
    private static final double LEAST_GROWTH = 0.2;

    private static final int FEWEST = 6;
    private static final int USUAL_SIZE_OF = 5;

    private final List<SightedPerson> people;
    private final int sign;

    /**
     * A choice to make.
     *
     * @param people in the order of time
     * @param sign +1 when the athlete comes nearer, -1 when the athlete goes away
     */
    OncomingChoice(List<SightedPerson> people, int sign) {
        this.people = List.copyOf(people);
        this.sign = sign;
    }

    /** The sightings of the athlete; none when nobody comes. */
    List<SightedPerson> chosen() {
        int n = people.size();
        double[] score = new double[n];
        int[] from = new int[n];
        int best = -1;
        for (int i = 0; i < n; i++) {
            double own = WORTH_REWARD * people.get(i).worth();
            score[i] = own;
            from[i] = -1;
            for (int j = i - 1; j >= 0; j--) {
                double dt = people.get(i).timeS() - people.get(j).timeS();
                if (dt > LONGEST_GAP_S) {
                    break;
                }
                double gain = dt > 0 ? gain(people.get(j), people.get(i), dt) : Double.NEGATIVE_INFINITY;
                if (score[j] + gain + own > score[i]) {
                    score[i] = score[j] + gain + own;
                    from[i] = j;
                }
            }
            best = best < 0 || score[i] > score[best] ? i : best;
        }
        return accepted(chain(from, best));
    }

    private List<SightedPerson> chain(int[] from, int last) {
        List<SightedPerson> chain = new ArrayList<>();
        for (int i = last; i >= 0; i = from[i]) {
            chain.add(0, people.get(i));
        }
        return chain;
    }

    private List<SightedPerson> accepted(List<SightedPerson> chain) {
        if (chain.size() < FEWEST) {
            return List.of();
        }
        int n = chain.size();
        double growth = sign
                * Math.log(usualStature(chain.subList(n - USUAL_SIZE_OF, n))
                        / usualStature(chain.subList(0, USUAL_SIZE_OF)));
        return growth < LEAST_GROWTH ? List.of() : extended(chain);
    }

    private static double usualStature(List<SightedPerson> sightings) {
        return OrderStatistics.median(
                sightings.stream().mapToDouble(SightedPerson::fixedStaturePx).toArray());
    }

    /** On through the landing, where the body folds and looks smaller, with the size it had before. */
    private List<SightedPerson> extended(List<SightedPerson> chain) {
        int n = chain.size();
        double stature = OrderStatistics.median(chain.subList(Math.max(0, n - USUAL_SIZE_OF), n).stream()
                .mapToDouble(p -> p.body().sidePx())
                .toArray());
        List<SightedPerson> longer = new ArrayList<>(chain);
        SightedPerson end = chain.get(n - 1);
        for (int i = people.indexOf(end) + 1; i < people.size(); i++) {
            SightedPerson next = people.get(i);
            double dt = next.timeS() - end.timeS();
            if (dt > 0 && dt <= LONGEST_GAP_S && isNear(end, next, dt)) {
                Square body = new Square(next.body().centreXPx(), next.body().centreYPx(), stature);
                longer.add(next.withBody(body));
                end = next;
            }
        }
        return longer;
    }

    private static boolean isNear(SightedPerson a, SightedPerson b, double dt) {
        double size = Math.max(a.fixedStaturePx(), b.fixedStaturePx());
        return sidewaysStep(a, b, dt, size) < 1.5 && upwardsStep(a, b, dt, size) < 1.5;
    }

    private static double sidewaysStep(SightedPerson a, SightedPerson b, double dt, double size) {
        return Math.abs(b.fixed().x() - a.fixed().x()) / size / (1.2 * dt + 0.1);
    }

    private static double upwardsStep(SightedPerson a, SightedPerson b, double dt, double size) {
        return Math.abs(b.fixed().y() - a.fixed().y()) / size / (2.5 * dt + 0.1);
    }

    /**
     * What going from one sighting to the next adds: growth less cost. Usual steps, in standing heights: sideways 1.2 a
     * second, up and down 2.5 a second (a jump), in the logarithm of the size 1 a second (10 m/s, 10 m away), each with some
     * room for the detector's own error; a first guess, not tuned.
     */
    private double gain(SightedPerson a, SightedPerson b, double dt) {
        double size = Math.sqrt(a.fixedStaturePx() * b.fixedStaturePx());
        double sideways = sidewaysStep(a, b, dt, size);
        double upwards = upwardsStep(a, b, dt, size);
        double growth = Math.log(b.fixedStaturePx() / a.fixedStaturePx());
        double growing = Math.abs(growth) / (dt + 0.1);
        if (Math.max(sideways, Math.max(upwards, growing)) > LARGEST_STEP) {
            return Double.NEGATIVE_INFINITY;
        }
        return GROWTH_REWARD * sign * growth
                - 0.3 * (sideways * sideways + upwards * upwards + growing * growing)
                - GAP_COST_PER_S * Math.max(0, dt - 1.2 / AthleteTracker.LOOKS_PER_S);
    }
}
