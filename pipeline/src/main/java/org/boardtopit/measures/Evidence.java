package org.boardtopit.measures;

/**
 * A number of an attempt with where and when it was read.
 *
 * @param part of the attempt: the word of a phase ({@code step}) or of the kind of a contact ({@code hop_landing}); {@code
 *     attempt} for the whole
 * @param measure its column in the table of that part, such as {@code trunk_change_deg}
 * @param reading known
 * @param atS seconds from the first frame at which a picture shows it
 */
public record Evidence(String part, String measure, Reading reading, double atS) {
    /** The part that stands for the whole attempt. */
    public static final String ATTEMPT = "attempt";

    public Evidence {
        if (!reading.isKnown()) {
            throw new IllegalArgumentException("evidence needs a value, " + part + " " + measure + " has none");
        }
    }
}
