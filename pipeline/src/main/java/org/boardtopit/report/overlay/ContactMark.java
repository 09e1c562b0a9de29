package org.boardtopit.report.overlay;

import java.util.Locale;
import java.util.Objects;
import org.boardtopit.signal.Point2;

/**
 * One end of one ground contact, as a mark on the runway that is drawn from its time on.
 *
 * @param label text beside the mark; empty for a mark without one
 * @param place the foot tip on the runway, in px of the fixed picture; unknown when it could not be placed, then the mark
 *     appears on the time axis only
 * @param timeUs the measured instant, between frames
 */
public record ContactMark(Kind kind, Foot foot, Instant instant, String label, Point2 place, long timeUs) {

    public enum Kind {
        APPROACH,
        BOARD,
        HOP_LANDING,
        STEP_LANDING,
        PIT;

        public String text() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    public enum Foot {
        L,
        R,
        BOTH;

        public String text() {
            return this == BOTH ? "both" : name();
        }
    }

    public enum Instant {
        TOUCHDOWN,
        TOE_OFF
    }

    public ContactMark {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(foot, "foot");
        Objects.requireNonNull(instant, "instant");
        Objects.requireNonNull(label, "label");
        Objects.requireNonNull(place, "place");
    }

    /**
     * A mark with the customary label: "hop landing L 2.18 s" for a touchdown, "off 2.31 s" for a toe-off, nothing for
     * the contacts of the approach.
     */
    public static ContactMark labelled(Kind kind, Foot foot, Instant instant, Point2 place, long timeUs) {
        return new ContactMark(kind, foot, instant, customaryLabel(kind, foot, instant, timeUs), place, timeUs);
    }

    private static String customaryLabel(Kind kind, Foot foot, Instant instant, long timeUs) {
        if (kind == Kind.APPROACH) {
            return "";
        }
        double timeS = timeUs / 1e6;
        return instant == Instant.TOUCHDOWN
                ? String.format(Locale.ROOT, "%s %s %.2f s", kind.text(), foot.text(), timeS)
                : String.format(Locale.ROOT, "off %.2f s", timeS);
    }

    public boolean isTouchdown() {
        return instant == Instant.TOUCHDOWN;
    }
}
