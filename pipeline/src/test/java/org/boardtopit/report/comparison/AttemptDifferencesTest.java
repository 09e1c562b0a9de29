package org.boardtopit.report.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.report.tables.DifferenceRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AttemptDifferencesTest {

    private static IntervalRow row(String clip, String of, String part, String measure, double value, double half) {
        return new IntervalRow(clip, of, part, measure, value, value - half, value + half, "");
    }

    private static Contact contact(ContactKind kind) {
        return new Contact(kind, Foot.LEFT, 1, 0, 1.1, 0, 0, 0, 1, false);
    }

    private static final List<Contact> TWO = List.of(contact(ContactKind.APPROACH), contact(ContactKind.BOARD));
    private static final List<Contact> ONE = List.of(contact(ContactKind.BOARD));

    /** 3 and 4 are 5 in quadrature. */
    @ParameterizedTest
    @CsvSource({"10, 15.1, true", "10, 14.9, false", "10, 4.8, true", "10, 5.2, false"})
    void aNumberIsDifferentWhenItIsBeyondBothUncertaintiesTogether(double a, double b, boolean different) {
        AttemptDifferences found = AttemptDifferences.of(
                List.of(row("a.mp4", "phase", "hop", "distance_m", a, 3)),
                ONE,
                List.of(row("b.mp4", "phase", "hop", "distance_m", b, 4)),
                ONE);
        assertEquals(1, found.compared());
        assertEquals(different ? 1 : 0, found.rows().size());
        found.rows().forEach(row -> {
            assertEquals(List.of("a.mp4", "b.mp4", "phase", "hop", "distance_m"), named(row));
            assertEquals(b - a, row.difference(), 1e-12);
            assertEquals(5, row.differencePm90(), 1e-12);
        });
    }

    private static List<String> named(DifferenceRow row) {
        return List.of(row.clipA(), row.clipB(), row.of(), row.part(), row.measure());
    }

    @Test
    void contactsBelongTogetherByWhatTheyAreAndNotByTheirNumber() {
        AttemptDifferences found = AttemptDifferences.of(
                List.of(
                        row("a.mp4", "contact", "0", "knee_touchdown_deg", 120, 1),
                        row("a.mp4", "contact", "1", "knee_touchdown_deg", 150, 1)),
                TWO,
                List.of(row("b.mp4", "contact", "0", "knee_touchdown_deg", 160, 1)),
                ONE);
        assertEquals(1, found.compared());
        assertEquals("board", found.rows().get(0).part());
        assertEquals(10, found.rows().get(0).difference());
    }

    @Test
    void whenAClipBeganIsNoDifferenceOfTheAttempts() {
        AttemptDifferences found = AttemptDifferences.of(
                List.of(row("a.mp4", "contact", "0", "touchdown_s", 1, 0.01)),
                ONE,
                List.of(row("b.mp4", "contact", "0", "touchdown_s", 2, 0.01)),
                ONE);
        assertEquals(0, found.compared());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ENGLISH | hop   | distance           | 5.50 | +0.30 \u00b1 0.10 m",
                "GERMAN  | Hop   | Weite              | 5,50 | +0,30 \u00b1 0,10 m",
            })
    void theTableInThePictureIsInWords(Language language, String where, String what, String a, String difference) {
        AttemptDifferences found = new AttemptDifferences(
                List.of(
                        new DifferenceRow("a.mp4", "b.mp4", "phase", "hop", "distance_m", 5.5, 5.8, 0.3, 0.1),
                        new DifferenceRow("a.mp4", "b.mp4", "contact", "board", "support_time_s", 0.1, 0.2, 0.1, 0.01)),
                40);
        DifferencePage page = new DifferencePage(found, Words.of("comparison", language));
        assertEquals(1, page.lines().size(), "the support time is told of the phase");
        DifferencePage.Line line = page.lines().get(0);
        assertEquals(
                List.of(where, what, a, difference), List.of(line.where(), line.what(), line.a(), line.difference()));
        assertTrue(page.remarks().stream().anyMatch(text -> text.contains("40") && text.contains("4")), "by chance");
    }

    /** Every line a comparison may have can be said in both languages. */
    @ParameterizedTest
    @CsvSource({"ENGLISH", "GERMAN"})
    void contactsAndAnglesHaveWords(Language language) {
        DifferencePage page = new DifferencePage(
                new AttemptDifferences(
                        List.of(
                                new DifferenceRow("a", "b", "contact", "hop_landing", "knee_touchdown_deg", 1, 9, 8, 1),
                                new DifferenceRow("a", "b", "contact", "drill_2", "trunk_toe_off_deg", 1, 9, 8, 1),
                                new DifferenceRow("a", "b", "phase", "skip_3", "flight_time_s", 1, 9, 8, 1),
                                new DifferenceRow("a", "b", "attempt", "", "approach_speed_ms", 1, 9, 8, 1)),
                        10),
                Words.of("comparison", language));
        assertEquals(4, page.lines().size());
        assertTrue(page.lines().get(1).where().endsWith(" 2"));
    }
}
