package org.boardtopit.measures;

import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.phases.Phase;

/**
 * A support and the flight after it, up to the next touchdown: what each of hop, step and jump is, and each jump of a drill.
 *
 * @param support the contact it begins with, whose toe-off is known
 * @param next the one that ends it
 */
record Bound(Phase phase, Contact support, Contact next) {
    /** The phase carries the times of its contacts; this much is lost in rounding at most. */
    private static final double SAME_S = 1e-6;

    /** Of a phase that begins with one contact and ends with another; empty for an approach and a landing. */
    static Optional<Bound> of(Phase phase, ContactTimeline contacts) {
        Optional<Contact> support = touching(contacts, phase.startS())
                .filter(c -> Double.isFinite(c.toeOffS()) && c.foot() != Foot.BOTH && c.toeOffS() < phase.endS());
        Optional<Contact> next = touching(contacts, phase.endS());
        return support.isPresent() && next.isPresent()
                ? Optional.of(new Bound(phase, support.get(), next.get()))
                : Optional.empty();
    }

    private static Optional<Contact> touching(ContactTimeline contacts, double timeS) {
        return contacts.contacts().stream()
                .filter(c -> Math.abs(c.touchdownS() - timeS) < SAME_S)
                .findFirst();
    }

    /** True when it ends in the sand, on both feet. */
    boolean intoPit() {
        return next.kind() == ContactKind.PIT;
    }

    /** The leg that swings during the support. */
    Foot free() {
        return support.foot().other();
    }

    double toeOffS() {
        return support.toeOffS();
    }

    double endS() {
        return next.touchdownS();
    }

    double middleOfFlightS() {
        return (toeOffS() + endS()) / 2;
    }

    Reading supportTimeS() {
        return new Reading(support.supportTimeS(), Math.hypot(support.touchdownSdS(), support.toeOffSdS()));
    }

    Reading flightTimeS() {
        return new Reading(endS() - toeOffS(), Math.hypot(support.toeOffSdS(), next.touchdownSdS()));
    }

    /** From touchdown to touchdown. */
    Reading intervalS() {
        return new Reading(endS() - support.touchdownS(), Math.hypot(support.touchdownSdS(), next.touchdownSdS()));
    }

    /** Support time over the interval in per cent. With p that share: the three instants count 1 - p, 1 and p. */
    Reading supportSharePct() {
        double interval = intervalS().value();
        double p = supportTimeS().value() / interval;
        double sd =
                Math.hypot(Math.hypot((1 - p) * support.touchdownSdS(), support.toeOffSdS()), p * next.touchdownSdS());
        return new Reading(100 * p, 100 * sd / interval);
    }
}
