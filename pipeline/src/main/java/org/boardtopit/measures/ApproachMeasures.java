package org.boardtopit.measures;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.signal.RobustPolynomial;
import org.boardtopit.signal.RobustWeights;

/** The end of the approach: speed over the last metres and the last two strides. In the unit of the motion. */
final class ApproachMeasures {
    private static final double STRETCH_M = 5;
    private static final double LEAST_M = 2;
    private static final int LEAST_FRAMES = 6;
    /** Of the stretch before the last, this much must be seen; it is then taken for all of it. */
    private static final double LEAST_BEFORE_M = 4;
    /** A stretch does not hold whole strides, within which the speed swings by 0.2 m/s or so (measured on our footage). */
    private static final double STRIDES_SD_MS = 0.04;
    /** A stride takes 0.2 to 0.3 s (common practice, no source); longer and a contact between was missed. */
    private static final double LONGEST_STRIDE_S = 0.4;

    private final FittedMotion motion;
    private final ContactTimeline contacts;
    private final double scaleSd;

    /**
     * Before the board.
     *
     * @param scaleSd of the scale over itself
     */
    ApproachMeasures(FittedMotion motion, ContactTimeline contacts, double scaleSd) {
        this.motion = motion;
        this.contacts = contacts;
        this.scaleSd = scaleSd;
    }

    /** Mean speed over the last 5 m before the board, unknown when less than 2 m are seen. */
    Reading speed() {
        return board().map(this::last)
                .flatMap(s -> slope(s, LEAST_M))
                .map(this::scaled)
                .orElse(Reading.UNKNOWN);
    }

    /** That speed less the one over the 5 m before, both wholly in view. */
    Map<AttemptQuantity, Reading> more() {
        Map<AttemptQuantity, Reading> more = new EnumMap<>(AttemptQuantity.class);
        more.put(AttemptQuantity.APPROACH_SPEED_CHANGE, speedChange());
        return more;
    }

    private Reading speedChange() {
        Optional<Frames> last = board().map(this::last);
        Optional<Reading> now = last.flatMap(s -> slope(s, LEAST_BEFORE_M));
        Optional<Reading> before = last.map(s -> stretchBefore(s.first())).flatMap(s -> slope(s, LEAST_BEFORE_M));
        if (now.isEmpty() || before.isEmpty()) {
            return Reading.UNKNOWN;
        }
        Reading change = now.get().minus(before.get());
        return scaled(new Reading(change.value(), Math.hypot(change.sd(), STRIDES_SD_MS)));
    }

    private Reading scaled(Reading reading) {
        return new Reading(reading.value(), Math.hypot(reading.sd(), scaleSd * reading.value()));
    }

    private Optional<Contact> board() {
        return contacts.of(ContactKind.BOARD);
    }

    /** Frames from the first to the one before the end. */
    private record Frames(int first, int end) {}

    private Frames last(Contact board) {
        return stretchBefore(motion.repaired().frameAtOrAfter(board.touchdownS()));
    }

    /** The frames before one, over the length of a stretch, as far as the centre of mass is known. */
    private Frames stretchBefore(int end) {
        double last = end > 0 ? motion.centreOfMass(end - 1).x() : Double.NaN;
        int first = end;
        while (first > 0 && last - motion.centreOfMass(first - 1).x() <= STRETCH_M) {
            first--;
        }
        return new Frames(first, end);
    }

    /** Speed of a line through the frames; empty when they are few or cover less than some metres. */
    private Optional<Reading> slope(Frames frames, double leastM) {
        double[] t = new double[frames.end() - frames.first()];
        double[] x = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            t[i] = motion.timeS(frames.first() + i);
            x[i] = motion.centreOfMass(frames.first() + i).x();
        }
        if (t.length < LEAST_FRAMES || x[t.length - 1] - x[0] < leastM) {
            return Optional.empty();
        }
        RobustPolynomial line = RobustPolynomial.line(t, x, RobustWeights.TUKEY);
        double sd = Flight.slopeSd(motion, frames.first(), t, false);
        // Not fitted so far back: the points' noise alone.
        double known = Double.isFinite(sd) ? sd : line.slopeSdAt(t[0]);
        return Optional.of(new Reading(line.slopeAt(t[0]), known));
    }

    /** Of the last two contacts before the board; empty when one between them may have been missed. */
    Optional<LastStrides> lastStrides() {
        List<Contact> strides = contacts.contacts().stream()
                .filter(c -> c.kind() == ContactKind.APPROACH || c.kind() == ContactKind.BOARD)
                .toList();
        int n = strides.size();
        if (n < 3 || strides.get(n - 1).kind() != ContactKind.BOARD) {
            return Optional.empty();
        }
        for (int i = n - 3; i < n - 1; i++) {
            boolean alternate =
                    strides.get(i).foot() == strides.get(i + 1).foot().other();
            double step = strides.get(i + 1).touchdownS() - strides.get(i).touchdownS();
            if (!alternate || !(step < LONGEST_STRIDE_S)) {
                return Optional.empty();
            }
        }
        return Optional.of(
                LastStrides.of(place(strides.get(n - 3)), place(strides.get(n - 2)), place(strides.get(n - 1))));
    }

    private static Reading place(Contact contact) {
        return new Reading(contact.toeAlongM(), contact.toeAlongSdM());
    }
}
