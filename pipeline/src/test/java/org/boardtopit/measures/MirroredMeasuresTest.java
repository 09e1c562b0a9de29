package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.boardtopit.body.SegmentTable;
import org.boardtopit.body.Sex;
import org.boardtopit.contacts.ContactDetector;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.fit.Assumptions;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.fit.WholeClipFit;
import org.boardtopit.ground.CameraModel;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.motion.MotionRepair;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.phases.PhaseTimeline;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.Variants;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A drawn jumper (SYN) who runs to the right, and the same clip in a mirror: nothing changes but left and right. */
class MirroredMeasuresTest {
    private static final SegmentTable SEGMENTS = SegmentTable.of(Sex.UNSTATED);
    /** Half of a 90 % interval in standard deviations. */
    private static final double HALF_90 = 1.645;

    private static AttemptMeasures measured(DrawnClip clip, ClipLandmarks landmarks, int direction) {
        RunwayView view = RunwayView.flat(landmarks.background(), direction, clip.flatMetresPerPixel());
        MotionTrack motion = new MotionRepair(SEGMENTS, clip.jumper().statureM()).repair(landmarks, view);
        ContactTimeline contacts = new ContactDetector(false, Optional.empty()).detect(motion);
        FittedMotion fitted = new WholeClipFit(SEGMENTS, Assumptions.ALL.withoutFlight()).fit(motion, contacts);
        AttemptMeasurer.Given given = new AttemptMeasurer.Given(
                ScaleSource.STATURE,
                Optional.empty(),
                Double.NaN,
                1,
                RegistrationFacts.unknown(CameraModel.STILL),
                150,
                List.of());
        return new AttemptMeasurer()
                .measure(
                        fitted,
                        contacts,
                        PhaseTimeline.of(contacts, 0, clip.jumper().endS()),
                        given);
    }

    private static Map<String, Reading> readings(AttemptMeasures measures) {
        Map<String, Reading> readings = new TreeMap<>();
        EvidenceTable.of(measures).all().forEach(e -> readings.put(e.part() + " " + e.measure(), e.reading()));
        return readings;
    }

    private static String otherSide(String name) {
        return name.contains("_l_") ? name.replace("_l_", "_r_") : name.replace("_r_", "_l_");
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {2, 5})
    void aMirrorSwapsLeftAndRightAndNothingElse(long seed) {
        DrawnClip clip =
                new DrawnClip(DrawnClip.Setup.ordinary(seed).withStillCamera().atFps(60));
        AttemptMeasures plain = measured(clip, clip.landmarks(), clip.direction());
        AttemptMeasures mirrored = measured(clip, Variants.mirrored(clip.landmarks()), -clip.direction());
        Map<String, Reading> there = readings(plain);
        Map<String, Reading> back = readings(mirrored);
        assertTrue(there.size() > 100, "only " + there.size());
        assertEquals(there.size(), back.size());
        there.forEach((name, reading) -> {
            Reading other = back.get(otherSide(name));
            double tolerance = Math.max(1e-6, HALF_90 * Math.min(reading.sd(), other.sd()) / 4);
            assertEquals(reading.value(), other.value(), tolerance, name);
        });
        for (int i = 0; i < plain.phases().size(); i++) {
            assertEquals(plain.phases().get(i).arms(), mirrored.phases().get(i).arms());
        }
    }
}
