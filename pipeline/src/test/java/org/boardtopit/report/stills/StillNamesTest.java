package org.boardtopit.report.stills;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StillNamesTest {

    @Test
    void saysClipContactAndInstant() {
        assertEquals("214-3-2-mid_support.jpg", StillNames.still("214-3", 2, StillInstant.MID_SUPPORT));
        assertEquals("214-3-strip.jpg", StillNames.strip("214-3"));
        assertEquals("214-3-phases.jpg", StillNames.phases("214-3"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a",
                "a-2",
                "jump-2-flight",
                "a-strip",
                "a-2-strip",
                "Spr\u00fcnge 1",
                "a.mp4",
                "=1+1",
                "a\nb",
                "a.jpg"
            })
    void tellsTheClipFromEveryNameOfIt(String clip) {
        for (StillInstant instant : StillInstant.values()) {
            assertEquals(Optional.of(clip), StillNames.clipOf(StillNames.still(clip, 12, instant)));
        }
        assertEquals(Optional.of(clip), StillNames.clipOf(StillNames.strip(clip)));
        assertEquals(Optional.of(clip), StillNames.clipOf(StillNames.phases(clip)));
        assertEquals(Optional.of(clip), StillNames.clipOf(StillNames.strip(clip) + ".part"));
    }

    @ParameterizedTest
    @CsvSource({"holiday.jpg", "a-touchdown.jpg", "a-2-board.jpg", "a-2-flight.png", "-strip.jpg", "a-x-flight.jpg"})
    void knowsNoClipOfOtherFiles(String name) {
        assertEquals(Optional.empty(), StillNames.clipOf(name));
    }
}
