package org.boardtopit.synthetic;

import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;

/**
 * A contact as it was drawn.
 *
 * @param heelOffS when the heel begins to rise; the toe stays until toe-off
 * @param toeOffS end of the contact; NaN in the pit
 * @param toeAlongM where the tip of the shoe stands
 */
public record TrueContact(
        ContactKind kind, Foot foot, double touchdownS, double heelOffS, double toeOffS, double toeAlongM) {

    public double middleS() {
        return Double.isNaN(toeOffS) ? touchdownS + 0.1 : (touchdownS + toeOffS) / 2;
    }
}
