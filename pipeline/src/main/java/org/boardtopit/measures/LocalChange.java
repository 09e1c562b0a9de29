package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;

/**
 * Measures of an attempt after some instants of contacts were put right: from the new ones only what is beside these instants, all
 * else as it was. The fit over the whole clip sees a corrected instant everywhere, by a hair; nobody who corrects one
 * touchdown wants to find other contacts changed.
 *
 * <p>A touchdown is beside its contact, the phase that ends with it and the phase that begins; a toe-off beside its contact and
 * the phase that it divides, and of the next phase beside the change of speed, which is against that flight. What is said of the
 * attempt as a whole follows from all of its parts and is taken from the new measures; but its approach, which only the board
 * touches, and what rests on it.
 */
public final class LocalChange {
    private static final double SAME_S = 1e-9;

    private final AttemptMeasures before;
    private final AttemptMeasures after;
    private final Set<Integer> touchdowns;
    private final Set<Integer> toeOffs;

    /**
     * Of one attempt.
     *
     * @param before with the instants as they were found
     * @param after the same contacts with the instants put right, in the same order
     * @param touchdowns places in the list of contacts whose touchdown was put right
     * @param toeOffs likewise
     */
    public LocalChange(AttemptMeasures before, AttemptMeasures after, Set<Integer> touchdowns, Set<Integer> toeOffs) {
        if (before.contacts().size() != after.contacts().size()) {
            throw new IllegalArgumentException("the same contacts are needed, were "
                    + before.contacts().size() + " and " + after.contacts().size());
        }
        this.before = before;
        this.after = after;
        this.touchdowns = Set.copyOf(touchdowns);
        this.toeOffs = Set.copyOf(toeOffs);
    }

    /** The measures. */
    public AttemptMeasures measures() {
        return new AttemptMeasures(
                after.distances(),
                after.leadSdPct(),
                isBoardMoved() ? after.approachSpeedMs() : before.approachSpeedMs(),
                after.scaleSource(),
                after.closureRatio(),
                after.gravityRatio(),
                after.quality(),
                after.warnings(),
                contacts(),
                phases(),
                more());
    }

    private boolean isBoardMoved() {
        return touchdowns.stream().anyMatch(i -> contact(i).kind() == ContactKind.BOARD);
    }

    private Contact contact(int i) {
        return after.contacts().get(i).contact();
    }

    private List<ContactMeasures> contacts() {
        List<ContactMeasures> contacts = new ArrayList<>(before.contacts());
        Set<Integer> changed = new HashSet<>(touchdowns);
        changed.addAll(toeOffs);
        changed.forEach(i -> contacts.set(i, after.contacts().get(i)));
        return contacts;
    }

    private Map<AttemptQuantity, Reading> more() {
        Map<AttemptQuantity, Reading> more = new EnumMap<>(AttemptQuantity.class);
        more.putAll(after.more());
        if (!isBoardMoved()) {
            more.computeIfPresent(
                    AttemptQuantity.APPROACH_SPEED_CHANGE,
                    (quantity, now) -> before.of(AttemptQuantity.APPROACH_SPEED_CHANGE));
        }
        return more;
    }

    private List<PhaseMeasures> phases() {
        List<PhaseMeasures> phases = new ArrayList<>();
        boolean flightMoved = false;
        for (PhaseMeasures now : after.phases()) {
            Optional<PhaseMeasures> then = before.phases().stream()
                    .filter(p -> p.phase().label().equals(now.phase().label()))
                    .findFirst();
            boolean changed = then.isEmpty() || isBeside(now);
            if (changed) {
                phases.add(now);
            } else if (flightMoved) {
                phases.add(then.get().withSpeedChange(now.speedChangeMs()));
            } else {
                phases.add(then.get());
            }
            flightMoved = isDivided(now);
        }
        return phases;
    }

    private boolean isBeside(PhaseMeasures phase) {
        boolean bounded = touchdowns.stream()
                .mapToDouble(i -> contact(i).touchdownS())
                .anyMatch(s -> isSame(s, phase.phase().startS())
                        || isSame(s, phase.phase().endS()));
        return bounded || isDivided(phase);
    }

    /** True when a toe-off that was put right lies within it: its support and its flight are others. */
    private boolean isDivided(PhaseMeasures phase) {
        return toeOffs.stream()
                .filter(i -> contact(i).kind() != ContactKind.APPROACH)
                .mapToDouble(i -> contact(i).toeOffS())
                .anyMatch(s -> s > phase.phase().startS() && s < phase.phase().endS());
    }

    private static boolean isSame(double a, double b) {
        return Math.abs(a - b) < SAME_S;
    }
}
