package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.Foot;
import org.boardtopit.contacts.RearHeel;
import org.boardtopit.fit.FittedMotion;

/** The body at the touchdown and the toe-off of each contact. Lengths and speeds only where there are metres. */
final class ContactPostures {
    /**
     * The foot is braked by some 70 m/s^2 until it touches (measured on our footage), so its speed needs a time: long enough
     * for two frames of 60 a second, short enough to be just before touchdown.
     */
    static final double BEFORE_TOUCHDOWN_S = 0.030;

    /** A heel and a wrist against the hips, which the network reads off alike over the landing (measured on our footage). */
    private static final double STEADY_SD_M = 0.035;

    private final FittedMotion motion;
    private final List<Contact> contacts;
    private final boolean metres;
    private final PostureDoubt doubt;

    ContactPostures(FittedMotion motion, List<Contact> contacts, MetreScale scale) {
        this.motion = motion;
        this.contacts = contacts;
        this.metres = scale.inMetres();
        this.doubt = new PostureDoubt(motion);
    }

    /** Of all contacts, in their order. */
    List<ContactMeasures> all() {
        List<ContactMeasures> all = new ArrayList<>();
        for (Contact contact : contacts) {
            all.add(of(contact, legOf(contact)));
        }
        return all;
    }

    /** In the pit both legs are on the ground; the leg that touched last before stands for both. */
    private Foot legOf(Contact contact) {
        if (contact.foot() != Foot.BOTH) {
            return contact.foot();
        }
        Stream<Contact> before = contacts.stream().filter(c -> c.touchdownS() <= contact.touchdownS());
        return before.map(Contact::foot).filter(f -> f != Foot.BOTH).reduce(Foot.LEFT, (first, last) -> last);
    }

    private ContactMeasures of(Contact contact, Foot leg) {
        Instant down = Instant.touchdown(motion, leg, contact.touchdownS(), contact.touchdownSdS());
        Map<ContactQuantity, Reading> more = new EnumMap<>(ContactQuantity.class);
        arms(more, down, contact.touchdownS(), ContactQuantity.ARM_L_TOUCHDOWN, ContactQuantity.ARM_R_TOUCHDOWN);
        if (contact.foot() == Foot.BOTH) {
            inTheSand(more, down);
            return new ContactMeasures(contact, withDoubtOfArms(down.angles(), contact.touchdownS()), Map.of(), more);
        }
        feet(more, down, leg);
        if (!Double.isFinite(contact.toeOffS())) {
            return new ContactMeasures(contact, angles(down, contact, contact.touchdownS()), Map.of(), more);
        }
        Instant up = Instant.toeOff(motion, leg, contact.toeOffS(), contact.toeOffSdS());
        arms(more, up, contact.toeOffS(), ContactQuantity.ARM_L_TOE_OFF, ContactQuantity.ARM_R_TOE_OFF);
        return new ContactMeasures(
                contact, angles(down, contact, contact.touchdownS()), angles(up, contact, contact.toeOffS()), more);
    }

    private Map<BodyAngle, Reading> angles(Instant instant, Contact contact, double atS) {
        Map<BodyAngle, Reading> angles = instant.angles();
        if (!metres) {
            angles.remove(BodyAngle.FOOT_AHEAD);
        } else if (Double.isFinite(contact.toeAlongM())) {
            angles.put(BodyAngle.FOOT_AHEAD, instant.ahead(contact.toeAlongM(), contact.toeAlongSdM()));
        }
        return withDoubtOfArms(angles, atS);
    }

    private Map<BodyAngle, Reading> withDoubtOfArms(Map<BodyAngle, Reading> angles, double atS) {
        angles.computeIfPresent(BodyAngle.ELBOW_L, (angle, r) -> wider(r, doubt.elbowDeg(Foot.LEFT, atS)));
        angles.computeIfPresent(BodyAngle.ELBOW_R, (angle, r) -> wider(r, doubt.elbowDeg(Foot.RIGHT, atS)));
        return angles;
    }

    private static Reading wider(Reading reading, double sd) {
        return new Reading(reading.value(), Math.hypot(reading.sd(), sd));
    }

    private void arms(
            Map<ContactQuantity, Reading> more,
            Instant instant,
            double atS,
            ContactQuantity left,
            ContactQuantity right) {
        more.put(left, arm(instant, Foot.LEFT, atS));
        more.put(right, arm(instant, Foot.RIGHT, atS));
    }

    private Reading arm(Instant instant, Foot side, double atS) {
        return wider(instant.armDeg(side), doubt.armDeg(side, atS));
    }

    private void feet(Map<ContactQuantity, Reading> more, Instant down, Foot leg) {
        Reading ground = down.speedBefore(p -> p.middleOf(leg).x(), BEFORE_TOUCHDOWN_S);
        Reading body =
                down.speedBefore(p -> p.middleOf(leg).x() - p.centreOfMass().x(), BEFORE_TOUCHDOWN_S);
        more.put(ContactQuantity.FOOT_SPEED_TOUCHDOWN, ground.onlyIf(metres));
        more.put(ContactQuantity.FOOT_SPEED_RELATIVE_TOUCHDOWN, body.onlyIf(metres));
    }

    private void inTheSand(Map<ContactQuantity, Reading> more, Instant down) {
        Reading left = down.length(p -> p.heel(Foot.LEFT).x() - p.hips().x());
        Reading right = down.length(p -> p.heel(Foot.RIGHT).x() - p.hips().x());
        RearHeel heel = RearHeel.of(
                left.value(),
                left.sd(),
                right.value(),
                right.sd(),
                motion.repaired().statureM());
        Reading rear = new Reading(heel.place(), heel.sd());
        Reading behind = down.length(p -> p.hips().x() - p.wrists().x());
        more.put(ContactQuantity.HEEL_AHEAD_TOUCHDOWN, steady(rear));
        more.put(ContactQuantity.WRISTS_BEHIND_TOUCHDOWN, steady(behind));
    }

    private Reading steady(Reading reading) {
        return wider(reading, STEADY_SD_M).onlyIf(metres);
    }
}
