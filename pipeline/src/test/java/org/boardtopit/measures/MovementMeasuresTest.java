package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.ground.CameraModel;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.phases.PhaseTimeline;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every measure of supports, flights and the landing on a body whose angles are formulas, against values worked out by hand (SYN).
 * Left is the take-off foot: board L 0.60 to 0.72, hop landing L 1.20 to 1.35, step landing R 1.75 to 1.90, pit 2.30 s.
 */
class MovementMeasuresTest {
    private static final ContactTimeline CONTACTS = new ContactTimeline(
            List.of(
                    contact(ContactKind.BOARD, Foot.LEFT, 0.60, 0.72, -0.05),
                    contact(ContactKind.HOP_LANDING, Foot.LEFT, 1.20, 1.35, 5.0),
                    contact(ContactKind.STEP_LANDING, Foot.RIGHT, 1.75, 1.90, 9.0),
                    contact(ContactKind.PIT, Foot.BOTH, 2.30, Double.NaN, 13.96)),
            1,
            List.of());

    private final DrawnBody body = new DrawnBody();

    private static Contact contact(ContactKind kind, Foot foot, double downS, double upS, double alongM) {
        return new Contact(
                kind, foot, downS, 0.003, upS, Double.isFinite(upS) ? 0.003 : Double.NaN, alongM, 0.02, 1, false);
    }

    private AttemptMeasures measured(ScaleSource scale) {
        AttemptMeasurer.Given given = new AttemptMeasurer.Given(
                scale, Optional.empty(), 14.0, 1, RegistrationFacts.unknown(CameraModel.STILL), 150, List.of());
        return new AttemptMeasurer().measure(body.motion(), CONTACTS, PhaseTimeline.of(CONTACTS, 0, 2.45), given);
    }

    private PhaseMeasures phase(PhaseName name) {
        return measured(ScaleSource.MARKS).phases().stream()
                .filter(p -> p.phase().name() == name)
                .findFirst()
                .orElseThrow();
    }

    private ContactMeasures contact(ContactKind kind) {
        return measured(ScaleSource.MARKS).contacts().stream()
                .filter(c -> c.contact().kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private static void near(double expected, Reading reading, double tolerance) {
        assertEquals(expected, reading.value(), tolerance);
        assertTrue(reading.sd() > 0, "sd " + reading.sd());
    }

    /** From one value to another between two times, straight. */
    private static DoubleUnaryOperator ramp(double fromS, double from, double toS, double to) {
        return t -> from + Math.max(0, Math.min(1, (t - fromS) / (toS - fromS))) * (to - from);
    }

    /** A parabola with its top at a time. */
    private static DoubleUnaryOperator hump(double topS, double top, double bend) {
        return t -> top - bend * (t - topS) * (t - topS);
    }

    @Test
    void theKneeGivesWayToItsLeastAngleInSupport() {
        body.knee[0] =
                t -> t < 0.60 ? 160 : Math.abs(t - 0.66) < 0.06 ? 130 + 30 * Math.pow((t - 0.66) / 0.06, 2) : 160;
        PhaseMeasures hop = phase(PhaseName.HOP);
        near(130, hop.kneeMinDeg(), 0.2);
        assertEquals(0.66, hop.kneeMinDeg().atS(), 0.002);
        near(30, hop.of(PhaseQuantity.KNEE_YIELD), 1);
    }

    /** The ankle stays at 0 m and the body passes over it after a third of the support of 0.12 s. */
    @Test
    void theBodyPassesOverTheFoot() {
        body.hipAlong = t -> 8 * (t - 0.64);
        DrawnBody still = body;
        still.thigh[0] = t -> Math.toDegrees(Math.asin(Math.max(-0.9, Math.min(0.9, -10 * (t - 0.64)))));
        Reading before = phase(PhaseName.HOP).of(PhaseQuantity.BEFORE_MID_SUPPORT);
        near(100.0 / 3, before, 0.5);
        assertEquals(0.64, before.atS(), 1e-3);
    }

    @Test
    void theFreeThighIsRaisedHeldAndDropped() {
        // Up to 80 deg at 0.76; down at 100 deg/s from 0.80 to 0 at 1.60, where the hop ends at 1.20 with 40.
        body.thigh[1] = t -> t < 0.80
                ? ramp(0.60, 0, 0.76, 80).applyAsDouble(t)
                : ramp(0.80, 80, 1.60, 0).applyAsDouble(t);
        PhaseMeasures hop = phase(PhaseName.HOP);
        near(80, hop.freeThighMaxDeg(), 0.5);
        assertEquals(0.78, hop.freeThighMaxDeg().atS(), 0.03);
        // Above 65 from 0.73 to 0.95 of the flight from 0.72 to 1.20.
        near(100 * 0.22 / 0.48, hop.freeThighHoldPct(), 1.5);
        near(40, hop.of(PhaseQuantity.FREE_THIGH_MIN), 0.5);
        assertEquals(1.20, hop.of(PhaseQuantity.FREE_THIGH_MIN).atS(), 1e-6);
    }

    /** With equal thigh and shank the lever is the sine of half the knee's angle: 50 % at 60 degrees. */
    @Test
    void theFreeLegIsShortWithABentKnee() {
        body.knee[1] = t -> 60 + 2000 * Math.pow(t - 0.95, 2);
        PhaseMeasures hop = phase(PhaseName.HOP);
        near(60, hop.of(PhaseQuantity.FREE_KNEE_MIN), 0.1);
        near(50, hop.of(PhaseQuantity.FREE_LEVER_MIN), 0.1);
        assertEquals(0.95, hop.of(PhaseQuantity.FREE_KNEE_MIN).atS(), 1e-3);
    }

    @Test
    void theThighsPartMostInFlight() {
        body.thigh[0] = hump(1.0, 70, 400);
        body.thigh[1] = t -> -40;
        near(110, phase(PhaseName.HOP).of(PhaseQuantity.THIGH_SEPARATION_MAX), 0.1);
    }

    /** The left leg lands the hop: with a straight knee its shank is its thigh. */
    @Test
    void theLandingShankReachesAndComesBack() {
        body.thigh[0] = t -> t < 1.1 ? 30 : 30 - 150 * (t - 1.1); // 15 at 1.20
        PhaseMeasures hop = phase(PhaseName.HOP);
        near(30, hop.of(PhaseQuantity.REACH_SHANK_MAX), 0.2);
        near(15, hop.of(PhaseQuantity.PULL_BACK), 1);
        body.thigh[0] = t -> 100 * (t - 1.0); // still reaching when it lands
        near(0, phase(PhaseName.HOP).of(PhaseQuantity.PULL_BACK), 0.5);
    }

    @Test
    void trunkAndHeadTurnInFlight() {
        body.trunk = t -> t < 1.0
                ? ramp(0.72, 5, 1.0, 25).applyAsDouble(t)
                : ramp(1.0, 25, 1.20, 15).applyAsDouble(t);
        body.head = ramp(0.72, 10, 1.20, -20);
        PhaseMeasures hop = phase(PhaseName.HOP);
        near(25, hop.of(PhaseQuantity.TRUNK_MAX), 0.5);
        near(10, hop.trunkChangeDeg(), 1.5);
        near(-30, hop.of(PhaseQuantity.HEAD_CHANGE), 3);
    }

    /** Both thighs at 90 until 2.20, then down by 300 deg/s: 10 degrees below after 33 ms, 67 ms before the heels touch. */
    @Test
    void theThighsDropBeforeTheHeelsTouch() {
        body.thigh[0] = ramp(2.20, 90, 2.30, 60);
        body.thigh[1] = body.thigh[0];
        Reading drop = phase(PhaseName.JUMP).of(PhaseQuantity.THIGH_DROP_BEFORE);
        near(0.0667, drop, 0.002);
        assertEquals(2.2333, drop.atS(), 0.002);
        body.thigh[0] = t -> 90;
        body.thigh[1] = body.thigh[0];
        near(0, phase(PhaseName.JUMP).of(PhaseQuantity.THIGH_DROP_BEFORE), 1e-9);
    }

    @Test
    void theJumpHasNoReachAndTheHopNoDrop() {
        assertFalse(phase(PhaseName.JUMP).of(PhaseQuantity.PULL_BACK).isKnown());
        assertFalse(phase(PhaseName.JUMP).of(PhaseQuantity.REACH_SHANK_MAX).isKnown());
        assertFalse(phase(PhaseName.HOP).of(PhaseQuantity.THIGH_DROP_BEFORE).isKnown());
    }

    /** The whole body at 8 m/s; then the leg swings back under it: 0.8 m of leg at 300 deg/s is 4.2 m/s backwards. */
    @Test
    void theFootIsFastOrSlowOverTheGround() {
        body.hipAlong = t -> 8 * t;
        ContactMeasures passive = contact(ContactKind.HOP_LANDING);
        near(8, passive.of(ContactQuantity.FOOT_SPEED_TOUCHDOWN), 0.1);
        near(0, passive.of(ContactQuantity.FOOT_SPEED_RELATIVE_TOUCHDOWN), 0.1);
        body.thigh[0] = t -> -300 * (t - 1.20);
        ContactMeasures active = contact(ContactKind.HOP_LANDING);
        double backwards = -0.8 * Math.sin(Math.toRadians(300 * 0.03)) / 0.03; // mean over the last 30 ms
        near(8 + backwards, active.of(ContactQuantity.FOOT_SPEED_TOUCHDOWN), 0.2);
        near(backwards, active.of(ContactQuantity.FOOT_SPEED_RELATIVE_TOUCHDOWN), 0.2);
    }

    @ParameterizedTest
    @CsvSource({"30", "-80", "175", "200"})
    void armsAreReadFromHangingThroughOverhead(double deg) {
        body.arm[0] = t -> deg;
        body.arm[1] = t -> 170 + 200 * (t - 1.20); // passes straight up at 1.25
        ContactMeasures landing = contact(ContactKind.HOP_LANDING);
        near(deg, landing.of(ContactQuantity.ARM_L_TOUCHDOWN), 0.1);
        near(deg, landing.of(ContactQuantity.ARM_L_TOE_OFF), 0.1);
        near(170, landing.of(ContactQuantity.ARM_R_TOUCHDOWN), 2);
        near(200, landing.of(ContactQuantity.ARM_R_TOE_OFF), 2);
    }

    /**
     * Legs level ahead, straight: the heel is 0.06 m behind the ankle at 0.8 m; one leg 0.2 m shorter makes it the rear one. Of these 0.2 m about
     * 85 % are taken for real (RearHeel), which leaves 0.015 m.
     */
    @Test
    void heelsAndWristsInTheSand() {
        body.thigh[0] = t -> 90;
        body.thigh[1] = t -> 90;
        body.knee[1] = t -> 120; // 0.4 + 0.4 sin(30) = 0.6
        body.arm[0] = t -> 90;
        body.arm[1] = t -> 90; // 0.5 m ahead
        ContactMeasures pit = contact(ContactKind.PIT);
        near(0.54 + 0.015, pit.of(ContactQuantity.HEEL_AHEAD_TOUCHDOWN), 0.008);
        near(-0.5, pit.of(ContactQuantity.WRISTS_BEHIND_TOUCHDOWN), 0.005);
        assertFalse(pit.of(ContactQuantity.FOOT_SPEED_TOUCHDOWN).isKnown());
    }

    /** Intervals 0.60 and 0.55 s; heels at 13.96 m, official distance 14.00 m. */
    @Test
    void rhythmAndSitBack() {
        AttemptMeasures attempt = measured(ScaleSource.MARKS);
        near(100 * 0.55 / 0.60, attempt.of(AttemptQuantity.RHYTHM_EVENNESS), 1e-9);
        near(-0.04, attempt.of(AttemptQuantity.SIT_BACK), 1e-9);
        near(0.60, phase(PhaseName.HOP).of(PhaseQuantity.INTERVAL), 1e-9);
        near(20, phase(PhaseName.HOP).of(PhaseQuantity.SUPPORT_SHARE), 1e-9);
        assertFalse(measured(ScaleSource.OFFICIAL).of(AttemptQuantity.SIT_BACK).isKnown());
    }

    @Test
    void withoutAScaleThereAreAnglesAndTimesButNoLengths() {
        AttemptMeasures attempt = measured(ScaleSource.NONE);
        PhaseMeasures hop = attempt.phases().get(1);
        assertTrue(hop.freeThighMaxDeg().isKnown());
        assertTrue(hop.of(PhaseQuantity.FREE_LEVER_MIN).isKnown());
        assertFalse(hop.comPeakM().isKnown());
        for (ContactMeasures contact : attempt.contacts()) {
            assertTrue(contact.of(ContactQuantity.ARM_L_TOUCHDOWN).isKnown());
            for (ContactQuantity quantity : ContactQuantity.values()) {
                boolean length =
                        quantity.column().endsWith("_m") || quantity.column().endsWith("_ms");
                assertFalse(length && contact.of(quantity).isKnown(), quantity.column());
            }
        }
    }

    /** What the rules of observations read: each number at the instant that shows it. */
    @Test
    void evidenceCarriesTheInstantOfItsPicture() {
        body.thigh[1] = hump(0.90, 80, 200);
        EvidenceTable table = EvidenceTable.of(measured(ScaleSource.MARKS));
        assertEquals(0.90, table.of("hop", "free_thigh_max_deg").orElseThrow().atS(), 0.002);
        assertEquals(1.20, table.of("hop", "trunk_change_deg").orElseThrow().atS(), 1e-9);
        assertEquals(2.30, table.of("attempt", "sit_back_m").orElseThrow().atS(), 1e-9);
        assertEquals(
                1.20,
                table.of("hop_landing", "arm_l_touchdown_deg").orElseThrow().atS(),
                1e-9);
        assertTrue(table.of("hop", "free_thigh_hold_pct").isPresent());
        assertTrue(table.of("step", "knee_min_deg").isPresent());
    }
}
