package org.boardtopit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.body.SegmentTable;
import org.boardtopit.body.Sex;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.AttemptEntry;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.TakeoffFoot;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactDetector;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.Assumptions;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.fit.WholeClipFit;
import org.boardtopit.ground.CalibrationException;
import org.boardtopit.ground.Mark;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.ground.opencv.ReferencePicture;
import org.boardtopit.measures.AttemptMeasurer;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.motion.BodyScale;
import org.boardtopit.motion.MotionRepair;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.phases.PhaseTimeline;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoException;

/**
 * The cheap half of a clip's work: from the landmarks to the measures. Looks for the camera, repairs the motion, finds the
 * contacts and measures; without marks it takes the scale from the official distance or from the standing height.
 *
 * <p>Reads the reference picture's size and no other file; runs in a fraction of a second, so it is done anew when a
 * setting or a sheet changes.
 */
public final class AttemptAnalyser {
    private static final double USUAL_STATURE_M = 1.75;

    private final Assumptions assumptions;

    public AttemptAnalyser() {
        this(Assumptions.ALL);
    }

    /** With only some of what is known of a jumper, to see what each part gains. */
    public AttemptAnalyser(Assumptions assumptions) {
        this.assumptions = assumptions;
    }

    /** Measures the attempt; the same clip and landmarks give the same result. */
    public AttemptAnalysis analyse(Clip clip, ClipLandmarks landmarks) {
        double stature =
                clip.athlete().map(Athlete::statureM).filter(Double::isFinite).orElse(Double.NaN);
        double official = clip.entry().map(AttemptEntry::officialM).orElse(Double.NaN);
        List<String> warnings = new ArrayList<>();
        Optional<RunwayView> calibrated = calibrated(clip, landmarks, warnings);
        if (calibrated.isPresent()) {
            return analyse(clip, landmarks, calibrated.get(), stature, ScaleSource.MARKS, official, warnings);
        }
        double height = BodyScale.standingHeightPx(landmarks);
        double body = Double.isFinite(stature) ? stature : USUAL_STATURE_M;
        double scale = Double.isFinite(height) ? body / height : 1;
        RunwayView view =
                RunwayView.flat(landmarks.background(), landmarks.subject().direction(), scale);
        ScaleSource source =
                Double.isFinite(stature) && Double.isFinite(height) ? ScaleSource.STATURE : ScaleSource.NONE;
        AttemptAnalysis first = analyse(clip, landmarks, view, body, source, official, warnings);
        double jumped = measuredDistance(first);
        if (!Double.isFinite(official) || !Double.isFinite(jumped)) {
            return first;
        }
        // The toe-to-board distance is not known without marks; it is a few centimetres of many metres.
        RunwayView scaled =
                RunwayView.flat(landmarks.background(), landmarks.subject().direction(), scale * official / jumped);
        return analyse(clip, landmarks, scaled, body * official / jumped, ScaleSource.OFFICIAL, official, warnings);
    }

    private static double measuredDistance(AttemptAnalysis analysis) {
        double board = place(analysis, ContactKind.BOARD);
        double pit = place(analysis, ContactKind.PIT);
        return pit > board ? pit - board : Double.NaN;
    }

    private static double place(AttemptAnalysis analysis, ContactKind kind) {
        return analysis.measures().contacts().stream()
                .map(m -> m.contact())
                .filter(c -> c.kind() == kind)
                .mapToDouble(Contact::toeAlongM)
                .findFirst()
                .orElse(Double.NaN);
    }

    private AttemptAnalysis analyse(
            Clip clip,
            ClipLandmarks landmarks,
            RunwayView view,
            double stature,
            ScaleSource source,
            double official,
            List<String> warnings) {
        double body = Double.isFinite(stature) ? stature : USUAL_STATURE_M;
        MotionTrack motion = new MotionRepair(SegmentTable.of(sex(clip)), body).repair(landmarks, view);
        ContactTimeline contacts = new ContactDetector(source == ScaleSource.MARKS, takeoffFoot(clip)).detect(motion);
        FittedMotion fitted = new WholeClipFit(
                        SegmentTable.of(sex(clip)),
                        source == ScaleSource.MARKS ? assumptions : assumptions.withoutFlight())
                .fit(motion, contacts);
        PhaseTimeline phases = PhaseTimeline.of(contacts, sight(landmarks, true), sight(landmarks, false));
        AttemptMeasures measures = new AttemptMeasurer()
                .measure(
                        fitted,
                        contacts,
                        phases,
                        new AttemptMeasurer.Given(
                                source, official, landmarks.background().registeredShare(), warnings));
        return new AttemptAnalysis(view, motion, fitted, measures);
    }

    private static double sight(ClipLandmarks landmarks, boolean first) {
        int n = landmarks.frameCount();
        for (int i = 0; i < n; i++) {
            int frame = first ? i : n - 1 - i;
            if (landmarks.poses().at(frame).isPresent()) {
                return landmarks.timeS(frame);
            }
        }
        return 0;
    }

    /** The view in metres; when marks are there but cannot be used the warnings say why. */
    private Optional<RunwayView> calibrated(Clip clip, ClipLandmarks landmarks, List<String> warnings) {
        Optional<org.boardtopit.clips.ReferencePicture> reference =
                clip.camera().flatMap(Camera::reference);
        if (reference.isEmpty()) {
            return Optional.empty();
        }
        if (!landmarks.background().referenceMatched()) {
            warnings.add("the clip does not match the reference picture "
                    + reference.get().picture().getFileName() + "; is it another camera position?");
            return Optional.empty();
        }
        List<Mark> marks = reference.get().marks().marks().stream()
                .map(m -> new Mark(m.name(), m.alongM(), m.acrossM(), new Point2(m.xPx(), m.yPx())))
                .toList();
        landmarks.background().facts().remarks().forEach(warnings::add);
        try (ReferencePicture picture = ReferencePicture.read(reference.get().picture())) {
            RunwayCamera camera = camera(marks, picture, landmarks.background().facts());
            return Optional.of(RunwayView.calibrated(landmarks.background(), camera));
        } catch (CalibrationException | VideoException e) {
            warnings.add(reference.get().marksFile().getFileName() + ": " + e.getMessage());
            return Optional.empty();
        }
    }

    /** The turns of a panned clip tell the focal length better than marks near one line do. */
    private static RunwayCamera camera(List<Mark> marks, ReferencePicture picture, RegistrationFacts facts)
            throws CalibrationException {
        return facts.tellsFocalLength()
                ? RunwayCamera.fromMarks(
                        marks, picture.widthPx(), picture.heightPx(), facts.focalPx(), facts.honestLogFocalSd())
                : RunwayCamera.fromMarks(marks, picture.widthPx(), picture.heightPx());
    }

    private static Sex sex(Clip clip) {
        Optional<Athlete.Sex> sex = clip.athlete().flatMap(Athlete::sex);
        return sex.map(s -> s == Athlete.Sex.FEMALE ? Sex.FEMALE : Sex.MALE).orElse(Sex.MALE);
    }

    private static Optional<Foot> takeoffFoot(Clip clip) {
        return clip.entry().flatMap(AttemptEntry::takeoffFoot).map(f -> f == TakeoffFoot.LEFT ? Foot.LEFT : Foot.RIGHT);
    }
}
