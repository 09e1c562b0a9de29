package org.boardtopit.run;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.PhaseRow;
import org.boardtopit.report.tables.TableWriter;

/** The rows of a run so far, and the tables that hold them. */
final class RunTables {
    private final TableWriter writer;
    private final List<ClipRow> skipped;
    private final List<AttemptRow> attempts = new ArrayList<>();
    private final List<PhaseRow> phases = new ArrayList<>();
    private final List<ContactRow> contacts = new ArrayList<>();
    private final List<IntervalRow> intervals = new ArrayList<>();
    private final List<ObservationRow> observations = new ArrayList<>();
    private final List<ClipRow> clips = new ArrayList<>();
    private final List<ClipRecord> records = new ArrayList<>();

    RunTables(TableWriter writer, List<ClipRow> skipped) {
        this.writer = writer;
        this.skipped = List.copyOf(skipped);
    }

    /** A measured clip. */
    void add(ClipResult result) {
        if (result.joinedTo().isEmpty()) {
            attempts.add(result.attempt());
        }
        phases.addAll(result.phases());
        contacts.addAll(result.contacts());
        intervals.addAll(result.intervals());
        observations.addAll(result.observations());
        clips.add(result.clip());
        records.add(result.record());
    }

    /** A clip without results. */
    void add(ClipRow row) {
        clips.add(row);
    }

    /** Clips in the order they were added, without the skipped files. */
    List<ClipRow> clips() {
        return List.copyOf(clips);
    }

    /** Of the measured clips, in the order they were added. */
    List<ClipRecord> records() {
        return List.copyOf(records);
    }

    List<ClipRow> skipped() {
        return skipped;
    }

    /** Replaces all tables. A clip that clips.csv lists is in the others, as it is written last. */
    void write() throws IOException {
        writer.describe();
        writer.write(IntervalRow.TABLE, intervals);
        writer.write(ObservationRow.TABLE, observations);
        writer.write(ContactRow.TABLE, contacts);
        writer.write(PhaseRow.TABLE, phases);
        writer.write(AttemptRow.TABLE, attempts);
        List<ClipRow> all = new ArrayList<>(clips);
        all.addAll(skipped);
        writer.write(ClipRow.TABLE, all);
    }
}
