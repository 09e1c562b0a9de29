package org.boardtopit.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.boardtopit.clips.Correction;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.measures.Quality;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.ReviewRow;

/**
 * The events of a competition for the analyst to look at, the most doubtful first, with the corrections in force in their places.
 *
 * <p>Doubt is a number to sort by and no probability: 1 - (1 - t) (1 - c) (1 - q). Of the time, t = plus-minus over
 * {@value #LOOSE_PM_S} s, at most 0.9; of the contact, c = 1 - confidence; of the clip, q = {@value #USABLE_DOUBT} where its
 * quality is usable and {@value #POOR_DOUBT} where it is poor. Contacts of the approach count {@value #APPROACH_WEIGHT} of that:
 * little is read of them. The weights are a first guess, not tuned.
 */
public final class ReviewSheet {
    /** Four times what makes a contact count as loosely timed among the causes of quality (two standard deviations of 12.5 ms). */
    private static final double LOOSE_PM_S = 0.1;

    private static final double MOST_OF_TIME = 0.9;
    private static final double USABLE_DOUBT = 0.1;
    private static final double POOR_DOUBT = 0.3;
    private static final double APPROACH_WEIGHT = 0.5;
    private static final double UNSURE = 0.8;
    /** Of a frame: a time that is known to less than this is as good as anybody reads it off the picture. */
    private static final double FINE_FRAMES = 1;

    private static final int LONGEST_WHY = 160;

    private static final String TOUCHDOWN = "touchdown";
    private static final String TOE_OFF = "toe-off";

    private final List<ReviewRow> rows = new ArrayList<>();

    /**
     * Adds a measured clip.
     *
     * @param contacts as the program found them, without corrections of contacts
     */
    public void add(AttemptRow attempt, List<ContactRow> contacts, List<Correction> corrections) {
        List<Correction> left = new ArrayList<>(corrections);
        for (ContactRow contact : contacts) {
            if (contact.touchdownS() != null) {
                add(touchdown(attempt, contact), contact, true, left);
            }
            if (contact.toeOffS() != null) {
                add(toeOff(attempt, contact), contact, false, left);
            }
        }
        left.forEach(c -> rows.add(alone(attempt.clip(), c)));
    }

    /** Adds a clip that was not measured, for its corrections' sake. */
    public void add(String clip, List<Correction> corrections) {
        corrections.forEach(c -> rows.add(alone(clip, c)));
    }

    /** All rows: corrections that are about no event, then the events by their doubt. */
    public List<ReviewRow> rows() {
        List<ReviewRow> sorted = new ArrayList<>(rows);
        sorted.sort(Comparator.comparingDouble((ReviewRow r) -> r.doubt() == null ? -2 : -r.doubt()));
        return sorted;
    }

    private void add(ReviewRow open, ContactRow contact, boolean touchdown, List<Correction> left) {
        List<Correction> own = left.stream()
                .filter(c -> c.field().needsContact()
                        && isOf(c, contact)
                        && touchdown != c.field().isToeOff())
                .toList();
        left.removeAll(own);
        if (own.isEmpty()) {
            rows.add(open);
        }
        own.forEach(c -> rows.add(open.with(c.field().label(), c.text(), c.by(), c.note())));
    }

    private static boolean isOf(Correction correction, ContactRow contact) {
        return correction.contact().equals(Integer.toString(contact.contact()))
                || correction.contact().equals(contact.kind().label());
    }

    private static ReviewRow alone(String clip, Correction c) {
        Integer number = c.contact().matches("[0-9]+") ? Integer.valueOf(c.contact()) : null;
        return new ReviewRow(
                null,
                clip,
                number,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                true,
                "a correction in force",
                c.field().label(),
                c.text(),
                c.by(),
                c.note());
    }

    private static ReviewRow touchdown(AttemptRow attempt, ContactRow c) {
        return event(attempt, c, TOUCHDOWN, c.touchdownFrame(), c.touchdownS(), c.touchdownPmS(), "touchdown_frame");
    }

    private static ReviewRow toeOff(AttemptRow attempt, ContactRow c) {
        return event(attempt, c, TOE_OFF, c.toeOffFrame(), c.toeOffS(), c.toeOffPmS(), "toe_off_frame");
    }

    private static ReviewRow event(
            AttemptRow attempt, ContactRow c, String event, Integer frame, Double s, Double pmS, String field) {
        return new ReviewRow(
                doubt(attempt, c, pmS),
                attempt.clip(),
                c.contact(),
                c.kind(),
                c.foot(),
                event,
                frame,
                s,
                pmS,
                c.confidence(),
                false,
                why(attempt, c, pmS),
                field,
                "",
                "",
                "");
    }

    private static double doubt(AttemptRow attempt, ContactRow contact, Double pmS) {
        double ofTime = pmS == null ? MOST_OF_TIME : Math.min(MOST_OF_TIME, pmS / LOOSE_PM_S);
        double ofContact = 1 - contact.confidence();
        double ofClip =
                switch (attempt.quality()) {
                    case GOOD -> 0;
                    case USABLE -> USABLE_DOUBT;
                    case POOR -> POOR_DOUBT;
                };
        double doubt = 1 - (1 - ofTime) * (1 - ofContact) * (1 - ofClip);
        return contact.kind() == ContactKind.APPROACH ? APPROACH_WEIGHT * doubt : doubt;
    }

    private static String why(AttemptRow attempt, ContactRow contact, Double pmS) {
        List<String> reasons = new ArrayList<>();
        double frames = pmS == null || attempt.fps() == null ? 0 : pmS * attempt.fps();
        if (frames > FINE_FRAMES) {
            reasons.add(String.format(Locale.ROOT, "timed to +- %.1f frames only", frames));
        }
        if (contact.confidence() < UNSURE) {
            reasons.add(String.format(Locale.ROOT, "a contact with confidence %.2f", contact.confidence()));
        }
        if (attempt.quality() != Quality.GOOD) {
            reasons.add("quality of the clip " + attempt.quality().label()
                    + (attempt.warnings().isEmpty()
                            ? ""
                            : ": " + attempt.warnings().get(0)));
        }
        return reasons.isEmpty() ? "nothing in particular" : shortened(String.join("; ", reasons));
    }

    /** A worksheet is read back, and cells of sheets are short. */
    private static String shortened(String text) {
        return text.length() <= LONGEST_WHY ? text : text.substring(0, LONGEST_WHY - 3) + "...";
    }
}
