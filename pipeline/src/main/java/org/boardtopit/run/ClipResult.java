package org.boardtopit.run;

import java.util.List;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.PhaseRow;

/** Everything the tables and run.json say of one measured clip. */
public record ClipResult(
        AttemptRow attempt,
        List<PhaseRow> phases,
        List<ContactRow> contacts,
        List<IntervalRow> intervals,
        List<ObservationRow> observations,
        ClipRow clip,
        ClipRecord record) {

    public ClipResult {
        phases = List.copyOf(phases);
        contacts = List.copyOf(contacts);
        intervals = List.copyOf(intervals);
        observations = List.copyOf(observations);
    }
}
