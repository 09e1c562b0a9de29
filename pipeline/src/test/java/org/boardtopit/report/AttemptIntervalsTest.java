package org.boardtopit.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.BodyAngle;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.Reading;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.report.tables.IntervalRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AttemptIntervalsTest {

    /** One contact at 1 s, 0.1 s long, at 5 m, its knee at 160 deg at touchdown. */
    private static List<IntervalRow> rows(ScaleSource source, boolean frameLimited) {
        Contact contact =
                new Contact(ContactKind.HOP_LANDING, Foot.LEFT, 1.0, 0.01, 1.1, 0.02, 5.0, 0.02, 0.9, frameLimited);
        ContactMeasures posture =
                new ContactMeasures(contact, Map.of(BodyAngle.KNEE, new Reading(160, 4)), Map.of(), Map.of());
        AttemptMeasures measures = new AttemptMeasures(
                Optional.empty(),
                Double.NaN,
                Reading.UNKNOWN,
                source,
                Double.NaN,
                Double.NaN,
                Quality.USABLE,
                List.of(),
                List.of(posture),
                List.of(),
                Map.of());
        return new AttemptIntervals("a.mp4", measures).rows();
    }

    private static long count(List<IntervalRow> rows, String measure) {
        return rows.stream().filter(r -> r.measure().equals(measure)).count();
    }

    /** As contacts.csv does: without either, the place would count from anywhere. */
    @ParameterizedTest
    @CsvSource({"MARKS, 1", "OFFICIAL, 1", "STATURE, 0", "NONE, 0"})
    void placesAFootOnlyWhereTheTakeoffLineIsKnown(ScaleSource source, long rows) {
        assertEquals(rows, count(rows(source, false), "toe_along_m"));
    }

    /** 1.645 standard deviations to each side hold 90 % of a Gaussian (any table of the normal distribution). */
    @Test
    void reaches1645StandardDeviationsToEachSide() {
        IntervalRow knee = rows(ScaleSource.MARKS, false).stream()
                .filter(r -> r.measure().equals("knee_touchdown_deg"))
                .findFirst()
                .orElseThrow();
        assertEquals(160 - 6.58, knee.low90(), 1e-9);
        assertEquals(160 + 6.58, knee.high90(), 1e-9);
    }

    @Test
    void remarksThatTheFrameRateDecides() {
        assertEquals("frame-limited", rows(ScaleSource.MARKS, true).get(0).remark());
    }
}
