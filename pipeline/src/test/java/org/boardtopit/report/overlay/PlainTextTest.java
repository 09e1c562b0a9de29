package org.boardtopit.report.overlay;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlainTextTest {

    /** Ligatures and struck letters after ICAO Doc 9303 part 3 section 6, MEM-H; umlauts can be drawn. */
    @ParameterizedTest
    @CsvSource({
        "J\u00f6rg M\u00fcller, J\u00f6rg M\u00fcller",
        "Gro\u00dfmann, Grossmann",
        "\u00d8yvind, Oeyvind",
        "\u0141ukasz, Lukasz",
        "Zo\u00eb Garc\u00eda, Zoe Garcia",
        "I\u015f\u0131k, Isik",
        "14.88 m \u00b1 0.02, 14.88 m \u00b1 0.02",
        "knee 152\u00b0, knee 152\u00b0",
        "3\u20134, 3-4",
        "\u738b, ?"
    })
    void lettersThatTheFontLacksAreWrittenOut(String text, String plain) {
        assertEquals(plain, PlainText.of(text));
    }

    @Test
    void aLetterAndItsMarkTypedOneAfterTheOtherAreOneLetter() {
        assertEquals("J\u00f6rg", PlainText.of("Jo\u0308rg"));
    }

    @Test
    void lineBreaksBecomeSpaces() {
        assertEquals("a b", PlainText.of("a\nb"));
    }
}
