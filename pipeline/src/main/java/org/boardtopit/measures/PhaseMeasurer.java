package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.phases.Phase;

/**
 * Measures phases, whatever they are called: one that begins and ends with a touchdown ({@link Bound}) has a support, a flight
 * and all that is read of them; of others only the span is said.
 */
final class PhaseMeasurer {
    /** Of the fit and the segment table (measured on our footage). */
    private static final double HEIGHT_SD_M = 0.012;
    /** The top of the flight is told by all of its frames. */
    private static final double PEAK_SD_M = 0.008;

    private final FittedMotion motion;
    private final ContactTimeline contacts;
    private final List<ContactMeasures> postures;
    private final MetreScale scale;
    private final JumpPlaces places;

    /**
     * For one clip.
     *
     * @param postures one for each contact
     */
    PhaseMeasurer(
            FittedMotion motion,
            ContactTimeline contacts,
            List<ContactMeasures> postures,
            MetreScale scale,
            JumpPlaces places) {
        this.motion = motion;
        this.contacts = contacts;
        this.postures = postures;
        this.scale = scale;
        this.places = places;
    }

    /**
     * All of them.
     *
     * @param speedBefore speed along the runway before the first bound
     */
    List<PhaseMeasures> measure(List<Phase> phases, Reading speedBefore) {
        List<PhaseMeasures> measured = new ArrayList<>();
        Reading before = speedBefore;
        for (Phase phase : phases) {
            Optional<Bound> bound = Bound.of(phase, contacts);
            if (bound.isEmpty()) {
                measured.add(PhaseMeasures.spanOnly(phase));
                continue;
            }
            Optional<Flight> flight = flight(bound.get());
            measured.add(measure(bound.get(), flight, before));
            before = flight.map(Flight::vx).orElse(Reading.UNKNOWN);
        }
        return measured;
    }

    /** The flights of those phases that have one; empty where too few frames show it. */
    List<Optional<Flight>> flights(List<Phase> phases) {
        return phases.stream()
                .map(p -> Bound.of(p, contacts))
                .filter(Optional::isPresent)
                .map(b -> flight(b.get()))
                .toList();
    }

    private Optional<Flight> flight(Bound bound) {
        return Flight.between(motion, bound.toeOffS(), bound.endS());
    }

    private ContactMeasures posturesAt(Contact contact) {
        return postures.get(contacts.contacts().indexOf(contact));
    }

    private PhaseMeasures measure(Bound bound, Optional<Flight> flight, Reading speedBefore) {
        ContactMeasures support = posturesAt(bound.support());
        SupportMeasures onTheGround = new SupportMeasures(motion);
        FlightMeasures inTheAir = new FlightMeasures(motion, bound, support, posturesAt(bound.next()));
        Reading vx = flight.map(Flight::vx).orElse(Reading.UNKNOWN).onlyIf(scale.inMetres());
        Reading vy = flight.map(Flight::vy).orElse(Reading.UNKNOWN).onlyIf(scale.inMetres());
        Reading leastKnee = onTheGround.leastKneeDeg(bound.support());
        Map<PhaseQuantity, Reading> more = new EnumMap<>(PhaseQuantity.class);
        more.putAll(onTheGround.more(bound, support.atTouchdown(BodyAngle.KNEE), leastKnee));
        more.putAll(inTheAir.more());
        return new PhaseMeasures(
                bound.phase(),
                bound.supportTimeS(),
                bound.flightTimeS(),
                places.distance(bound).onlyIf(scale.inMetres()),
                places.share(bound),
                scaled(vx),
                scaled(vy),
                takeoffAngle(vx, vy),
                scaled(vx.minus(speedBefore)),
                height(flight.map(Flight::takeoffHeightM), HEIGHT_SD_M, bound.toeOffS()),
                height(flight.map(Flight::peakM), PEAK_SD_M, peakS(bound, vy)),
                leastKnee,
                inTheAir.freeThighMaxDeg(),
                inTheAir.freeThighHoldPct(),
                inTheAir.trunkChangeDeg(),
                ArmSwing.around(motion, bound.support()),
                more);
    }

    private static double peakS(Bound bound, Reading vy) {
        return bound.toeOffS() + Math.max(0, vy.value()) / Projectile.GRAVITY_MS2;
    }

    private Reading height(Optional<Double> heightM, double sdM, double atS) {
        return heightM.map(h -> scaled(new Reading(h, sdM, atS)))
                .orElse(Reading.UNKNOWN)
                .onlyIf(scale.isGrounded());
    }

    private Reading scaled(Reading reading) {
        double ofScale = scale.relativeSd(places.distances()) * reading.value();
        return new Reading(reading.value(), Math.hypot(reading.sd(), ofScale), reading.atS());
    }

    /** A wrong scale turns both speeds alike and leaves the angle. */
    private static Reading takeoffAngle(Reading vx, Reading vy) {
        double square = vx.value() * vx.value() + vy.value() * vy.value();
        double sd = Math.hypot(vx.value() * vy.sd(), vy.value() * vx.sd()) / square;
        return new Reading(Math.toDegrees(Math.atan2(vy.value(), vx.value())), Math.toDegrees(sd));
    }
}
