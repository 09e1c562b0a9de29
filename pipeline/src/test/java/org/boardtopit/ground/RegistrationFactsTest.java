package org.boardtopit.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class RegistrationFactsTest {
    @Test
    void aClipThatDoesNotTurnTellsNoFocalLength() {
        assertFalse(new RegistrationFacts(CameraModel.STILL, 0.1, 250, Double.NaN, 1500, 0.47, 300).tellsFocalLength());
        RegistrationFacts panned = new RegistrationFacts(CameraModel.TURNING, 0.2, 180, 0.2, 950, 0.0004, 300);
        assertTrue(panned.tellsFocalLength());
        assertEquals(0.003, panned.honestLogFocalSd(), 1e-12);
        assertFalse(RegistrationFacts.unknown(CameraModel.FREE).tellsFocalLength());
    }
}
