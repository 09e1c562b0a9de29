package org.boardtopit.report.overlay;

import java.util.Objects;
import org.boardtopit.signal.Point2;

/**
 * One end of one ground contact, as a mark on the runway that is drawn from its time on.
 *
 * @param contact what the contact is called, such as {@code "hop landing"}; empty for one that is only a small mark, as those
 *     of the approach are
 * @param label text beside the mark; empty for a mark without one
 * @param place the foot tip on the runway, in px of the fixed picture; unknown when it could not be placed, then the mark
 *     appears on the time axis only
 * @param timeUs the measured instant, between frames
 */
public record ContactMark(String contact, Instant instant, String label, Point2 place, long timeUs) {

    /** What follows the label of a contact that a person put right. */
    public static final String CORRECTED = " *";

    public enum Instant {
        TOUCHDOWN,
        TOE_OFF
    }

    public ContactMark {
        Objects.requireNonNull(contact, "contact");
        Objects.requireNonNull(instant, "instant");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(place, "place");
    }

    /**
     * A mark with the customary label: in English "hop landing L 2.18 s" for a touchdown, "off 2.31 s" for a toe-off.
     *
     * @param foot as the label calls it
     */
    public static ContactMark labelled(
            String contact, String foot, Instant instant, Point2 place, long timeUs, OverlayWords words) {
        double timeS = timeUs / 1e6;
        String label = instant == Instant.TOUCHDOWN ? words.touchdown(contact, foot, timeS) : words.toeOff(timeS);
        return new ContactMark(contact, instant, label, place, timeUs);
    }

    /** A small mark without name and label. */
    public static ContactMark small(Instant instant, Point2 place, long timeUs) {
        return new ContactMark("", instant, "", place, timeUs);
    }

    /** The same mark with the sign of a contact that a person put right, a star behind its label. */
    public ContactMark withCorrectedSign() {
        return new ContactMark(contact, instant, (label + CORRECTED).strip(), place, timeUs);
    }

    public boolean isTouchdown() {
        return instant == Instant.TOUCHDOWN;
    }

    public boolean isSmall() {
        return contact.isEmpty();
    }
}
