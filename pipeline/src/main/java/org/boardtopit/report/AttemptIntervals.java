package org.boardtopit.report;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.contacts.Contact;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.AttemptQuantity;
import org.boardtopit.measures.BodyAngle;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.ContactQuantity;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.measures.Reading;
import org.boardtopit.report.tables.IntervalRow;

/** The 90 % intervals of one attempt's measures: rows of intervals.csv. What has no stated uncertainty has no row. */
final class AttemptIntervals {
    /** Half of a 90 % interval of a Gaussian in standard deviations. */
    private static final double HALF_90 = 1.645;

    private static final String FRAME_LIMITED = "frame-limited";

    private final String clip;
    private final AttemptMeasures measures;
    private final List<IntervalRow> rows = new ArrayList<>();

    AttemptIntervals(String clip, AttemptMeasures measures) {
        this.clip = clip;
        this.measures = measures;
    }

    List<IntervalRow> rows() {
        attempt();
        measures.phases().forEach(this::phase);
        for (int i = 0; i < measures.contacts().size(); i++) {
            contact(Integer.toString(i), measures.contacts().get(i));
        }
        return rows;
    }

    private void add(String of, String part, String measure, Reading reading, String remark) {
        double half = HALF_90 * reading.sd();
        if (reading.isKnown() && Double.isFinite(half)) {
            rows.add(new IntervalRow(
                    clip, of, part, measure, reading.value(), reading.value() - half, reading.value() + half, remark));
        }
    }

    private void attempt() {
        measures.distances().ifPresent(d -> {
            double lead = d.effort().leadPct();
            add("attempt", "", "lead_pct", new Reading(lead, measures.leadSdPct()), "");
        });
        add("attempt", "", "approach_speed_ms", measures.approachSpeedMs(), "");
        for (AttemptQuantity quantity : AttemptQuantity.values()) {
            add("attempt", "", quantity.column(), measures.of(quantity), "");
        }
    }

    private void phase(PhaseMeasures p) {
        String name = p.phase().label();
        p.byColumn().forEach((column, reading) -> add("phase", name, column, reading, ""));
    }

    private void contact(String number, ContactMeasures m) {
        Contact c = m.contact();
        String remark = c.frameLimited() ? FRAME_LIMITED : "";
        add("contact", number, "touchdown_s", new Reading(c.touchdownS(), c.touchdownSdS()), remark);
        add("contact", number, "toe_off_s", new Reading(c.toeOffS(), c.toeOffSdS()), remark);
        add("contact", number, "support_time_s", m.supportTimeS(), remark);
        if (measures.scaleSource().tellsTakeoffLine()) {
            add("contact", number, "toe_along_m", new Reading(c.toeAlongM(), c.toeAlongSdM()), "");
        }
        for (BodyAngle angle : BodyAngle.values()) {
            add("contact", number, angle.column("touchdown"), m.atTouchdown(angle), remark);
            add("contact", number, angle.column("toe_off"), m.atToeOff(angle), remark);
        }
        for (ContactQuantity quantity : ContactQuantity.values()) {
            add("contact", number, quantity.column(), m.of(quantity), remark);
        }
    }
}
