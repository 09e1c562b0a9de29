package org.boardtopit.measures;

import java.util.Map;
import org.boardtopit.contacts.Contact;

/**
 * The postures of one contact.
 *
 * @param touchdown at the last instant before touchdown
 * @param toeOff at the last instant of support; all unknown in the pit
 * @param more what is not in it was not measured
 */
public record ContactMeasures(
        Contact contact,
        Map<BodyAngle, Reading> touchdown,
        Map<BodyAngle, Reading> toeOff,
        Map<ContactQuantity, Reading> more) {

    public ContactMeasures {
        touchdown = Map.copyOf(touchdown);
        toeOff = Map.copyOf(toeOff);
        more = Map.copyOf(more);
    }

    /** A reading, unknown when it was not made. */
    public Reading atTouchdown(BodyAngle angle) {
        return touchdown.getOrDefault(angle, Reading.UNKNOWN);
    }

    /** A reading, unknown when it was not made. */
    public Reading atToeOff(BodyAngle angle) {
        return toeOff.getOrDefault(angle, Reading.UNKNOWN);
    }

    /** A reading, unknown when it was not made. */
    public Reading of(ContactQuantity quantity) {
        return more.getOrDefault(quantity, Reading.UNKNOWN);
    }

    /** Support time; the errors of both ends are taken as independent. */
    public Reading supportTimeS() {
        return new Reading(contact.supportTimeS(), Math.hypot(contact.touchdownSdS(), contact.toeOffSdS()));
    }
}
