package org.boardtopit.video.ffmpeg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.boardtopit.video.ClipFacts.Tone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ToneCurveTest {

    /**
     * ITU-R BT.2408 (table 1, MEM-H): diffuse white of 203 cd/m2 is 75 % of the signal in HLG and 58 % in PQ. 18 % grey (26 cd/m2) is 38 % in both.
     */
    @Test
    void paperWhiteAndGreyCardComeOutAlikeFromBothTones() {
        ToneCurve hlg = ToneCurve.of(Tone.HLG).orElseThrow();
        ToneCurve pq = ToneCurve.of(Tone.PQ).orElseThrow();
        assertEquals(hlg.of(191), pq.of(148), 3); // 0.75 and 0.58 of 255
        assertEquals(hlg.of(97), pq.of(97), 4); // 0.38 of 255
    }

    /** CALC: white is pressed to 0.8 of the screen, 255 * 0.8^(1/2.4) = 232; 26/203 stays: 255 * 0.128^(1/2.4) = 108. */
    @Test
    void paperIsBrightAndTheGreyCardInTheMiddle() {
        ToneCurve pq = ToneCurve.of(Tone.PQ).orElseThrow();
        assertEquals(232, pq.of(148), 2);
        assertEquals(108, pq.of(97), 3);
    }

    @ParameterizedTest
    @EnumSource(
            value = Tone.class,
            names = {"HLG", "PQ"})
    void brighterStaysBrighterAndBlackBlack(Tone tone) {
        ToneCurve curve = ToneCurve.of(tone).orElseThrow();
        assertEquals(0, curve.of(0));
        for (int v = 1; v < 256; v++) {
            assertTrue(curve.of(v) >= curve.of(v - 1), "at " + v);
        }
        assertTrue(curve.of(255) > 240);
    }

    @Test
    void theUsualToneIsLeftAlone() {
        assertTrue(ToneCurve.of(Tone.STANDARD).isEmpty());
    }
}
