package org.boardtopit.report.comparison;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.ContactKind;

/**
 * Which instant of attempt B is shown with which of attempt A.
 *
 * <p>Stretched: straight lines between the touchdowns and toe-offs that both attempts have, so that these coincide; before the
 * first and after the last of them B goes at its own pace. An end that one clip lacks is passed over, and the next that
 * both have counts. In true time: B goes at its own pace throughout, and only the touchdown on the board coincides (or the first
 * touchdown that both have). A goes at its own pace either way.
 *
 * <p>Contacts of the approach are counted backwards from the board. Where the strides no longer fit (one clip lacks a contact),
 * those before go at their own pace.
 */
public final class TimeAlignment {
    /** Strides of two approaches that differ by more than this factor are not the same stride; a contact is missing (a first guess). */
    private static final double MOST_STRIDE_RATIO = 1.4;

    private static final double SMOOTH_FPS = 60;
    private static final double MOST_FPS = 120;

    /** Two instants that are nearer than this are one: no picture fits between them. */
    private static final double LEAST_APART_S = 0.004;

    /**
     * An instant that is shown at once.
     *
     * @param aS when it is in the first clip
     * @param bS when it is in the second
     */
    public record Anchor(KeyInstant instant, double aS, double bS) {}

    private final List<Anchor> anchors;
    private final double startS;
    private final double endS;

    private TimeAlignment(List<Anchor> anchors, AttemptInstants a, AttemptInstants b) {
        this.anchors = List.copyOf(anchors);
        startS = Math.max(a.firstS(), aAt(b.firstS()));
        endS = Math.min(a.lastS(), aAt(b.lastS()));
    }

    /**
     * With the phases of B stretched to those of A.
     *
     * @return empty when the two have no touchdown in common, or are never to be seen together
     */
    public static Optional<TimeAlignment> stretched(AttemptInstants a, AttemptInstants b) {
        return of(common(a, b), a, b);
    }

    /** Of two measured attempts, in true time or stretched; empty as below. */
    public static Optional<TimeAlignment> of(ComparedAttempt a, ComparedAttempt b, boolean trueTime) {
        return trueTime ? trueTime(a.instants(), b.instants()) : stretched(a.instants(), b.instants());
    }

    /** In true time from one common touchdown; empty as above. */
    public static Optional<TimeAlignment> trueTime(AttemptInstants a, AttemptInstants b) {
        List<Anchor> common = common(a, b);
        List<Anchor> first = common.stream()
                .filter(anchor -> anchor.instant().beginsPhase())
                .limit(1)
                .toList();
        return of(first, a, b);
    }

    private static Optional<TimeAlignment> of(List<Anchor> anchors, AttemptInstants a, AttemptInstants b) {
        if (anchors.stream().noneMatch(anchor -> anchor.instant().beginsPhase())) {
            return Optional.empty();
        }
        TimeAlignment alignment = new TimeAlignment(anchors, a, b);
        return alignment.endS > alignment.startS ? Optional.of(alignment) : Optional.empty();
    }

    /** In time order in both. */
    private static List<Anchor> common(AttemptInstants a, AttemptInstants b) {
        List<Anchor> jump = new ArrayList<>();
        List<Anchor> approach = new ArrayList<>();
        for (Map.Entry<KeyInstant, Double> entry : a.seconds().entrySet()) {
            Optional<Double> other = b.at(entry.getKey());
            if (other.isPresent()) {
                boolean before = entry.getKey().kind() == ContactKind.APPROACH;
                (before ? approach : jump).add(new Anchor(entry.getKey(), entry.getValue(), other.get()));
            }
        }
        List<Anchor> all = new ArrayList<>(fittingStrides(approach, jump));
        for (Anchor anchor : jump) {
            if (all.isEmpty() || follows(all.get(all.size() - 1), anchor)) {
                all.add(anchor);
            }
        }
        return all;
    }

    private static boolean follows(Anchor first, Anchor second) {
        return second.aS() - first.aS() >= LEAST_APART_S && second.bS() - first.bS() >= LEAST_APART_S;
    }

    /** Those of the approach from the board backwards, as long as one stride takes about as long as the other. */
    private static List<Anchor> fittingStrides(List<Anchor> approach, List<Anchor> jump) {
        List<Anchor> fitting = new ArrayList<>();
        Optional<Anchor> touchdown =
                jump.stream().filter(anchor -> anchor.instant().touchdown()).findFirst();
        if (touchdown.isEmpty()) {
            return fitting;
        }
        Anchor nextTouchdown = touchdown.get();
        Anchor next = nextTouchdown;
        List<Anchor> backwards = new ArrayList<>(approach);
        backwards.sort(Comparator.comparingDouble(Anchor::aS).reversed());
        for (Anchor anchor : backwards) {
            double ratio = (nextTouchdown.aS() - anchor.aS()) / (nextTouchdown.bS() - anchor.bS());
            if (!follows(anchor, next) || (anchor.instant().touchdown() && !isNearOne(ratio))) {
                break;
            }
            fitting.add(anchor);
            next = anchor;
            nextTouchdown = anchor.instant().touchdown() ? anchor : nextTouchdown;
        }
        while (!fitting.isEmpty() && !fitting.get(fitting.size() - 1).instant().touchdown()) {
            fitting.remove(fitting.size() - 1); // a toe-off whose touchdown did not fit
        }
        Collections.reverse(fitting);
        return fitting;
    }

    private static boolean isNearOne(double ratio) {
        return ratio < MOST_STRIDE_RATIO && ratio > 1 / MOST_STRIDE_RATIO;
    }

    /** What coincides, in time order; one at least. */
    public List<Anchor> anchors() {
        return anchors;
    }

    /** Time in A from which on both are seen. */
    public double startS() {
        return startS;
    }

    /** Time in A up to which both are seen. */
    public double endS() {
        return endS;
    }

    /** The time in B that is shown with a time in A. */
    public double bAt(double aS) {
        return mapped(aS, true);
    }

    /** The time in A that a time in B is shown with. */
    public double aAt(double bS) {
        return mapped(bS, false);
    }

    private double mapped(double t, boolean fromA) {
        Anchor first = anchors.get(0);
        Anchor last = anchors.get(anchors.size() - 1);
        if (t <= from(first, fromA)) {
            return to(first, fromA) + t - from(first, fromA);
        }
        if (t >= from(last, fromA)) {
            return to(last, fromA) + t - from(last, fromA);
        }
        int i = 1;
        while (from(anchors.get(i), fromA) < t) {
            i++;
        }
        Anchor before = anchors.get(i - 1);
        Anchor after = anchors.get(i);
        double share = (t - from(before, fromA)) / (from(after, fromA) - from(before, fromA));
        return to(before, fromA) + share * (to(after, fromA) - to(before, fromA));
    }

    private static double from(Anchor anchor, boolean fromA) {
        return fromA ? anchor.aS() : anchor.bS();
    }

    private static double to(Anchor anchor, boolean fromA) {
        return fromA ? anchor.bS() : anchor.aS();
    }

    /** How many times faster than it was B is shown at a time in A: 1.1 when its phase took a tenth longer. */
    public double paceOfB(double aS) {
        for (int i = 1; i < anchors.size(); i++) {
            Anchor before = anchors.get(i - 1);
            Anchor after = anchors.get(i);
            if (aS >= before.aS() && aS < after.aS()) {
                return (after.bS() - before.bS()) / (after.aS() - before.aS());
            }
        }
        return 1;
    }

    /**
     * How many pictures a second of A's time are worth showing: as many as the faster clip has up to 60; beyond that only as many as the
     * slower one has, for the other's frames between show a difference in time that its neighbour cannot have; 120 at most.
     */
    public static double picturesPerS(double fpsA, double fpsB) {
        double smooth = Math.min(SMOOTH_FPS, Math.max(fpsA, fpsB));
        return Math.min(MOST_FPS, Math.max(smooth, Math.min(fpsA, fpsB)));
    }

    /**
     * The pictures of a video, from start to end. Every anchor that lies between them is one of them, so that no rounding to frames parts
     * what coincides; between two anchors they are as far apart as comes nearest to a step and fills the time evenly.
     *
     * @param stepS wanted time between two pictures in A's time, above 0
     */
    public List<Moment> moments(double stepS) {
        if (!(stepS > 0)) {
            throw new IllegalArgumentException("stepS must be above 0, was " + stepS);
        }
        List<Anchor> inside = anchors.stream()
                .filter(anchor -> anchor.aS() >= startS && anchor.aS() <= endS)
                .toList();
        List<Moment> moments = new ArrayList<>();
        double first = inside.isEmpty() ? startS : inside.get(0).aS();
        for (int k = (int) Math.floor((first - startS) / stepS + 1e-9); k > 0; k--) {
            moments.add(moment(first - k * stepS));
        }
        for (int i = 0; i + 1 < inside.size(); i++) {
            fill(moments, inside.get(i), inside.get(i + 1), stepS);
        }
        if (!inside.isEmpty()) {
            Anchor last = inside.get(inside.size() - 1);
            moments.add(new Moment(last.aS(), last.bS()));
            first = last.aS();
        } else {
            moments.add(moment(first));
        }
        for (int k = 1; first + k * stepS <= endS + 1e-9; k++) {
            moments.add(moment(first + k * stepS));
        }
        return moments;
    }

    private Moment moment(double aS) {
        return new Moment(aS, bAt(aS));
    }

    /** From the first anchor on and without the second. */
    private static void fill(List<Moment> moments, Anchor from, Anchor to, double stepS) {
        int steps = (int) Math.max(1, Math.round((to.aS() - from.aS()) / stepS));
        for (int k = 0; k < steps; k++) {
            double share = (double) k / steps;
            moments.add(
                    new Moment(from.aS() + share * (to.aS() - from.aS()), from.bS() + share * (to.bS() - from.bS())));
        }
    }
}
