package org.boardtopit.report.stills;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.boardtopit.measures.Reading;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The plus-minus is half of a 90 % interval: 1.645 standard deviations of a Gaussian (any table of the normal distribution, TAB). */
class ValuesTest {
    private final Values english = new Values(Words.of("picture", Language.ENGLISH));
    private final Values german = new Values(Words.of("picture", Language.GERMAN));

    @ParameterizedTest
    @CsvSource({
        // value, sd, signed, text
        "151.6, 6.2, false, 152\u00b0 \u00b110",
        "151.6, 0.5, false, 151.6\u00b0 \u00b10.8",
        "151.6, 0.01, false, 151.6\u00b0 \u00b10.1",
        "7.4, 2.0, true, +7\u00b0 \u00b13",
        "-7.4, 2.0, true, \u22127\u00b0 \u00b13",
        "0.3, 2.0, true, 0\u00b0 \u00b13",
        "-0.3, 2.0, true, 0\u00b0 \u00b13",
        "151.6, NaN, false, 152\u00b0"
    })
    void degreesHaveAsManyDigitsAsTheirUncertaintyLeaves(double value, double sd, boolean signed, String text) {
        assertEquals(text, english.degrees(new Reading(value, sd), signed));
    }

    @Test
    void timesAndLengthsHaveTheirUnitBeforeThePlusMinus() {
        assertEquals("0.142 s \u00b10.008", english.seconds(new Reading(0.1421, 0.005)));
        assertEquals("0.14 s \u00b10.02", english.seconds(new Reading(0.1421, 0.01)));
        assertEquals("5.21 m \u00b10.03", english.metres(new Reading(5.208, 0.02)));
        assertEquals("35.1 % \u00b10.3", english.percent(new Reading(35.14, 0.2)));
    }

    @Test
    void germanHasACommaInPictures() {
        assertEquals("5,21 m \u00b10,03", german.metres(new Reading(5.208, 0.02)));
    }
}
