package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.junit.jupiter.api.Test;

/** Runs with speeds that are chosen, so that the result is known (SYN). */
class ApproachMeasuresTest {
    private static final double BOARD_S = 2.0;

    private static ContactTimeline board() {
        Contact board = new Contact(ContactKind.BOARD, Foot.LEFT, BOARD_S, 0.003, 2.12, 0.003, 0, 0.02, 1, false);
        return new ContactTimeline(List.of(board), 1, List.of());
    }

    private static ApproachMeasures approach(double earlierMs, double laterMs) {
        DrawnBody body = new DrawnBody();
        double fromS = BOARD_S - 5 / laterMs;
        body.hipAlong = t -> t < fromS ? -5 + earlierMs * (t - fromS) : laterMs * (t - BOARD_S);
        return new ApproachMeasures(body.motion(), board(), 0.002);
    }

    private static Reading change(ApproachMeasures approach) {
        return approach.more().get(AttemptQuantity.APPROACH_SPEED_CHANGE);
    }

    @Test
    void tellsTheSpeedOverTheLastFiveMetresAndWhatWasLostSinceTheFiveBefore() {
        ApproachMeasures approach = approach(9.4, 9.0);
        assertEquals(9.0, approach.speed().value(), 0.02);
        assertEquals(-0.4, change(approach).value(), 0.03);
        assertTrue(change(approach).sd() >= 0.04);
    }

    /** At 4 m/s only the last 8 m are in the clip of which the board is at 2 s. */
    @Test
    void doesNotCompareWithAStretchThatIsNotSeen() {
        ApproachMeasures approach = approach(4, 4);
        assertTrue(approach.speed().isKnown());
        assertFalse(change(approach).isKnown());
    }
}
