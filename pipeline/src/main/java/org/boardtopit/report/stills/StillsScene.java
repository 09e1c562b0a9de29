package org.boardtopit.report.stills;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * All still pictures of one attempt.
 *
 * @param who bib, attempt and distance; never a name
 * @param leftToRight true when the athlete runs to the right in the picture
 * @param columns of the strip, one a contact in the order of time; at most {@link #MOST_COLUMNS}
 * @param rows what the rows of the strip are called, all of them
 * @param scaleNote length of the bar that shows the scale, or that there are no metres
 * @param inMetres false when a still metre is only as good as a usual standing height
 * @param stills in the order of their frames
 * @param phases the runway with the athlete at every contact, when there is one
 */
public record StillsScene(
        List<String> who,
        boolean leftToRight,
        List<Column> columns,
        Map<StillInstant, String> rows,
        String scaleNote,
        boolean inMetres,
        List<Still> stills,
        Optional<PhasesScene> phases) {

    /** A drill can have any number of contacts; the strip, which is held until the clip ends, shows the first of them. */
    public static final int MOST_COLUMNS = 12;

    /**
     * One column of the strip.
     *
     * @param contact its number in contacts.csv
     */
    public record Column(int contact, String title) {}

    public StillsScene {
        who = List.copyOf(who);
        columns = List.copyOf(columns);
        rows = Map.copyOf(rows);
        stills = List.copyOf(stills);
        Objects.requireNonNull(scaleNote, "scaleNote");
        Objects.requireNonNull(phases, "phases");
        if (columns.size() > MOST_COLUMNS) {
            throw new IllegalArgumentException("at most " + MOST_COLUMNS + " columns, was " + columns.size());
        }
        if (rows.size() != StillInstant.values().length) {
            throw new IllegalArgumentException("a row for each instant, was " + rows.size());
        }
    }
}
