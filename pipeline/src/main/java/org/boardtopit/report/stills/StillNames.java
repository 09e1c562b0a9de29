package org.boardtopit.report.stills;

import java.util.List;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.report.tables.ContactRow;

/** The files of stills. Other people's pages and documents depend on their names. */
public final class StillNames {
    /** The folder in the output. */
    public static final String FOLDER = "stills";

    private StillNames() {}

    /**
     * One still.
     *
     * @param clip name of the clip as for overlays
     * @param contact its number in contacts.csv; for a flight that of the contact before it
     */
    public static String still(String clip, int contact, StillInstant instant) {
        return clip + "-" + contact + "-" + instant.label() + ".jpg";
    }

    /** All of an attempt. It is written last: when it is there the others are. */
    public static String strip(String clip) {
        return clip + "-strip.jpg";
    }

    /** The runway with the athlete at every contact. */
    public static String phases(String clip) {
        return clip + "-phases.jpg";
    }

    /** True when a clip with these contacts has a strip. */
    public static boolean hasStrip(List<ContactRow> contacts) {
        return contacts.stream().anyMatch(c -> c.kind() != ContactKind.APPROACH);
    }
}
