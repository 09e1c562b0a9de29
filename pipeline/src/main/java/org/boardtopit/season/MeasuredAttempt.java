package org.boardtopit.season;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.measures.Quality;
import org.boardtopit.report.tables.AthleteMeasure;
import org.boardtopit.report.tables.IntervalRow;

/**
 * What is followed of one attempt, as the rows of the tables tell it.
 *
 * @param clip name of the file
 * @param bestM official distance when it counts for the best: of an attempt that is not marked as anything but valid; NaN
 * @param windMs NaN when unknown
 * @param poor of poor quality: only the official distance is taken from it
 */
public record MeasuredAttempt(
        String clip, double bestM, double windMs, boolean poor, Map<AthleteMeasure, Estimate> values) {

    /** Of the distance that the rules cut to the centimetre below: uniform over 1 cm. */
    private static final double OFFICIAL_SD_M = 0.01 / Math.sqrt(12);

    /** Half of a 90 % interval of a Gaussian in standard deviations. */
    private static final double HALF_90 = 1.645;

    private static final List<String> PHASES = List.of("hop", "step", "jump");

    public MeasuredAttempt {
        Objects.requireNonNull(clip, "clip");
        values = Map.copyOf(values);
    }

    /**
     * What the row of attempts.csv says.
     *
     * @param result null when unknown
     * @param officialM null when unknown, like the other numbers
     */
    public record Card(
            String clip, AttemptResult result, Double officialM, Double windMs, Double effectiveM, Quality quality) {}

    /**
     * The attempt of a clip; empty when the clip shows none, as drills do: there is no contact with the board.
     *
     * @param kinds of the contacts, by their number in text
     * @param intervals of this clip
     */
    public static Optional<MeasuredAttempt> of(Card card, Map<String, String> kinds, List<IntervalRow> intervals) {
        if (!kinds.containsValue("board")) {
            return Optional.empty();
        }
        boolean valid = card.result() == null || card.result() == AttemptResult.VALID;
        double officialM = valid && card.officialM() != null ? card.officialM() : Double.NaN;
        boolean poor = card.quality() == Quality.POOR;
        Map<AthleteMeasure, Estimate> values = poor ? new EnumMap<>(AthleteMeasure.class) : read(kinds, intervals);
        if (!poor) {
            effective(card, intervals).ifPresent(e -> values.put(AthleteMeasure.EFFECTIVE, e));
        }
        if (Double.isFinite(officialM)) {
            values.put(AthleteMeasure.OFFICIAL, new Estimate(officialM, OFFICIAL_SD_M));
        }
        double windMs = card.windMs() == null ? Double.NaN : card.windMs();
        return Optional.of(new MeasuredAttempt(card.clip(), officialM, windMs, poor, values));
    }

    private static Map<AthleteMeasure, Estimate> read(Map<String, String> kinds, List<IntervalRow> intervals) {
        Map<AthleteMeasure, Estimate> values = new EnumMap<>(AthleteMeasure.class);
        for (IntervalRow row : intervals) {
            String part = row.of().equals("contact") ? kinds.getOrDefault(row.part(), "") : row.part();
            AthleteMeasure measure = SOURCES.get(row.of() + " " + part + " " + row.measure());
            if (measure != null) {
                values.putIfAbsent(measure, new Estimate(row.value(), sd(row)));
            }
        }
        return values;
    }

    private static double sd(IntervalRow row) {
        return (row.high90() - row.low90()) / 2 / HALF_90;
    }

    /**
     * The effective distance has no interval of its own. Those of its three parts in quadrature are too wide rather than too
     * narrow, for a foot's place is the end of one part and the beginning of the next.
     */
    private static Optional<Estimate> effective(Card card, List<IntervalRow> intervals) {
        List<Double> sds = intervals.stream()
                .filter(row ->
                        row.of().equals("phase") && row.measure().equals("distance_m") && PHASES.contains(row.part()))
                .map(MeasuredAttempt::sd)
                .toList();
        if (card.effectiveM() == null || sds.size() != PHASES.size()) {
            return Optional.empty();
        }
        return Optional.of(new Estimate(
                card.effectiveM(),
                Math.sqrt(sds.stream().mapToDouble(s -> s * s).sum())));
    }

    /** Where intervals.csv has a measure: of, phase or kind of contact, and name. */
    private static final Map<String, AthleteMeasure> SOURCES = Map.ofEntries(
            Map.entry("attempt  approach_speed_ms", AthleteMeasure.APPROACH_SPEED),
            Map.entry("phase hop share_pct", AthleteMeasure.HOP_SHARE),
            Map.entry("phase step share_pct", AthleteMeasure.STEP_SHARE),
            Map.entry("phase jump share_pct", AthleteMeasure.JUMP_SHARE),
            Map.entry("contact board support_time_s", AthleteMeasure.SUPPORT_TIME_BOARD),
            Map.entry("contact hop_landing support_time_s", AthleteMeasure.SUPPORT_TIME_HOP_LANDING),
            Map.entry("contact step_landing support_time_s", AthleteMeasure.SUPPORT_TIME_STEP_LANDING),
            Map.entry("contact board leg_plant_touchdown_deg", AthleteMeasure.LEG_PLANT_BOARD),
            Map.entry("contact hop_landing leg_plant_touchdown_deg", AthleteMeasure.LEG_PLANT_HOP_LANDING),
            Map.entry("contact step_landing leg_plant_touchdown_deg", AthleteMeasure.LEG_PLANT_STEP_LANDING),
            Map.entry("contact board foot_ahead_touchdown_m", AthleteMeasure.FOOT_AHEAD_BOARD),
            Map.entry("contact hop_landing foot_ahead_touchdown_m", AthleteMeasure.FOOT_AHEAD_HOP_LANDING),
            Map.entry("contact step_landing foot_ahead_touchdown_m", AthleteMeasure.FOOT_AHEAD_STEP_LANDING));
}
