package org.boardtopit.report.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.ContactQuantity;

/**
 * One contact with the ground: a row of contacts.csv. Null where something is not known or not measurable.
 *
 * @param contact number in the order of time, from 0
 * @param touchdownS seconds after the first frame of the clip, finer than a frame
 * @param touchdownPmS half the width of its 95 % interval
 * @param touchdownFrame frame whose time is nearest
 * @param toeAlongM toe tip on the runway, from the take-off line, towards the pit positive
 * @param confidence that the contact is one and of this kind, 0 to 1
 * @param corrected by hand
 * @param touchdown posture at the last instant before the ground
 * @param toeOff posture at the last instant on it
 * @param more what is not in it is not known
 */
public record ContactRow(
        String clip,
        int contact,
        ContactKind kind,
        Foot foot,
        Double touchdownS,
        Double touchdownPmS,
        Double toeOffS,
        Double toeOffPmS,
        Double supportTimeS,
        Double supportTimePmS,
        Integer touchdownFrame,
        Integer toeOffFrame,
        Double toeAlongM,
        Double toeAlongPmM,
        Double confidence,
        Boolean corrected,
        InstantAngles touchdown,
        InstantAngles toeOff,
        Map<ContactQuantity, Double> more) {

    /** The columns of contacts.csv. */
    public static final Table<ContactRow> TABLE = new Table<>("contacts.csv", columns());

    public ContactRow {
        Objects.requireNonNull(clip, "clip");
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(touchdown, "touchdown");
        Objects.requireNonNull(toeOff, "toeOff");
        more = Map.copyOf(more);
        if (contact < 0) {
            throw new IllegalArgumentException("contacts are counted from 0, was " + contact);
        }
    }

    private static List<Column<ContactRow>> columns() {
        List<Column<ContactRow>> columns = new ArrayList<>(List.of(
                Column.text("clip", ContactRow::clip),
                Column.whole("contact", ContactRow::contact),
                Column.label("kind", Column.oneOf(ContactKind.values()), ContactRow::kind),
                Column.label("foot", Column.oneOf(Foot.values()), ContactRow::foot),
                Column.number("touchdown_s", 4, ContactRow::touchdownS),
                Column.number("touchdown_pm_s", 4, ContactRow::touchdownPmS),
                Column.number("toe_off_s", 4, ContactRow::toeOffS),
                Column.number("toe_off_pm_s", 4, ContactRow::toeOffPmS),
                Column.number("support_time_s", 4, ContactRow::supportTimeS),
                Column.number("support_time_pm_s", 4, ContactRow::supportTimePmS),
                Column.whole("touchdown_frame", ContactRow::touchdownFrame),
                Column.whole("toe_off_frame", ContactRow::toeOffFrame),
                Column.number("toe_along_m", 3, ContactRow::toeAlongM),
                Column.number("toe_along_pm_m", 3, ContactRow::toeAlongPmM),
                Column.number("confidence", 3, ContactRow::confidence),
                Column.yesOrNo("corrected", ContactRow::corrected)));
        columns.addAll(InstantAngles.columns("touchdown", ContactRow::touchdown));
        columns.addAll(InstantAngles.columns("toe_off", ContactRow::toeOff));
        for (ContactQuantity quantity : ContactQuantity.values()) {
            if (columns.stream().noneMatch(c -> c.name().equals(quantity.column()))) {
                columns.add(Column.number(
                        quantity.column(),
                        quantity.decimals(),
                        row -> row.more().get(quantity)));
            }
        }
        return columns;
    }
}
