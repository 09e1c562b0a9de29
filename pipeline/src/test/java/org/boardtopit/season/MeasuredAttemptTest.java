package org.boardtopit.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.measures.Quality;
import org.boardtopit.report.tables.AthleteMeasure;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.season.MeasuredAttempt.Card;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasuredAttemptTest {
    private static final Map<String, String> KINDS =
            Map.of("0", "approach", "1", "board", "2", "hop_landing", "3", "step_landing", "4", "pit");

    private static IntervalRow row(String of, String part, String measure, double value, double half) {
        return new IntervalRow("a.mp4", of, part, measure, value, value - half, value + half, "");
    }

    private static Card card(AttemptResult result, Quality quality) {
        return new Card("a.mp4", result, 14.88, 0.8, 14.98, quality);
    }

    @Test
    void contactsAreKnownByTheirKindAndNotByTheirNumber() {
        MeasuredAttempt attempt = MeasuredAttempt.of(
                        card(AttemptResult.VALID, Quality.GOOD),
                        KINDS,
                        List.of(
                                row("contact", "0", "support_time_s", 0.100, 0.01),
                                row("contact", "1", "support_time_s", 0.110, 0.01645),
                                row("contact", "3", "leg_plant_touchdown_deg", 65, 3.29),
                                row("contact", "3", "leg_plant_toe_off_deg", 120, 3.29),
                                row("phase", "step", "share_pct", 28.7, 0.329)))
                .orElseThrow();
        assertEquals(
                Set.of(
                        AthleteMeasure.OFFICIAL,
                        AthleteMeasure.SUPPORT_TIME_BOARD,
                        AthleteMeasure.LEG_PLANT_STEP_LANDING,
                        AthleteMeasure.STEP_SHARE),
                attempt.values().keySet());
        Estimate board = attempt.values().get(AthleteMeasure.SUPPORT_TIME_BOARD);
        assertEquals(0.110, board.value(), 1e-12);
        assertEquals(0.010, board.sd(), 1e-12, "a 90 % interval is 1.645 standard deviations to either side");
    }

    /** By hand: 0.0329 / 1.645 = 0.02 for each of three, and 0.02 times the root of 3. */
    @Test
    void theEffectiveDistanceHasTheErrorsOfItsPartsInQuadrature() {
        MeasuredAttempt attempt = MeasuredAttempt.of(
                        card(AttemptResult.VALID, Quality.GOOD),
                        KINDS,
                        List.of(
                                row("phase", "hop", "distance_m", 5.6, 0.0329),
                                row("phase", "step", "distance_m", 4.3, 0.0329),
                                row("phase", "jump", "distance_m", 5.1, 0.0329)))
                .orElseThrow();
        assertEquals(14.98, attempt.values().get(AthleteMeasure.EFFECTIVE).value());
        assertEquals(0.03464, attempt.values().get(AthleteMeasure.EFFECTIVE).sd(), 1e-5);
    }

    @ParameterizedTest
    @CsvSource({"VALID, true", "FAILED, false", "PASSED, false", "RETIRED, false", ", true"})
    void onlyAValidAttemptHasADistance(AttemptResult result, boolean counts) {
        MeasuredAttempt attempt =
                MeasuredAttempt.of(card(result, Quality.GOOD), KINDS, List.of()).orElseThrow();
        assertEquals(counts, attempt.values().containsKey(AthleteMeasure.OFFICIAL));
        assertEquals(counts, Double.isFinite(attempt.bestM()));
    }

    @Test
    void aPoorAttemptCountsForTheOfficialDistanceOnly() {
        MeasuredAttempt attempt = MeasuredAttempt.of(
                        card(AttemptResult.VALID, Quality.POOR),
                        KINDS,
                        List.of(row("attempt", "", "approach_speed_ms", 9.3, 0.05)))
                .orElseThrow();
        assertTrue(attempt.poor());
        assertEquals(Set.of(AthleteMeasure.OFFICIAL), attempt.values().keySet());
    }

    @Test
    void aDrillIsNoAttempt() {
        assertFalse(MeasuredAttempt.of(card(null, Quality.GOOD), Map.of("0", "drill"), List.of())
                .isPresent());
    }
}
