package org.boardtopit.report.comparison;

import org.boardtopit.contacts.ContactKind;

/**
 * An instant that two attempts have in common: one end of a contact.
 *
 * @param number 0 for the only contact of its kind; contacts of a drill count from 0 in time order, those of the approach
 *     backwards from the last stride, which is 1
 * @param touchdown false for a toe-off
 */
public record KeyInstant(ContactKind kind, int number, boolean touchdown) {

    public KeyInstant {
        if (number < 0) {
            throw new IllegalArgumentException("number must not be negative, was " + number);
        }
    }

    /** True for a touchdown from which a phase of the jump or of the drill begins. */
    public boolean beginsPhase() {
        return touchdown && kind != ContactKind.APPROACH;
    }
}
