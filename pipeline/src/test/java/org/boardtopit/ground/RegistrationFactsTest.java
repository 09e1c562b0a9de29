package org.boardtopit.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class RegistrationFactsTest {
    @Test
    void goodRegistrationNeedsNoWord() {
        assertEquals(List.of(), new RegistrationFacts(CameraModel.TURNING, 0.2, 180, 0.3, 950, 0.001).remarks());
        assertEquals(List.of(), RegistrationFacts.unknown(CameraModel.STILL).remarks());
    }

    @Test
    void everyTroubleSaysWhatToDo() {
        List<String> remarks = new RegistrationFacts(CameraModel.FREE, 2, 30, 12, Double.NaN, Double.NaN).remarks();
        assertEquals(3, remarks.size());
        assertTrue(remarks.get(0).contains("12.0 px") && remarks.get(0).contains("tripod"), remarks.get(0));
        assertTrue(remarks.get(1).contains("2.0 px"), remarks.get(1));
        assertTrue(remarks.get(2).contains("30 points"), remarks.get(2));
    }

    @Test
    void aClipThatDoesNotTurnTellsNoFocalLength() {
        assertFalse(new RegistrationFacts(CameraModel.STILL, 0.1, 250, Double.NaN, 1500, 0.47).tellsFocalLength());
        RegistrationFacts panned = new RegistrationFacts(CameraModel.TURNING, 0.2, 180, 0.2, 950, 0.0004);
        assertTrue(panned.tellsFocalLength());
        assertEquals(0.003, panned.honestLogFocalSd(), 1e-12);
        assertFalse(RegistrationFacts.unknown(CameraModel.FREE).tellsFocalLength());
    }
}
