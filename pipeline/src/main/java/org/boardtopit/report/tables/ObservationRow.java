package org.boardtopit.report.tables;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.boardtopit.observations.AthleteLevel;
import org.boardtopit.observations.Confidence;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.phases.PhaseName;

/**
 * One observation on an attempt: a row of observations.csv. Numbers are null where there are none.
 *
 * @param phase null for the attempt as a whole
 * @param decimals of the row's value, guide and interval
 * @param rank within the clip, from 1
 * @param severity widths outside the guide, or inside for a strength
 * @param heading the finding in the language of the competition
 */
public record ObservationRow(
        String clip,
        PhaseName phase,
        Double atS,
        Integer frame,
        String topic,
        String finding,
        Double value,
        String unit,
        Double guideLow,
        Double guideHigh,
        String basis,
        Confidence confidence,
        String text,
        String practice,
        int decimals,
        Kind kind,
        int rank,
        String causedBy,
        AthleteLevel level,
        String part,
        String measure,
        Double low90,
        Double high90,
        Double severity,
        String heading) {

    /** The columns of observations.csv; those from {@code kind} on came later and stand behind the fixed ones. */
    public static final Table<ObservationRow> TABLE = new Table<>(
            "observations.csv",
            List.of(
                    Column.text("clip", ObservationRow::clip),
                    Column.label("phase", Column.oneOf(PhaseName.values()), ObservationRow::phase),
                    Column.number("at_s", 4, ObservationRow::atS),
                    Column.whole("frame", ObservationRow::frame),
                    Column.text("topic", ObservationRow::topic),
                    Column.text("finding", ObservationRow::finding),
                    ofUnit("value", ObservationRow::value),
                    Column.text("unit", ObservationRow::unit),
                    ofUnit("guide_low", ObservationRow::guideLow),
                    ofUnit("guide_high", ObservationRow::guideHigh),
                    Column.text("basis", ObservationRow::basis),
                    Column.label("confidence", Column.oneOf(Confidence.values()), ObservationRow::confidence),
                    Column.text("text", ObservationRow::text),
                    Column.text("practice", ObservationRow::practice),
                    Column.label("kind", Column.oneOf(Kind.values()), ObservationRow::kind),
                    Column.whole("rank", ObservationRow::rank),
                    Column.text("caused_by", ObservationRow::causedBy),
                    Column.label("level", Column.oneOf(AthleteLevel.values()), ObservationRow::level),
                    Column.text("part", ObservationRow::part),
                    Column.text("measure", ObservationRow::measure),
                    ofUnit("low_90", ObservationRow::low90),
                    ofUnit("high_90", ObservationRow::high90),
                    Column.number("severity", 2, ObservationRow::severity),
                    Column.text("heading", ObservationRow::heading)));

    public ObservationRow {
        Objects.requireNonNull(clip, "clip");
        if (rank < 1) {
            throw new IllegalArgumentException("ranks begin with 1, was " + rank);
        }
    }

    private static Column<ObservationRow> ofUnit(String name, Function<ObservationRow, Double> value) {
        return new Column<>(name, CellType.NUMBER, (row, format) -> {
            Double number = value.apply(row);
            return number == null
                    ? ""
                    : BigDecimal.valueOf(number)
                            .setScale(row.decimals(), RoundingMode.HALF_UP)
                            .toPlainString()
                            .replace('.', format.decimal());
        });
    }
}
