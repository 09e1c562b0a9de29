package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.phases.Phase;
import org.boardtopit.phases.PhaseName;
import org.junit.jupiter.api.Test;

/** Two bounds of a drill, R to R and R to the pit; values worked out by hand (SYN). */
class BoundTest {
    private static final Contact FIRST =
            new Contact(ContactKind.DRILL, Foot.RIGHT, 1.0, 0.003, 1.12, 0.004, 0, 0.02, 1, false);
    private static final Contact SECOND =
            new Contact(ContactKind.DRILL, Foot.RIGHT, 1.6, 0.004, 1.75, 0.004, 4, 0.02, 1, false);
    private static final Contact SAND =
            new Contact(ContactKind.PIT, Foot.BOTH, 2.3, 0.005, Double.NaN, Double.NaN, 9, 0.02, 1, false);
    private static final ContactTimeline CONTACTS = new ContactTimeline(List.of(FIRST, SECOND, SAND), 1, List.of());

    private static Bound bound(double fromS, double toS) {
        return Bound.of(new Phase(PhaseName.HOP, fromS, toS), CONTACTS).orElseThrow();
    }

    @Test
    void isFoundByTheTimesOfItsPhase() {
        assertEquals(FIRST, bound(1.0, 1.6).support());
        assertEquals(SECOND, bound(1.0, 1.6).next());
        assertEquals(Foot.LEFT, bound(1.0, 1.6).free());
        assertTrue(bound(1.6, 2.3).intoPit());
        assertTrue(Bound.of(new Phase(PhaseName.APPROACH, 0.2, 1.0), CONTACTS).isEmpty());
        assertTrue(Bound.of(new Phase(PhaseName.LANDING, 2.3, 2.5), CONTACTS).isEmpty());
    }

    @Test
    void tellsItsTimes() {
        Bound bound = bound(1.0, 1.6);
        assertEquals(0.12, bound.supportTimeS().value(), 1e-12);
        assertEquals(0.005, bound.supportTimeS().sd(), 1e-12); // 3 and 4 ms
        assertEquals(0.48, bound.flightTimeS().value(), 1e-12);
        assertEquals(0.6, bound.intervalS().value(), 1e-12);
        assertEquals(0.005, bound.intervalS().sd(), 1e-12);
        assertEquals(20, bound.supportSharePct().value(), 1e-12);
    }

    /** Simulation with a fixed seed: the three instants err independently. */
    @Test
    void knowsHowSureTheSupportShareIs() {
        Random random = new Random(3);
        int n = 20_000;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double down = 1.0 + 0.003 * random.nextGaussian();
            double up = 1.12 + 0.004 * random.nextGaussian();
            double end = 1.6 + 0.004 * random.nextGaussian();
            double share = 100 * (up - down) / (end - down);
            squares += (share - 20) * (share - 20);
        }
        assertEquals(Math.sqrt(squares / n), bound(1.0, 1.6).supportSharePct().sd(), 0.02);
    }
}
