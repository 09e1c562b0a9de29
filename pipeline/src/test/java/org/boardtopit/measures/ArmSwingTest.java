package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ArmSwingTest {
    private static final Contact BOARD =
            new Contact(ContactKind.BOARD, Foot.LEFT, 1.0, 0.003, 1.12, 0.003, 0, 0.02, 1, false);

    /** Anscombe 1973 (American Statistician 27:17-21), first of the four data sets: r = 0.816 (MEM-H). */
    @Test
    void correlatesAsAPublishedExample() {
        double[] x = {10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5};
        double[] y = {8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68};
        assertEquals(0.816, ArmSwing.correlation(x, y), 0.0005);
    }

    /** Bounds of the trade: together above, against each other below (common practice, no source). */
    @ParameterizedTest
    @CsvSource({
        "0.95, 0.3, DOUBLE",
        "0.45, 0.1, DOUBLE",
        "0.2, 0.3, MIXED",
        "-0.3, 0.3, MIXED",
        "-0.5, 0.25, SINGLE",
        "-0.9, 0.15, RUNNING",
        "NaN, 0.2, NOT_SEEN"
    })
    void isNamedByHowTheArmsGoTogetherAndHowFar(double together, double swing, ArmAction action) {
        assertEquals(action, ArmSwing.of(together, swing));
    }

    /** Both hands swing by 0.5 sin(a): from -40 to 60 deg that is 0.75 m, more than a third of 1.8 m. */
    private static DrawnBody swinging(double leftPhase, double amplitudeDeg) {
        DrawnBody body = new DrawnBody();
        body.arm[0] = t -> 10 + amplitudeDeg * Math.sin(10 * (t - 1.06) + leftPhase);
        body.arm[1] = t -> 10 + amplitudeDeg * Math.sin(10 * (t - 1.06));
        return body;
    }

    @ParameterizedTest
    @CsvSource({"0, 50, DOUBLE", "3.1416, 50, SINGLE", "3.1416, 15, RUNNING", "1.5708, 50, MIXED"})
    void readsItFromTheMotion(double phase, double amplitudeDeg, ArmAction action) {
        assertEquals(action, ArmSwing.around(swinging(phase, amplitudeDeg).motion(), BOARD));
    }

    @Test
    void saysSoWhenTheHandsAreNotSeenWell() {
        DrawnBody body = swinging(0, 50);
        body.sdM = 0.08;
        assertEquals(ArmAction.NOT_SEEN, ArmSwing.around(body.motion(), BOARD));
    }

    @Test
    void anArmGoesOnOverTheHeadAndComesBackBehind() {
        assertEquals(170, Posture.inTurn(170), 1e-9);
        assertEquals(190, Posture.inTurn(-170), 1e-9);
        assertEquals(-100, Posture.inTurn(-100), 1e-9);
        assertEquals(-100, Posture.inTurn(260), 1e-9);
        assertTrue(Double.isNaN(Posture.inTurn(Double.NaN)));
    }
}
