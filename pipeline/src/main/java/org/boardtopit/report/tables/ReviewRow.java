package org.boardtopit.report.tables;

import java.util.List;
import java.util.Objects;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;

/**
 * One event that an analyst may want to look at, or a correction that is about none: a row of the worksheet review.csv. Null where
 * something is not known.
 *
 * @param doubt 0 to 1, to sort by
 * @param contact number as the program found it, by which corrections go
 * @param event touchdown or toe-off
 * @param frame whose time is nearest
 * @param pmS two standard deviations of the time
 * @param corrected true when a correction of the event is in force
 * @param why it is doubtful, in words; never empty, for by it a row that was left open is told
 * @param field what may be corrected, ready to be used
 * @param value the correction; empty when there is none
 */
public record ReviewRow(
        Double doubt,
        String clip,
        Integer contact,
        ContactKind kind,
        Foot foot,
        String event,
        Integer frame,
        Double s,
        Double pmS,
        Double confidence,
        Boolean corrected,
        String why,
        String field,
        String value,
        String by,
        String note) {

    /** The columns of review.csv. */
    public static final Table<ReviewRow> TABLE = new Table<>(
            "review.csv",
            List.of(
                    Column.number("doubt", 2, ReviewRow::doubt),
                    Column.text("clip", ReviewRow::clip),
                    Column.whole("contact", ReviewRow::contact),
                    Column.label("kind", Column.oneOf(ContactKind.values()), ReviewRow::kind),
                    Column.label("foot", Column.oneOf(Foot.values()), ReviewRow::foot),
                    Column.text("event", ReviewRow::event),
                    Column.whole("frame", ReviewRow::frame),
                    Column.number("s", 4, ReviewRow::s),
                    Column.number("pm_s", 4, ReviewRow::pmS),
                    Column.number("confidence", 3, ReviewRow::confidence),
                    Column.yesOrNo("corrected", ReviewRow::corrected),
                    Column.text("why", ReviewRow::why),
                    Column.text("field", ReviewRow::field),
                    Column.text("value", ReviewRow::value),
                    Column.text("by", ReviewRow::by),
                    Column.text("note", ReviewRow::note)));

    public ReviewRow {
        Objects.requireNonNull(clip, "clip");
        if (why.isBlank()) {
            throw new IllegalArgumentException("a row must say why it is there");
        }
    }

    /** The same with a correction in it. */
    public ReviewRow with(String otherField, String otherValue, String otherBy, String otherNote) {
        return new ReviewRow(
                doubt,
                clip,
                contact,
                kind,
                foot,
                event,
                frame,
                s,
                pmS,
                confidence,
                true,
                why,
                otherField,
                otherValue,
                otherBy,
                otherNote);
    }
}
