package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.List;
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

    /** Of one attempt. Contacts of the approach are left out, as they have no part of their own; those of a drill are drill_0, drill_1 ... */
    public static EvidenceTable of(AttemptMeasures measures) {
        return new Collector().collect(measures);
    }

    private static final class Collector {
        private final List<Evidence> all = new ArrayList<>();
        private int drills;

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
            String part = p.phase().label();
            double supportS = p.supportTimeS().isKnown() ? p.supportTimeS().value() : 0;
            double toeOffS = p.phase().startS() + supportS;
            double middleS = (toeOffS + p.phase().endS()) / 2;
            p.byColumn().forEach((column, reading) -> {
                double shownS =
                        switch (column) {
                            case "support_time_s" -> p.phase().startS();
                            case "trunk_change_deg" -> p.phase().endS();
                            case "vx_takeoff_ms",
                                    "vy_takeoff_ms",
                                    "takeoff_angle_deg",
                                    "speed_change_ms",
                                    "com_height_takeoff_m",
                                    "knee_min_deg" -> toeOffS;
                            default -> middleS;
                        };
                add(part, column, reading, shownS);
            });
        }

        private void contact(ContactMeasures m) {
            Contact c = m.contact();
            if (c.kind() == ContactKind.APPROACH) {
                return;
            }
            String part = c.kind() == ContactKind.DRILL
                    ? "drill_" + drills++
                    : c.kind().label();
            add(part, "support_time_s", m.supportTimeS(), c.touchdownS());
            for (BodyAngle angle : BodyAngle.values()) {
                add(part, angle.column("touchdown"), m.atTouchdown(angle), c.touchdownS());
                add(part, angle.column("toe_off"), m.atToeOff(angle), c.toeOffS());
            }
            for (ContactQuantity quantity : ContactQuantity.values()) {
                boolean toeOff = quantity.column().contains("toe_off");
                add(part, quantity.column(), m.of(quantity), toeOff ? c.toeOffS() : c.touchdownS());
            }
        }
    }
}
