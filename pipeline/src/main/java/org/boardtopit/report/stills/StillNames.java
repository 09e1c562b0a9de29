package org.boardtopit.report.stills;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.report.tables.ContactRow;

/** The files of stills. Other people's pages and documents depend on their names. */
public final class StillNames {
    /** The folder in the output. */
    public static final String FOLDER = "stills";

    /** What follows the name of a clip; an instant or what shows all of it. */
    private static final Pattern NAME = Pattern.compile(
            "(.+)-(?:strip|phases|\\d+-(?:"
                    + Stream.of(StillInstant.values()).map(StillInstant::label).collect(Collectors.joining("|"))
                    + "))\\.jpg(?:\\.part)?",
            Pattern.DOTALL);

    private StillNames() {}

    /**
     * The clip that a file of the folder is of; empty when it is none that the program writes. The whole name decides: {@code
     * jump-2-flight.jpg} is of the clip {@code jump}, whatever other clips are called.
     */
    public static Optional<String> clipOf(String fileName) {
        Matcher matcher = NAME.matcher(fileName);
        return matcher.matches() ? Optional.of(matcher.group(1)) : Optional.empty();
    }

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
