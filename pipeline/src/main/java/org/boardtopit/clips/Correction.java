package org.boardtopit.clips;

import java.util.List;
import java.util.Objects;

/**
 * One line of the analyst's corrections of a clip.
 *
 * @param line of the file, counted from 1
 * @param contact number of a contact as the program found it, or the kind of one; empty where the field needs none
 * @param field what is corrected
 * @param kind one of {@link #KINDS} for {@code kind} and {@code add}; else empty
 * @param foot one of {@link #FEET} for {@code foot} and {@code add}; else empty
 * @param from the instant, or the beginning of a span or of an added contact; NaN where the field needs none
 * @param to the end of a span or of an added contact; NaN where there is none
 * @param inFrames true when these are numbers of frames, false when they are seconds from the first frame
 * @param text the value as it was written
 * @param by who corrected; may be empty
 * @param note why; may be empty
 */
public record Correction(
        int line,
        String contact,
        Field field,
        String kind,
        String foot,
        double from,
        double to,
        boolean inFrames,
        String text,
        String by,
        String note) {

    /** Kinds that a contact of a triple jump may have, in the order in which they may follow each other. */
    public static final List<String> KINDS = List.of("approach", "board", "hop_landing", "step_landing", "pit");

    /** Feet that may touch. */
    public static final List<String> FEET = List.of("L", "R", "both");

    /** What can be corrected. */
    public enum Field implements Label {
        TOUCHDOWN_FRAME("touchdown_frame"),
        TOUCHDOWN_S("touchdown_s"),
        TOE_OFF_FRAME("toe_off_frame"),
        TOE_OFF_S("toe_off_s"),
        FOOT("foot"),
        KIND("kind"),
        /** The program saw a contact where there is none. */
        REMOVE("remove"),
        /** It missed one. */
        ADD("add"),
        /** In these frames it followed somebody else. */
        NOT_THE_ATHLETE("not_the_athlete"),
        /** The clip is not to be measured. */
        REJECT("reject");

        private final String label;

        Field(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }

        /** True when it is about one contact that the program found. */
        public boolean needsContact() {
            return this != ADD && this != NOT_THE_ATHLETE && this != REJECT;
        }

        public boolean isTouchdown() {
            return this == TOUCHDOWN_FRAME || this == TOUCHDOWN_S;
        }

        public boolean isToeOff() {
            return this == TOE_OFF_FRAME || this == TOE_OFF_S;
        }
    }

    public Correction {
        Objects.requireNonNull(field, "field");
        if (line < 1) {
            throw new IllegalArgumentException("lines are counted from 1, was " + line);
        }
        if (field.needsContact() == contact.isEmpty()) {
            throw new IllegalArgumentException(
                    field.label() + (contact.isEmpty() ? " needs a contact" : " needs no contact, was " + contact));
        }
        if (to <= from) {
            throw new IllegalArgumentException("a span must end after it begins, was " + from + " to " + to);
        }
    }
}
