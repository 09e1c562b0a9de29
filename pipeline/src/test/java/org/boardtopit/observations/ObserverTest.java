package org.boardtopit.observations;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.clips.Athlete.Sex;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.measures.ArmAction;
import org.boardtopit.measures.Evidence;
import org.boardtopit.measures.EvidenceTable;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.Reading;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The rules of the program held against evidence written by hand. Intervals are value +- 1.645 sd (any table of the normal
 * distribution); expected distances are worked out by hand from the guides in the file.
 */
class ObserverTest {
    private static final RuleSet RULES = RuleSetReader.builtIn(Language.ENGLISH);

    private final List<Evidence> evidence = new ArrayList<>();
    private AthleteLevel level = AthleteLevel.SENIOR;
    private Optional<Sex> sex = Optional.of(Sex.MALE);
    private Quality quality = Quality.GOOD;
    private double contactConfidence = 1;
    private RuleSet rules = RULES;
    private Map<PhaseName, ArmAction> arms = Map.of();

    private ObserverTest with(String part, String measure, double value, double sd) {
        evidence.add(new Evidence(part, measure, new Reading(value, sd), 1.5));
        return this;
    }

    private List<Observation> observations() {
        Map<ContactKind, Double> contacts = Map.of(
                ContactKind.BOARD, 1.0,
                ContactKind.HOP_LANDING, contactConfidence,
                ContactKind.STEP_LANDING, 1.0,
                ContactKind.PIT, 1.0);
        return new Observer(rules)
                .observe(new ObservedAttempt(new EvidenceTable(evidence), quality, contacts, arms, level, sex));
    }

    private List<Observation> of(Kind kind) {
        return observations().stream().filter(o -> o.kind() == kind).toList();
    }

    private static List<String> findings(List<Observation> observations) {
        return observations.stream().map(Observation::finding).toList();
    }

    /** Guide of the step's trunk for seniors: at most 10 degrees; 1.645 * 4 = 6.58. */
    @ParameterizedTest
    @CsvSource({"16.57, false", "16.59, true", "25, true", "10, false", "3, false"})
    void saysNothingWhereTheIntervalStraddlesTheGuide(double value, boolean said) {
        with("step", "trunk_change_deg", value, 4);
        boolean found = findings(observations()).contains("trunk tips forward in the step");
        assertEquals(said, found);
    }

    /** The near end is 22 - 1.645 * 4 = 15.42, which is 5.42 above 10: 0.903 of the width of 6. */
    @Test
    void countsHowFarTheNearEndLiesOutsideInWidths() {
        with("step", "trunk_change_deg", 22, 4);
        Observation first = of(Kind.PRIORITY).get(0);
        assertEquals(5.42 / 6, first.severity(), 1e-9);
        assertEquals("step", first.phase());
        assertTrue(
                first.text()
                        .contains(
                                "Measured 22.0 degrees (15.4 to 28.6 in 9 of 10 cases), guide -12.0 to 10.0 degrees."),
                first.text());
        assertEquals(1.5, first.evidence().orElseThrow().atS());
    }

    @Test
    void saysNothingOfANumberWhoseUncertaintyIsNotKnown() {
        with("step", "trunk_change_deg", 90, Double.NaN);
        assertEquals(List.of("not visible"), findings(observations()));
    }

    @Test
    void namesTheCauseInTheHopBeforeTheLargerFaultOfTheStep() {
        with("step", "trunk_change_deg", 26, 2).with("hop", "trunk_change_deg", 20, 2);
        List<Observation> all = observations();
        assertEquals("trunk tips forward in the hop", all.get(0).finding());
        Observation step =
                all.stream().filter(o -> o.phase().equals("step")).findFirst().orElseThrow();
        assertEquals("hop: trunk tips forward in the hop", step.causedBy());
        assertTrue(step.text().contains("Probably set up earlier (hop: trunk tips forward in the hop): begin there."));
        // Both are of one topic, and one priority is enough for it.
        assertEquals(Kind.PRIORITY, all.get(0).kind());
        assertEquals(Kind.REMARK, step.kind());
    }

    /** 14 - 3.29 is 0.71 above the hop's 10: 0.12 of a width, less than a third of the 2.1 of the step. */
    @Test
    void aSlightFindingDoesNotPushALargeOneFromItsPlace() {
        with("step", "trunk_change_deg", 26, 2).with("hop", "trunk_change_deg", 14, 2);
        List<Observation> all = observations();
        assertEquals("trunk tips forward in the step", all.get(0).finding());
        assertEquals("hop: trunk tips forward in the hop", all.get(0).causedBy());
    }

    /** A trunk 0.11 widths too far forward moves the centre of mass over the foot: the trunk is what to work on. */
    @Test
    void aSlightCauseOfASlightFindingIsThePriority() {
        with("step", "trunk_max_deg", 15 + 0.11 * 6 + 1.645, 1)
                .with("step_landing", "leg_plant_touchdown_deg", 74 + 0.27 * 4 + 1.645, 1);
        List<Observation> all = of(Kind.PRIORITY);
        assertEquals("trunk far forward in the step", all.get(0).finding());
        assertEquals("step: trunk far forward in the step", all.get(1).causedBy());
    }

    @Test
    void followsCausesOverSeveralSteps() {
        with("hop", "takeoff_angle_deg", 24, 0.5)
                .with("step", "knee_min_deg", 80, 3)
                .with("step", "speed_change_ms", -2.6, 0.1);
        List<Observation> all = of(Kind.PRIORITY);
        assertEquals(
                List.of(
                        "hop too high",
                        "leg gives way at the landing of the hop",
                        "much speed lost at the landing of the hop"),
                findings(all));
        assertEquals("", all.get(0).causedBy());
        assertEquals("hop: hop too high", all.get(1).causedBy());
    }

    @Test
    void namesAtMostThreePrioritiesAndLeavesTheRestAsRemarks() {
        with("board", "knee_toe_off_deg", 120, 3)
                .with("board", "free_thigh_toe_off_deg", 40, 3)
                .with("step", "free_thigh_hold_pct", 10, 4)
                .with("pit", "heel_ahead_touchdown_m", 0.0, 0.04)
                .with("attempt", "rhythm_evenness_pct", 50, 2);
        assertEquals(3, of(Kind.PRIORITY).size());
        assertEquals(2, of(Kind.REMARK).size());
        List<Integer> ranks = observations().stream().map(Observation::rank).toList();
        assertEquals(List.of(1, 2, 3, 4, 5, 6), ranks);
    }

    @Test
    void namesAtMostThreeStrengthsAndNoneOfATopicWithAFault() {
        with("board", "knee_toe_off_deg", 172, 3)
                .with("board", "free_thigh_toe_off_deg", 90, 3)
                .with("step", "free_thigh_hold_pct", 70, 4)
                .with("step", "trunk_change_deg", 0, 1)
                .with("step", "share_pct", 30, 0.4)
                .with("hop", "trunk_change_deg", 30, 2);
        List<Observation> strengths = of(Kind.STRENGTH);
        assertEquals(3, strengths.size());
        assertFalse(findings(strengths).contains("trunk steady in the step"));
        assertTrue(strengths.stream().allMatch(o -> o.practice().isEmpty()));
    }

    /** Long support is told, but numbers of 50 frames a second shall not set anybody's training. */
    @Test
    void whatIsForRemarksOnlyNeverBecomesAPriority() {
        with("board", "support_time_s", 0.30, 0.01);
        assertEquals(List.of(), of(Kind.PRIORITY));
        assertEquals(List.of("long support on the board"), findings(of(Kind.REMARK)));
    }

    /** Guides of the step's share: men 27, women 25, juniors and masters 25. 26 +- 0.5 is short for a senior man only. */
    @ParameterizedTest
    @CsvSource({
        "SENIOR, MALE, true",
        "SENIOR, FEMALE, false",
        "JUNIOR, MALE, false",
        "MASTERS, MALE, false",
        "NOT_STATED, MALE, false",
        "SENIOR, , false"
    })
    void guidesAreThoseOfTheLevelAndTheSexAndTheWidestWhereTheyAreNotKnown(AthleteLevel of, Sex who, boolean said) {
        level = of;
        sex = Optional.ofNullable(who);
        with("step", "share_pct", 26, 0.3);
        assertEquals(said, findings(observations()).contains("short step"));
    }

    /** No triple-jump kinematics of masters have been published that we know of (notes of the trade, section 3a). */
    @Test
    void everyRemarkOnMastersSaysThatThereIsNoPublishedReference() {
        level = AthleteLevel.MASTERS;
        with("step", "trunk_change_deg", 30, 2)
                .with("board", "knee_toe_off_deg", 120, 3)
                .with("step", "free_thigh_hold_pct", 70, 4);
        for (Observation o : observations()) {
            if (o.evidence().isPresent()) {
                assertTrue(o.basis().contains("no published reference for masters"), o.basis());
            }
        }
        assertTrue(of(Kind.PRIORITY).get(0).practice().contains("Masters: longer warm-up"));
    }

    @Test
    void saysWhenTheLevelIsNotKnown() {
        level = AthleteLevel.NOT_STATED;
        with("step", "trunk_change_deg", 30, 2);
        Observation first = observations().get(0);
        assertTrue(first.basis().contains("level not stated: the widest guide"), first.basis());
        assertEquals(new Guide(-12, 10), first.evidence().orElseThrow().guide());
        assertTrue(first.practice().contains("Still growing"), first.practice());
    }

    @Test
    void everySuggestionSaysThatPainMeansStopAndWhoDecides() {
        with("step", "trunk_change_deg", 30, 2).with("step", "free_thigh_hold_pct", 10, 2);
        for (Observation o : of(Kind.PRIORITY)) {
            assertTrue(o.practice().contains("Pain means stop."), o.practice());
            assertTrue(o.practice().contains("A qualified coach"), o.practice());
        }
    }

    @Test
    void juniorsGetTheCautionForGrowingAthletes() {
        level = AthleteLevel.JUNIOR;
        with("step", "trunk_change_deg", 40, 2);
        assertTrue(observations().get(0).practice().contains("Still growing: few contacts"));
    }

    @Test
    void saysNothingOfADrill() {
        with("step", "trunk_change_deg", 30, 2);
        ObservedAttempt drill =
                new ObservedAttempt(new EvidenceTable(evidence), quality, Map.of(), Map.of(), level, sex);
        assertEquals(List.of(), new Observer(RULES).observe(drill));
    }

    @Test
    void tellsThatARollIsNotVisibleFromTheSide() {
        Observation last = observations().get(0);
        assertEquals(Kind.NOT_VISIBLE, last.kind());
        assertEquals("sideways_roll", last.topic());
        assertEquals(Optional.empty(), last.evidence());
        assertTrue(last.text().contains("in front of or behind the pit"), last.text());
    }

    /** Signs as in the tables: a swing to the athlete's left in the hop that comes back to the right in the step. */
    @Test
    void namesTheRollOfTheHopBeforeItsReturnInTheStep() {
        with("hop", "swing_left_deg", 16, 2)
                .with("step", "swing_right_deg", 18, 2)
                .with("step", "trunk_change_deg", 3, 3);
        List<Observation> all = observations();
        assertEquals("roll to the left in the hop", all.get(0).finding());
        assertEquals(Kind.PRIORITY, all.get(0).kind());
        Observation back = all.stream()
                .filter(o -> o.finding().equals("roll to the right in the step"))
                .findFirst()
                .orElseThrow();
        assertEquals("hop: roll to the left in the hop", back.causedBy());
        assertTrue(all.stream().noneMatch(o -> o.kind() == Kind.NOT_VISIBLE));
    }

    @Test
    void describesTheArmsWithoutJudgingThem() {
        arms = Map.of(
                PhaseName.HOP, ArmAction.SINGLE, PhaseName.STEP, ArmAction.DOUBLE, PhaseName.JUMP, ArmAction.NOT_SEEN);
        Observation told = of(Kind.REMARK).get(0);
        assertEquals("single in the hop, double in the step", told.finding());
        assertTrue(told.text().contains("described, not judged"));
    }

    @Test
    void saysTheSameInGermanWithTheSameCodesAndNumbers() {
        with("step", "trunk_change_deg", 26, 2).with("hop", "trunk_change_deg", 20, 2);
        arms = Map.of(PhaseName.HOP, ArmAction.SINGLE, PhaseName.STEP, ArmAction.DOUBLE);
        List<Observation> english = observations();
        rules = RuleSetReader.builtIn(Language.GERMAN);
        List<Observation> german = observations();
        assertEquals(findings(english), findings(german));
        for (int i = 0; i < english.size(); i++) {
            assertEquals(english.get(i).evidence(), german.get(i).evidence());
            assertEquals(english.get(i).basis(), german.get(i).basis());
            assertEquals(english.get(i).causedBy(), german.get(i).causedBy());
            assertNotEquals(english.get(i).text(), german.get(i).text());
        }
        Observation step = german.stream()
                .filter(o -> o.phase().equals("step"))
                .findFirst()
                .orElseThrow();
        assertEquals("Rumpf kippt im Step nach vorn", step.heading());
        assertEquals(
                "Der Rumpf kippte w\u00e4hrend des Steps nach vorn; das dreht die Beine nach hinten und verk\u00fcrzt Step und"
                        + " Jump. Gemessen: 26,0 Grad (22,7 bis 29,3 in 9 von 10 F\u00e4llen), Richtwert -12,0 bis 10,0 Grad."
                        + " Wahrscheinlich schon vorher angelegt (Hop: Rumpf kippt im Hop nach vorn): dort ansetzen.",
                step.text());
        assertTrue(step.practice().contains("Bei Schmerzen ist Schluss."), step.practice());
        Observation armsTold = german.get(german.size() - 2);
        assertEquals("single in the hop, double in the step", armsTold.finding());
        assertEquals("Einarmschwung im Hop, Doppelarmschwung im Step", armsTold.heading());
        assertEquals("nicht zu sehen", german.get(german.size() - 1).heading());
    }

    @Test
    void whatIsOnlyRememberedNeverGivesHighConfidence() {
        with("hop", "takeoff_angle_deg", 60, 0.1);
        assertEquals(Confidence.MEDIUM, observations().get(0).confidence());
    }

    /** practice: 0.75 d / (d + 0.5) reaches 0.6 at d = 2: at 10 + 2 * 6 + 1.645 * 2 = 25.29 degrees. */
    @ParameterizedTest
    @CsvSource({
        "25.2, GOOD, 1, MEDIUM",
        "25.4, GOOD, 1, HIGH",
        "40, USABLE, 1, MEDIUM",
        "40, GOOD, 0.8, MEDIUM",
        "40, POOR, 1, LOW"
    })
    void highConfidenceMustBeEarned(double value, Quality clip, double contact, Confidence confidence) {
        quality = clip;
        contactConfidence = contact;
        with("step", "trunk_change_deg", value, 2);
        assertEquals(confidence, observations().get(0).confidence());
    }

    @Test
    void aWiderIntervalNeverRaisesTheConfidence() {
        with("step", "trunk_change_deg", 30, 2);
        double sure = observations().get(0).severity();
        evidence.clear();
        with("step", "trunk_change_deg", 30, 5);
        assertTrue(observations().get(0).severity() < sure);
        assertNotEquals(Confidence.HIGH, observations().get(0).confidence());
    }
}
