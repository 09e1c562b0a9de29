package org.boardtopit.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.boardtopit.models.NetworkCard.PlainPoints;
import org.boardtopit.models.NetworkCard.Score;
import org.boardtopit.models.NetworkCard.Unit;
import org.junit.jupiter.api.Test;

class PlainPointReaderTest {
    private static final List<BodyPoint> POINTS = Arrays.asList(BodyPoint.RIGHT_KNEE, null, BodyPoint.LEFT_KNEE);

    @Test
    void pixelsAreTakenAsTheyAreWithTheSpreadOfTheCard() {
        PlainPoints output = new PlainPoints(0, 2, Unit.pixels, null, Score.probability, 4);

        LandmarkReading reading = new PlainPointReader(output, 192, POINTS).read(new float[] {10, 20, 0, 0, 30, 40});

        assertEquals(10, reading.xPx(BodyPoint.RIGHT_KNEE, 0));
        assertEquals(40, reading.yPx(BodyPoint.LEFT_KNEE, 0));
        assertEquals(4, reading.sdPx(BodyPoint.LEFT_KNEE, 0));
        assertEquals(1, reading.mass(BodyPoint.LEFT_KNEE, 0));
        assertEquals(0, reading.mass(BodyPoint.LEFT_KNEE, 1));
        assertTrue(Float.isNaN(reading.xPx(BodyPoint.NOSE, 0)));
    }

    @Test
    void fractionsAreOfTheSideAndALogitBecomesTheMass() {
        PlainPoints output = new PlainPoints(0, 4, Unit.fractions, 3, Score.logit, 4);
        float[] values = {0.5f, 0.25f, 9, 0, 0, 0, 0, 0, 0.125f, 1, 9, (float) Math.log(3)};

        LandmarkReading reading = new PlainPointReader(output, 192, POINTS).read(values);

        assertEquals(96, reading.xPx(BodyPoint.RIGHT_KNEE, 0));
        assertEquals(48, reading.yPx(BodyPoint.RIGHT_KNEE, 0));
        assertEquals(0.5, reading.mass(BodyPoint.RIGHT_KNEE, 0), 1e-6);
        assertEquals(0.75, reading.mass(BodyPoint.LEFT_KNEE, 0), 1e-6);
    }

    @Test
    void aProbabilityOutsideItsRangeIsBroughtIntoIt() {
        PlainPoints output = new PlainPoints(0, 3, Unit.pixels, 2, Score.probability, 4);

        LandmarkReading reading =
                new PlainPointReader(output, 192, POINTS).read(new float[] {1, 1, 1.2f, 0, 0, 0, 1, 1, -0.1f});

        assertEquals(1, reading.mass(BodyPoint.RIGHT_KNEE, 0));
        assertEquals(0, reading.mass(BodyPoint.LEFT_KNEE, 0));
    }
}
