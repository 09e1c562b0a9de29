package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;

/**
 * All known numbers of an attempt, each by the name of its part and of its column.
 *
 * @param all in the order of the attempt's parts
 */
public record EvidenceTable(List<Evidence> all) {

    public EvidenceTable {
        all = List.copyOf(all);
    }

    /** What was read of a part; empty when it is not known. */
    public Optional<Evidence> of(String part, String measure) {
        return all.stream()
                .filter(e -> e.part().equals(part) && e.measure().equals(measure))
                .findFirst();
    }

    /** Of one attempt. Contacts of the approach are left out, as they have no part of their own. */
    public static EvidenceTable of(AttemptMeasures measures) {
        return new Collector().collect(measures);
    }

    private static final class Collector {
        private final List<Evidence> all = new ArrayList<>();

        EvidenceTable collect(AttemptMeasures measures) {
            attempt(measures);
            measures.phases().forEach(this::phase);
            measures.contacts().forEach(this::contact);
            return new EvidenceTable(all);
        }

        /** At the instant of the reading, or at another one when it has none of its own. */
        private void add(String part, String measure, Reading reading, double otherwiseS) {
            if (reading.isKnown()) {
                double atS = Double.isFinite(reading.atS()) ? reading.atS() : otherwiseS;
                all.add(new Evidence(part, measure, reading, atS));
            }
        }

        private void attempt(AttemptMeasures m) {
            double boardS = m.contacts().stream()
                    .map(ContactMeasures::contact)
                    .filter(c -> c.kind() == ContactKind.BOARD)
                    .mapToDouble(Contact::touchdownS)
                    .findFirst()
                    .orElse(0);
            m.distances()
                    .ifPresent(d -> add(
                            Evidence.ATTEMPT, "lead_pct", new Reading(d.effort().leadPct(), m.leadSdPct()), boardS));
            add(Evidence.ATTEMPT, "approach_speed_ms", m.approachSpeedMs(), boardS);
            for (AttemptQuantity quantity : AttemptQuantity.values()) {
                add(Evidence.ATTEMPT, quantity.column(), m.of(quantity), boardS);
            }
        }

        private void phase(PhaseMeasures p) {
            String part = p.phase().name().label();
            double supportS = p.supportTimeS().isKnown() ? p.supportTimeS().value() : 0;
            double toeOffS = p.phase().startS() + supportS;
            double middleS = (toeOffS + p.phase().endS()) / 2;
            add(part, "share_pct", p.sharePct(), middleS);
            add(part, "distance_m", p.distanceM(), middleS);
            add(part, "support_time_s", p.supportTimeS(), p.phase().startS());
            add(part, "flight_time_s", p.flightTimeS(), middleS);
            add(part, "vx_takeoff_ms", p.vxTakeoffMs(), toeOffS);
            add(part, "vy_takeoff_ms", p.vyTakeoffMs(), toeOffS);
            add(part, "takeoff_angle_deg", p.takeoffAngleDeg(), toeOffS);
            add(part, "speed_change_ms", p.speedChangeMs(), toeOffS);
            add(part, "com_height_takeoff_m", p.comHeightTakeoffM(), toeOffS);
            add(part, "com_peak_m", p.comPeakM(), middleS);
            add(part, "knee_min_deg", p.kneeMinDeg(), toeOffS);
            add(part, "free_thigh_max_deg", p.freeThighMaxDeg(), middleS);
            add(part, "free_thigh_hold_pct", p.freeThighHoldPct(), middleS);
            add(part, "trunk_change_deg", p.trunkChangeDeg(), p.phase().endS());
            for (PhaseQuantity quantity : PhaseQuantity.values()) {
                add(part, quantity.column(), p.of(quantity), middleS);
            }
        }

        private void contact(ContactMeasures m) {
            Contact c = m.contact();
            if (c.kind() == ContactKind.APPROACH) {
                return;
            }
            String part = c.kind().label();
            add(
                    part,
                    "support_time_s",
                    new Reading(c.supportTimeS(), Math.hypot(c.touchdownSdS(), c.toeOffSdS())),
                    c.touchdownS());
            for (BodyAngle angle : BodyAngle.values()) {
                add(part, angle.column("touchdown"), m.atTouchdown(angle), c.touchdownS());
                add(part, angle.column("toe_off"), m.atToeOff(angle), c.toeOffS());
            }
            for (ContactQuantity quantity : ContactQuantity.values()) {
                boolean toeOff = quantity.column().toLowerCase(Locale.ROOT).contains("toe_off");
                add(part, quantity.column(), m.of(quantity), toeOff ? c.toeOffS() : c.touchdownS());
            }
        }
    }
}
