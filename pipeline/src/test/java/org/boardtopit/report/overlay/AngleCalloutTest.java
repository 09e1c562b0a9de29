package org.boardtopit.report.overlay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.report.overlay.AngleCallout.Angle;
import org.boardtopit.signal.Point2;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.Test;

class AngleCalloutTest {
    private static final OverlayWords ENGLISH = new OverlayWords(Language.ENGLISH);

    private final FramePose pose = DrawnAthlete.standing(0, 0, 50, 100, 100);

    @Test
    void theKneeIsMeasuredBetweenHipAndAnkleOfItsSide() {
        AngleCallout knee = AngleCallout.knee(pose, BodySide.RIGHT, 152.4).orElseThrow();
        assertEquals(pose.place(BodyPoint.RIGHT_KNEE), knee.vertex());
        assertEquals(pose.place(BodyPoint.RIGHT_HIP), knee.firstArm());
        assertEquals(pose.place(BodyPoint.RIGHT_ANKLE), knee.secondArm());
        assertEquals("knee 152\u00b0", knee.text(ENGLISH));
    }

    @Test
    void theTrunkIsMeasuredFromTheVerticalAboveTheHips() {
        AngleCallout trunk = AngleCallout.trunk(pose, 6.6).orElseThrow();
        // The hips are at half the height of 100 px, the shoulders 30 px above them.
        assertEquals(new Point2(50, 50), trunk.vertex());
        assertEquals(new Point2(50, 20), trunk.secondArm());
        assertEquals("trunk +7\u00b0", trunk.text(ENGLISH));
    }

    @Test
    void aBackwardLeanKeepsItsSign() {
        assertEquals(
                "trunk -3\u00b0", AngleCallout.trunk(pose, -3.2).orElseThrow().text(ENGLISH));
    }

    @Test
    void anUnknownValueOrPointGivesNoCallout() {
        FramePose nobody = FramePose.withoutAthlete(0, 0, Optional.empty());
        assertTrue(AngleCallout.knee(pose, BodySide.LEFT, Double.NaN).isEmpty());
        assertTrue(AngleCallout.hip(nobody, BodySide.LEFT, 140).isEmpty());
        assertTrue(AngleCallout.trunk(nobody, 5).isEmpty());
    }

    @Test
    void refusesAValueThatIsNoAngle() {
        Point2 p = new Point2(1, 1);
        assertThrows(IllegalArgumentException.class, () -> new AngleCallout(Angle.KNEE, Double.NaN, p, p, p));
        assertThrows(IllegalArgumentException.class, () -> new AngleCallout(Angle.KNEE, 400, p, p, p));
    }
}
