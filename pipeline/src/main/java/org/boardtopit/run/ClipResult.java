package org.boardtopit.run;

import java.util.List;
import java.util.Optional;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.PhaseRow;

/**
 * Everything the tables and run.json say of one measured clip.
 *
 * @param joinedTo name of the file of the clip from the side that tells of the attempt, for a clip from another view; {@code
 *     attempt} is then not written, for the attempt has its row already
 */
public record ClipResult(
        AttemptRow attempt,
        List<PhaseRow> phases,
        List<ContactRow> contacts,
        List<IntervalRow> intervals,
        List<ObservationRow> observations,
        ClipRow clip,
        ClipRecord record,
        Optional<String> joinedTo) {

    public ClipResult {
        phases = List.copyOf(phases);
        contacts = List.copyOf(contacts);
        intervals = List.copyOf(intervals);
        observations = List.copyOf(observations);
    }

    /** Of a clip that tells of its attempt by itself. */
    public ClipResult(
            AttemptRow attempt,
            List<PhaseRow> phases,
            List<ContactRow> contacts,
            List<IntervalRow> intervals,
            List<ObservationRow> observations,
            ClipRow clip,
            ClipRecord record) {
        this(attempt, phases, contacts, intervals, observations, clip, record, Optional.empty());
    }

    /** The same, with the time it took in its row of clips.csv. */
    public ClipResult took(double seconds) {
        return with(clip.outcome(), seconds);
    }

    ClipResult with(Outcome outcome, Double seconds) {
        ClipRow row = new ClipRow(
                clip.clip(),
                outcome,
                clip.stage(),
                clip.reason(),
                clip.frames(),
                clip.fps(),
                clip.durationS(),
                clip.widthPx(),
                clip.heightPx(),
                seconds,
                clip.network(),
                clip.subjectSeenPct(),
                clip.registeredPct(),
                clip.meanConfidence());
        return new ClipResult(attempt, phases, contacts, intervals, observations, row, record, joinedTo);
    }
}
