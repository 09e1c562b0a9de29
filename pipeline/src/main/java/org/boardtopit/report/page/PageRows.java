package org.boardtopit.report.page;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.boardtopit.clips.Correction;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.PhaseRow;

/**
 * What the page is made from: rows of the tables, and of each clip what the tables do not say.
 *
 * @param files of every clip of the run, done or not, in its order
 * @param clips rows of clips.csv: clips that are done, and skipped files
 */
public record PageRows(
        List<ClipFile> files,
        List<AttemptRow> attempts,
        List<PhaseRow> phases,
        List<ContactRow> contacts,
        List<IntervalRow> intervals,
        List<ObservationRow> observations,
        List<ClipRow> clips) {

    /**
     * A clip of the run.
     *
     * @param fileName as in the tables
     * @param name names its pictures ({@link org.boardtopit.clips.Clip#name()})
     * @param joinedTo file name of the clip from the side that shows the same attempt; empty for a clip that tells of one itself
     * @param mayBeSlow true when its pictures may play slower than its times run
     * @param bornYear of the athlete, where the sheet has it
     * @param corrections what an analyst put right
     */
    public record ClipFile(
            String fileName,
            String name,
            Optional<String> joinedTo,
            boolean mayBeSlow,
            OptionalInt bornYear,
            List<Correction> corrections) {

        /** Without corrections. */
        public ClipFile(
                String fileName, String name, Optional<String> joinedTo, boolean mayBeSlow, OptionalInt bornYear) {
            this(fileName, name, joinedTo, mayBeSlow, bornYear, List.of());
        }

        public ClipFile {
            corrections = List.copyOf(corrections);
            Objects.requireNonNull(fileName, "fileName");
            Objects.requireNonNull(name, "name");
        }
    }

    public PageRows {
        files = List.copyOf(files);
        attempts = List.copyOf(attempts);
        phases = List.copyOf(phases);
        contacts = List.copyOf(contacts);
        intervals = List.copyOf(intervals);
        observations = List.copyOf(observations);
        clips = List.copyOf(clips);
    }
}
