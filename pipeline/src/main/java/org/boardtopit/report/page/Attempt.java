package org.boardtopit.report.page;

import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.report.page.PageRows.ClipFile;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.PhaseRow;

/**
 * All rows of one attempt, those of its clip from the side.
 *
 * @param number place among all attempts of the page, from 1
 * @param clipS length of the clip in the time of the tables; null when not known
 * @param phases in the order of time, like the contacts
 * @param otherViews clips from in front or behind of the same attempt
 */
record Attempt(
        int number,
        AttemptRow row,
        ClipFile file,
        Double clipS,
        List<PhaseRow> phases,
        List<ContactRow> contacts,
        Intervals intervals,
        List<ObservationRow> observations,
        List<ClipFile> otherViews) {

    private static final double SAME_INSTANT_S = 5e-4;

    /** The same in another place. */
    Attempt numbered(int other) {
        return new Attempt(other, row, file, clipS, phases, contacts, intervals, observations, otherViews);
    }

    /** Of a whole triple jump; a drill has other contacts. */
    Optional<ContactRow> contact(ContactKind kind) {
        return contacts.stream().filter(contact -> contact.kind() == kind).findFirst();
    }

    Optional<PhaseRow> phase(String name) {
        return phases.stream()
                .filter(phase -> phase.phase().label().equals(name))
                .findFirst();
    }

    /** False for a drill and for an attempt of which the board was not found. */
    boolean isTripleJump() {
        return contact(ContactKind.BOARD).isPresent();
    }

    /** True when the distance of the attempt counts. */
    boolean hasDistance() {
        return row.officialM() != null && (row.result() == null || row.result() == AttemptResult.VALID);
    }

    boolean isCorrected() {
        return contacts.stream().anyMatch(Attempt::isCorrected);
    }

    /** True when a contact at one of its ends was corrected, so that its numbers rest on the correction. */
    boolean isCorrected(PhaseRow phase) {
        return contacts.stream()
                .filter(Attempt::isCorrected)
                .anyMatch(contact ->
                        isAt(contact.touchdownS(), phase.startS()) || isAt(contact.touchdownS(), phase.endS()));
    }

    private static boolean isAt(Double one, Double other) {
        return one != null && other != null && Math.abs(one - other) < SAME_INSTANT_S;
    }

    static boolean isCorrected(ContactRow contact) {
        return Boolean.TRUE.equals(contact.corrected());
    }
}
