package org.boardtopit.report.tables;

import java.util.List;
import java.util.Objects;

/**
 * One file of the folder, measured or not: a row of clips.csv. Null where something is not known.
 *
 * @param stage where it ended, when it was not measured
 * @param reason one sentence for the user
 * @param durationS from the first frame to the end of the last
 * @param seconds that the clip took to measure
 * @param subjectSeenPct frames with the athlete found
 * @param registeredPct frames matched to the fixed picture
 * @param meanConfidence of the landmarks, 0 to 1
 */
public record ClipRow(
        String clip,
        Outcome outcome,
        String stage,
        String reason,
        Integer frames,
        Double fps,
        Double durationS,
        Integer widthPx,
        Integer heightPx,
        Double seconds,
        String network,
        Double subjectSeenPct,
        Double registeredPct,
        Double meanConfidence) {

    /** The columns of clips.csv. */
    public static final Table<ClipRow> TABLE = new Table<>(
            "clips.csv",
            List.of(
                    Column.text("clip", ClipRow::clip),
                    Column.label("outcome", Column.oneOf(Outcome.values()), ClipRow::outcome),
                    Column.text("stage", ClipRow::stage),
                    Column.text("reason", ClipRow::reason),
                    Column.whole("frames", ClipRow::frames),
                    Column.number("fps", 3, ClipRow::fps),
                    Column.number("duration_s", 3, ClipRow::durationS),
                    Column.whole("width_px", ClipRow::widthPx),
                    Column.whole("height_px", ClipRow::heightPx),
                    Column.number("seconds", 2, ClipRow::seconds),
                    Column.text("network", ClipRow::network),
                    Column.number("subject_seen_pct", 1, ClipRow::subjectSeenPct),
                    Column.number("registered_pct", 1, ClipRow::registeredPct),
                    Column.number("mean_confidence", 3, ClipRow::meanConfidence)));

    public ClipRow {
        Objects.requireNonNull(clip, "clip");
        Objects.requireNonNull(outcome, "outcome");
    }
}
