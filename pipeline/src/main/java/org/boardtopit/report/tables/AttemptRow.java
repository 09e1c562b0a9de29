package org.boardtopit.report.tables;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.AttemptQuantity;
import org.boardtopit.measures.EffortClass;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.ScaleSource;

/**
 * One attempt: a row of attempts.csv. Null where something is not known or not measurable.
 *
 * @param result as the sheet has it; a lone - is a pass and stays as it is, it cannot be a formula
 * @param officialM from the take-off line to the mark in the sand, cut off to the centimetre and never rounded up
 * @param direction which way the athlete goes in the picture
 * @param fps frames a second of the clip
 * @param effectiveM hop, step and jump together
 * @param toeToBoardM from the toe tip on the board to the take-off line; 0 or more in a valid attempt
 * @param hopPct of effectiveM, like the other two
 * @param leadPct the largest share less the next largest, in points
 * @param leadPctPm half the width of the 95 % interval of leadPct
 * @param closureRatio measured distance over the official one
 * @param gravityRatio acceleration fitted in flight over 9.81 m/s2
 * @param warnings one sentence each
 * @param more what is not in it is not known
 */
public record AttemptRow(
        String clip,
        String competition,
        String event,
        String bib,
        String athlete,
        Integer attempt,
        AttemptResult result,
        Double officialM,
        Double windMs,
        Foot takeoffFoot,
        Direction direction,
        Double fps,
        Double effectiveM,
        Double toeToBoardM,
        Double hopM,
        Double stepM,
        Double jumpM,
        Double hopPct,
        Double stepPct,
        Double jumpPct,
        Double leadPct,
        Double leadPctPm,
        EffortClass effortClass,
        Double approachSpeedMs,
        ScaleSource scaleSource,
        Double closureRatio,
        Double gravityRatio,
        Quality quality,
        List<String> warnings,
        Map<AttemptQuantity, Double> more) {

    private static final String RESULTS =
            Arrays.stream(AttemptResult.values()).map(AttemptResult::symbol).collect(Collectors.joining("|"));

    /** The columns of attempts.csv. */
    public static final Table<AttemptRow> TABLE = new Table<>("attempts.csv", columns());

    public AttemptRow {
        Objects.requireNonNull(clip, "clip");
        warnings = List.copyOf(warnings);
        more = Map.copyOf(more);
    }

    private static List<Column<AttemptRow>> columns() {
        List<Column<AttemptRow>> columns = new ArrayList<>(List.of(
                Column.text("clip", AttemptRow::clip),
                Column.text("competition", AttemptRow::competition),
                Column.text("event", AttemptRow::event),
                Column.text("bib", AttemptRow::bib),
                Column.text("athlete", AttemptRow::athlete),
                Column.whole("attempt", AttemptRow::attempt),
                Column.label("result", RESULTS, row -> row.result() == null ? null : row.result()::symbol),
                Column.truncated("official_m", 2, AttemptRow::officialM),
                Column.number("wind_ms", 1, AttemptRow::windMs),
                Column.label("takeoff_foot", Column.oneOf(Foot.values()), AttemptRow::takeoffFoot),
                Column.label("direction", Column.oneOf(Direction.values()), AttemptRow::direction),
                Column.number("fps", 3, AttemptRow::fps),
                Column.number("effective_m", 2, AttemptRow::effectiveM),
                Column.number("toe_to_board_m", 3, AttemptRow::toeToBoardM),
                Column.number("hop_m", 2, AttemptRow::hopM),
                Column.number("step_m", 2, AttemptRow::stepM),
                Column.number("jump_m", 2, AttemptRow::jumpM),
                Column.number("hop_pct", 2, AttemptRow::hopPct),
                Column.number("step_pct", 2, AttemptRow::stepPct),
                Column.number("jump_pct", 2, AttemptRow::jumpPct),
                Column.number("lead_pct", 2, AttemptRow::leadPct),
                Column.number("lead_pct_pm", 2, AttemptRow::leadPctPm),
                Column.label("effort_class", Column.oneOf(EffortClass.values()), AttemptRow::effortClass),
                Column.number("approach_speed_ms", 2, AttemptRow::approachSpeedMs),
                Column.label("scale_source", Column.oneOf(ScaleSource.values()), AttemptRow::scaleSource),
                Column.number("closure_ratio", 3, AttemptRow::closureRatio),
                Column.number("gravity_ratio", 3, AttemptRow::gravityRatio),
                Column.label("quality", Column.oneOf(Quality.values()), AttemptRow::quality),
                Column.text("warnings", row -> String.join("; ", row.warnings()))));
        for (AttemptQuantity quantity : AttemptQuantity.values()) {
            columns.add(Column.number(
                    quantity.column(), quantity.decimals(), row -> row.more().get(quantity)));
        }
        return columns;
    }
}
