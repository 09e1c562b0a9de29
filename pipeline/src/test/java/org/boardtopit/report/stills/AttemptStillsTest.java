package org.boardtopit.report.stills;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.boardtopit.body.SegmentTable;
import org.boardtopit.body.Sex;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.Pattern;
import org.boardtopit.contacts.ContactDetector;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.CameraModel;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.AttemptMeasurer;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.BodyAngle;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionRepair;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.phases.PhaseTimeline;
import org.boardtopit.report.AttemptOverlay;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnCamera;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.DrawnDrill;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Stills of drawn jumpers.
 *
 * <p>Outside check: the drawn camera itself, which the pipeline does not know (SYN): where it shows the foot and a metre above it.
 */
class AttemptStillsTest {

    private record Attempt(
            DrawnClip clip, RunwayView view, MotionTrack motion, AttemptMeasures measures, StillsScene scene) {}

    private static Attempt attempt(DrawnClip.Setup setup) {
        DrawnClip clip = new DrawnClip(setup);
        return attempt(clip, clip.calibratedView(), 1, ScaleSource.MARKS, Optional.empty());
    }

    /** Of a view in which a metre is so many units. */
    private static Attempt attempt(
            DrawnClip clip, RunwayView view, double units, ScaleSource scale, Optional<Pattern> pattern) {
        MotionTrack motion = new MotionRepair(
                        SegmentTable.of(Sex.UNSTATED), units * clip.jumper().statureM())
                .repair(clip.landmarks(), view);
        ContactTimeline contacts = new ContactDetector(view.isCalibrated(), Optional.empty(), pattern).detect(motion);
        FittedMotion fitted = FittedMotion.asRepaired(motion);
        AttemptMeasures measures = new AttemptMeasurer()
                .measure(
                        fitted,
                        contacts,
                        PhaseTimeline.of(contacts, 0, motion.timeS(motion.frameCount() - 1)),
                        new AttemptMeasurer.Given(
                                scale,
                                Optional.empty(),
                                Double.NaN,
                                1,
                                RegistrationFacts.unknown(CameraModel.STILL),
                                100,
                                List.of()));
        return new Attempt(clip, view, motion, measures, scene(clip, view, fitted, measures));
    }

    private static StillsScene scene(DrawnClip clip, RunwayView view, FittedMotion fitted, AttemptMeasures measures) {
        Clip plain = new Clip(Path.of("a.mp4"), "a", Optional.empty(), Optional.empty(), Optional.empty());
        OverlayScene overlay =
                new AttemptOverlay(plain, clip.landmarks(), view, fitted, measures, 1, Language.ENGLISH).scene();
        Words words = Words.of("picture", Language.ENGLISH);
        return new AttemptStills(view, fitted, measures, overlay, words).scene();
    }

    private static DrawnClip.Setup setup(double fps, double uneven, boolean panned, boolean leftOfRunway) {
        return new DrawnClip.Setup(3, fps, uneven, panned, leftOfRunway, 0.004, 0, 0, 0);
    }

    /** The instant of a still by its contact. */
    private static double instantS(Attempt attempt, Still still) {
        ContactMeasures m = attempt.measures().contacts().get(still.contact());
        double down = m.contact().touchdownS();
        double off = m.contact().toeOffS();
        return switch (still.instant()) {
            case TOUCHDOWN -> down;
            case MID_SUPPORT -> (down + off) / 2;
            case TOE_OFF -> off;
            case FLIGHT ->
                (off
                                + attempt.measures()
                                        .contacts()
                                        .get(still.contact() + 1)
                                        .contact()
                                        .touchdownS())
                        / 2;
        };
    }

    @ParameterizedTest
    @CsvSource({"30, 0", "60, 0", "120, 0", "60, 0.4"})
    void takesTheNearestFrameAlsoWhenTimesAreUneven(double fps, double uneven) {
        Attempt attempt = attempt(setup(fps, uneven, false, false));
        assertEquals(13, attempt.scene().stills().size(), "three contacts of four pictures, and the pit");
        for (Still still : attempt.scene().stills()) {
            double atS = instantS(attempt, still);
            double taken = Math.abs(attempt.clip().timeS(still.frameIndex()) - atS);
            for (int f = 0; f < attempt.motion().frameCount(); f++) {
                assertTrue(
                        taken <= Math.abs(attempt.clip().timeS(f) - atS) + 1e-9,
                        still.title() + ": frame " + f + " is nearer than " + still.frameIndex());
            }
            long ms = Math.round(1000 * taken);
            assertTrue(still.notes().get(0).startsWith("frame " + still.frameIndex() + ", "));
            assertTrue(
                    still.notes().get(0).contains(ms == 0 ? "at the instant" : ms + " ms "),
                    still.notes().get(0));
        }
    }

    @ParameterizedTest
    @CsvSource({"false, false", "true, false", "false, true", "true, true"})
    void groundFootAndMetreLieWhereTheCameraShowsThem(boolean panned, boolean leftOfRunway) {
        Attempt attempt = attempt(setup(120, 0, panned, leftOfRunway));
        for (Still still : attempt.scene().stills()) {
            ContactKind kind =
                    attempt.measures().contacts().get(still.contact()).contact().kind();
            if (still.instant() == StillInstant.FLIGHT || kind == ContactKind.PIT) {
                continue; // no foot stands there, or the heel decides and not the toe
            }
            double along = attempt.clip().contacts().stream()
                    .filter(c -> c.kind() == kind)
                    .findFirst()
                    .orElseThrow()
                    .toeAlongM();
            DrawnCamera camera = attempt.clip().camera(still.frameIndex());
            double metrePx = camera.project(along, 0, 0).distanceTo(camera.project(along, 0, 1));
            double tolerancePx = 0.06 * metrePx; // the place of a foot is good to some centimetres
            assertEquals(
                    0,
                    still.metresToFrame().apply(0, 0).distanceTo(camera.project(along, 0, 0)),
                    tolerancePx,
                    still.title());
            assertEquals(
                    metrePx,
                    still.metresToFrame()
                            .apply(0, 0)
                            .distanceTo(still.metresToFrame().apply(0, -1)),
                    0.01 * metrePx,
                    still.title());
            // A metre to the right in the picture is a metre of runway, whichever way the athlete goes.
            double right = leftOfRunway ? along - 1 : along + 1;
            assertEquals(
                    0,
                    still.metresToFrame().apply(1, 0).distanceTo(camera.project(right, 0, 0)),
                    tolerancePx,
                    still.title());
        }
    }

    @Test
    void theBodyPassesOverTheFootThatStaysInItsPlace() {
        for (boolean leftOfRunway : new boolean[] {false, true}) {
            Attempt attempt = attempt(setup(120, 0, true, leftOfRunway));
            int ahead = leftOfRunway ? -1 : 1;
            Still down = still(attempt, StillInstant.TOUCHDOWN);
            Still off = still(attempt, StillInstant.TOE_OFF);
            assertTrue(ahead * hipsX(down) < -0.1, "at touchdown the hips are behind the foot");
            assertTrue(ahead * hipsX(off) > 0.1, "at toe-off ahead of it");
        }
    }

    private static Still still(Attempt attempt, StillInstant instant) {
        return attempt.scene().stills().stream()
                .filter(s -> s.instant() == instant)
                .findFirst()
                .orElseThrow();
    }

    private static double hipsX(Still still) {
        return still.metresToFrame()
                .inverse()
                .apply(still.pose().middle(BodyPoint.LEFT_HIP))
                .x();
    }

    @Test
    void valuesAreThoseOfTheTables() {
        Attempt attempt = attempt(setup(120, 0, false, false));
        Still off = still(attempt, StillInstant.TOE_OFF);
        ContactMeasures m = attempt.measures().contacts().get(off.contact());
        long knee = Math.round(m.atToeOff(BodyAngle.KNEE).value());
        assertTrue(
                off.angles().stream()
                        .anyMatch(a -> a.word().equals("knee") && a.value().startsWith(knee + "\u00b0 \u00b1")),
                off.angles().toString());
        assertEquals(
                List.of("trunk", "hip", "knee", "free thigh"),
                off.angles().stream().map(StillAngle::word).toList());
        assertEquals(
                List.of("trunk", "hip", "knee", "leg plant"),
                still(attempt, StillInstant.TOUCHDOWN).angles().stream()
                        .map(StillAngle::word)
                        .toList());
        assertEquals(List.of(), still(attempt, StillInstant.FLIGHT).angles(), "the tables have none there");
    }

    /** Whatever the nominal scale says, a body is as tall as it is seen to be. */
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.5, 2})
    void withoutMetresBodiesAreDrawnToOneStandingHeight(double units) {
        DrawnClip clip = new DrawnClip(setup(120, 0, false, false));
        RunwayView view =
                RunwayView.flat(clip.landmarks().background(), clip.direction(), units * clip.flatMetresPerPixel());
        Attempt attempt = attempt(clip, view, units, ScaleSource.NONE, Optional.empty());

        assertFalse(attempt.scene().inMetres());
        PhasesScene phases = attempt.scene().phases().orElseThrow();
        assertTrue(phases.metres().isEmpty());
        assertTrue(phases.spans().stream().allMatch(s -> s.distance().isEmpty()));
        assertFalse(attempt.scene().stills().isEmpty());
        for (Still still : attempt.scene().stills()) {
            DrawnCamera camera = clip.camera(still.frameIndex());
            double seen = camera.project(6, 0, 0)
                    .distanceTo(camera.project(6, 0, clip.jumper().statureM()));
            double drawn = still.metresToFrame()
                    .apply(0, 0)
                    .distanceTo(still.metresToFrame().apply(0, -1.75));
            assertEquals(seen, drawn, 0.05 * seen, still.title());
        }
    }

    @Test
    void ofAContactWhoseTouchdownIsUnknownThereIsTheToeOffOnly() {
        DrawnClip drill = new DrawnClip(
                DrawnClip.Setup.ordinary(4).atFps(120).withStillCamera(),
                new DrawnDrill(List.of(Foot.LEFT, Foot.LEFT, Foot.LEFT, Foot.LEFT), false, false));
        Attempt attempt =
                attempt(drill, drill.calibratedView(), 1, ScaleSource.MARKS, Optional.of(Pattern.parse("hop-hop-hop")));
        Set<StillInstant> first = attempt.scene().stills().stream()
                .filter(s -> s.contact() == 0)
                .map(Still::instant)
                .collect(Collectors.toSet());
        assertEquals(Set.of(StillInstant.TOE_OFF, StillInstant.FLIGHT), first);
        assertEquals(4, attempt.scene().columns().size());
        assertEquals("contact 1, left", attempt.scene().columns().get(1).title());
    }

    @Test
    void whatAPersonPutRightIsMarkedAndNothingElse() {
        Attempt found = attempt(setup(120, 0, false, false));
        List<ContactMeasures> contacts = found.measures().contacts().stream()
                .map(m -> m.contact().kind() == ContactKind.HOP_LANDING
                        ? new ContactMeasures(
                                m.contact()
                                        .called(
                                                ContactKind.HOP_LANDING,
                                                m.contact().foot()),
                                m.touchdown(),
                                m.toeOff(),
                                m.more())
                        : m)
                .toList();
        AttemptMeasures corrected =
                found.measures().with(contacts, found.measures().phases());

        StillsScene scene = scene(found.clip(), found.view(), FittedMotion.asRepaired(found.motion()), corrected);

        int hop = scene.columns().get(1).contact();
        for (Still still : scene.stills()) {
            boolean rests =
                    still.contact() == hop || (still.contact() == hop - 1 && still.instant() == StillInstant.FLIGHT);
            assertEquals(rests, still.notes().get(0).endsWith("* corrected by hand"), still.title());
        }
        assertEquals(
                List.of(false, true, false, false),
                scene.columns().stream().map(c -> c.title().endsWith(" *")).toList());
        assertEquals(
                List.of("hop *", "step *", "jump"),
                scene.phases().orElseThrow().spans().stream()
                        .map(PhasesScene.Span::word)
                        .toList());
    }

    @Test
    void thePhasePictureIsAsLargeAsTheAttemptAndNoLarger() {
        for (boolean panned : new boolean[] {false, true}) {
            Attempt attempt = attempt(setup(60, 0, panned, false));
            PhasesScene phases = attempt.scene().phases().orElseThrow();
            assertEquals(7, phases.figures().size(), "four contacts and three flights");
            assertTrue(phases.widthPx() <= 1600 && (long) phases.widthPx() * phases.heightPx() <= 1_010_000);
            for (PhasesScene.Figure figure : phases.figures()) {
                figure.pose().bounds().ifPresent(box -> {
                    Point2 head = figure.frameToPicture().apply(box.centreX(), box.top());
                    Point2 foot = figure.frameToPicture().apply(box.centreX(), box.bottom());
                    assertTrue(head.y() > 0 && foot.y() < phases.heightPx(), "all of the body lies in it");
                    assertTrue(head.x() > 0 && head.x() < phases.widthPx(), "all of the body lies in it");
                });
            }
            assertEquals(
                    List.of("hop", "step", "jump"),
                    phases.spans().stream().map(PhasesScene.Span::word).toList());
            // Metres lie at their places between the toes, whose places are known in metres too.
            double metre = phases.metres().get(4).x() - phases.metres().get(3).x();
            double hop = attempt.measures().distances().orElseThrow().hopM();
            PhasesScene.Span span = phases.spans().get(0);
            assertEquals(hop, (span.toX() - span.fromX()) / metre, 0.05 * hop);
        }
    }
}
