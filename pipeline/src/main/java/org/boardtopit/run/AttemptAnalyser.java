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
import org.boardtopit.clips.Pattern;
import org.boardtopit.clips.TakeoffFoot;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactDetector;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.corrections.ContactCorrections;
import org.boardtopit.corrections.CorrectedLandmarks;
import org.boardtopit.corrections.RefusedCorrectionException;
import org.boardtopit.fit.Assumptions;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.fit.WholeClipFit;
import org.boardtopit.ground.FoundCamera;
import org.boardtopit.ground.Lens;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.ground.SelfCalibration;
import org.boardtopit.ground.opencv.ReferencePicture;
import org.boardtopit.measures.AttemptMeasurer;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.LocalChange;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.motion.BodyScale;
import org.boardtopit.motion.MotionRepair;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.phases.PhaseTimeline;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoException;

/**
 * The cheap half of a clip's work: from the landmarks to the measures. Looks for the camera, repairs the motion, finds the
 * contacts and measures; without marks it finds the camera from the run itself, and the scale from the official distance or
 * from the standing height.
 *
 * <p>Reads the reference picture's size and no other file; runs in a fraction of a second, so it is done anew when a
 * setting or a sheet changes.
 */
public final class AttemptAnalyser {
    private static final double USUAL_STATURE_M = 1.75;
    /** How far people are from the usual height, 1 SD of about 10 cm (men, women and juniors together; common practice). */
    private static final double USUAL_STATURE_LOG_SD = 0.06;

    private static final int MOST_PASSES = 4;
    private static final double SAME_CONTACT_S = 0.03;
    private static final List<ContactKind> JUMP =
            List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT);

    private final Assumptions assumptions;

    public AttemptAnalyser() {
        this(Assumptions.ALL);
    }

    /** With only some of what is known of a jumper, to see what each part gains. */
    public AttemptAnalyser(Assumptions assumptions) {
        this.assumptions = assumptions;
    }

    /**
     * Measures the attempt, with the corrections of the clip; the same clip and landmarks give the same result.
     *
     * @throws RefusedCorrectionException when a correction cannot be true of this clip
     */
    public AttemptAnalysis analyse(Clip clip, ClipLandmarks landmarks) {
        ClipLandmarks ofAthlete = CorrectedLandmarks.ofTheAthlete(landmarks, clip.corrections());
        AttemptAnalysis analysis = analysed(clip, ofAthlete);
        return new ContactCorrections(clip.corrections(), ofAthlete)
                .withOtherSides(analysis.asFound())
                .map(otherSides -> analysed(clip, otherSides))
                .orElse(analysis);
    }

    private AttemptAnalysis analysed(Clip clip, ClipLandmarks landmarks) {
        List<String> warnings = new ArrayList<>();
        Optional<RunwayView> calibrated = calibrated(clip, landmarks, warnings);
        Known known = known(clip, landmarks);
        if (calibrated.isPresent()) {
            double body = Double.isFinite(known.statureM()) ? known.statureM() : USUAL_STATURE_M;
            Basis marks = new Basis(calibrated.get(), body, ScaleSource.MARKS, Optional.empty());
            return measured(clip, landmarks, marks, look(clip, landmarks, marks), warnings);
        }
        Basis flat = flat(landmarks, known);
        Look seen = look(clip, landmarks, flat);
        Basis basis = withoutPerspective(clip, landmarks, flat, seen);
        Look through = basis.found().isPresent() ? look(clip, landmarks, basis) : seen;
        Optional<Basis> scaled = onOfficialDistance(landmarks, basis, through.contacts(), known);
        return scaled.isPresent()
                ? measured(clip, landmarks, scaled.get(), look(clip, landmarks, scaled.get()), warnings)
                : measured(clip, landmarks, basis, through, warnings);
    }

    /** What the sheet tells, NaN where it does not. */
    private record Known(double statureM, double officialM) {}

    /**
     * What an analysis stands on.
     *
     * @param statureM standing height in the unit of the view
     * @param found the camera, when it was found from the run
     */
    private record Basis(RunwayView view, double statureM, ScaleSource source, Optional<FoundCamera> found) {}

    /**
     * Motion and contacts as seen on some basis.
     *
     * @param asFound the contacts before any correction
     * @param contacts those that there are, at the instants at which they were found
     */
    private record Look(MotionTrack motion, ContactTimeline asFound, ContactTimeline contacts) {}

    private static Known known(Clip clip, ClipLandmarks landmarks) {
        double stature =
                clip.athlete().map(Athlete::statureM).filter(Double::isFinite).orElse(Double.NaN);
        boolean tall = Double.isFinite(BodyScale.standingHeightPx(landmarks));
        double official = clip.entry().map(AttemptEntry::officialM).orElse(Double.NaN);
        return new Known(tall ? stature : Double.NaN, official);
    }

    /** The picture itself taken for the plane of the run, its scale from the athlete's height. */
    private static Basis flat(ClipLandmarks landmarks, Known known) {
        boolean stature = Double.isFinite(known.statureM());
        double body = stature ? known.statureM() : USUAL_STATURE_M;
        double height = BodyScale.standingHeightPx(landmarks);
        double scale = Double.isFinite(height) ? body / height : 1;
        RunwayView view =
                RunwayView.flat(landmarks.background(), landmarks.subject().direction(), scale);
        return new Basis(view, body, stature ? ScaleSource.STATURE : ScaleSource.NONE, Optional.empty());
    }

    /**
     * The same through a camera that is found from the run, first with the contacts as seen in the flat picture, then with
     * those seen through it, until they stay. It stays flat when no camera fits or contacts are lost or keep changing.
     */
    private static Basis withoutPerspective(Clip clip, ClipLandmarks landmarks, Basis flat, Look seen) {
        boolean stature = flat.source() == ScaleSource.STATURE;
        SelfCalibration calibration = new SelfCalibration(
                fixedPictureLens(clip, landmarks),
                landmarks.subject().direction(),
                landmarks.frameStepS(),
                flat.statureM(),
                stature ? 0 : USUAL_STATURE_LOG_SD);
        Look last = seen;
        RunwayView lastView = flat.view();
        for (int pass = 0; pass < MOST_PASSES; pass++) {
            Optional<FoundCamera> found =
                    calibration.find(new RunTraceReader(lastView, last.motion(), last.contacts()).read());
            if (found.isEmpty()) {
                return flat;
            }
            Basis basis = new Basis(
                    RunwayView.selfCalibrated(landmarks.background(), found.get()),
                    flat.statureM(),
                    flat.source(),
                    found);
            Look next = look(clip, landmarks, basis);
            if (!seesAll(seen.contacts(), next.contacts())) {
                return flat;
            }
            if (pass > 0 && agree(last.contacts(), next.contacts())) {
                return basis;
            }
            last = next;
            lastView = basis.view();
        }
        return flat;
    }

    private static boolean seesAll(ContactTimeline first, ContactTimeline second) {
        return JUMP.stream()
                        .allMatch(kind ->
                                first.of(kind).isEmpty() || second.of(kind).isPresent())
                && drillTouchdowns(first).length == drillTouchdowns(second).length;
    }

    private static double[] drillTouchdowns(ContactTimeline contacts) {
        return contacts.contacts().stream()
                .filter(c -> c.kind() == ContactKind.DRILL)
                .mapToDouble(Contact::touchdownS)
                .filter(Double::isFinite)
                .toArray();
    }

    /** True when both see the contacts of the jump or of the drill at the same times. */
    private static boolean agree(ContactTimeline first, ContactTimeline second) {
        double[] one = drillTouchdowns(first);
        double[] two = drillTouchdowns(second);
        for (int i = 0; i < one.length; i++) {
            if (i >= two.length || Math.abs(one[i] - two[i]) >= SAME_CONTACT_S) {
                return false;
            }
        }
        return JUMP.stream().allMatch(kind -> {
            double apart = first.of(kind).map(Contact::touchdownS).orElse(-1.0)
                    - second.of(kind).map(Contact::touchdownS).orElse(-1.0);
            return Math.abs(apart) < SAME_CONTACT_S;
        });
    }

    /** Scales so that the jump is as long as it was measured, and counts from where the sheet says that it ended. */
    private static Optional<Basis> onOfficialDistance(
            ClipLandmarks landmarks, Basis basis, ContactTimeline contacts, Known known) {
        double board = place(contacts, ContactKind.BOARD);
        double pit = place(contacts, ContactKind.PIT);
        if (!Double.isFinite(known.officialM()) || !(pit > board)) {
            return Optional.empty();
        }
        double factor = (known.officialM() + AttemptMeasurer.USUAL_TOE_TO_BOARD_M) / (pit - board);
        double start = known.officialM() - factor * pit;
        if (basis.found().isPresent()) {
            FoundCamera camera = basis.found().get().scaled(factor, start);
            return Optional.of(new Basis(
                    RunwayView.selfCalibrated(landmarks.background(), camera),
                    basis.statureM() * (basis.source() == ScaleSource.STATURE ? 1 : factor),
                    ScaleSource.OFFICIAL,
                    Optional.of(camera)));
        }
        Point2 metre = basis.view().inFixedPicture(new Point2(1, 0), 0);
        double scale = factor
                / Math.abs(metre.x()
                        - basis.view().inFixedPicture(new Point2(0, 0), 0).x());
        RunwayView view =
                RunwayView.flat(landmarks.background(), landmarks.subject().direction(), scale, start);
        return Optional.of(new Basis(view, basis.statureM() * factor, ScaleSource.OFFICIAL, Optional.empty()));
    }

    private static double place(ContactTimeline contacts, ContactKind kind) {
        return contacts.of(kind).map(Contact::toeAlongM).orElse(Double.NaN);
    }

    private static Look look(Clip clip, ClipLandmarks landmarks, Basis basis) {
        MotionTrack motion =
                new MotionRepair(SegmentTable.of(sex(clip)), basis.statureM()).repair(landmarks, basis.view());
        ContactDetector detector =
                new ContactDetector(basis.source() == ScaleSource.MARKS, takeoffFoot(clip), pattern(clip));
        ContactTimeline found = detector.detect(motion);
        ContactTimeline called = new ContactCorrections(clip.corrections(), landmarks)
                .called(found, (kind, foot, down, off, sd) -> detector.seen(motion, kind, foot, down, off, sd));
        return new Look(motion, found, called);
    }

    /** What the marks leave open of a place along the runway. */
    private static double marksSd(Basis basis, double alongM) {
        return basis.source() == ScaleSource.MARKS
                ? basis.view().camera().map(c -> c.alongSdM(alongM, 0)).orElse(Double.NaN)
                : Double.NaN;
    }

    private AttemptAnalysis measured(
            Clip clip, ClipLandmarks landmarks, Basis basis, Look look, List<String> warnings) {
        Measuring measuring = new Measuring(clip, landmarks, basis, look.motion(), warnings);
        ContactTimeline called = look.contacts().withDoubtOfPlaces(along -> marksSd(basis, along));
        FittedMotion fitted = measuring.fit(called);
        AttemptMeasures measures = measuring.measure(fitted, called);
        ContactCorrections.Timed timed =
                new ContactCorrections(clip.corrections(), landmarks).timed(look.asFound(), called);
        if (timed.isAsFound()) {
            return new AttemptAnalysis(
                    basis.view(), basis.found(), fitted, fitted, look.asFound(), look.contacts(), measures);
        }
        FittedMotion again = measuring.fit(timed.contacts());
        AttemptMeasures corrected = new LocalChange(
                        measures, measuring.measure(again, timed.contacts()), timed.touchdowns(), timed.toeOffs())
                .measures();
        return new AttemptAnalysis(
                basis.view(), basis.found(), fitted, again, look.asFound(), look.contacts(), corrected);
    }

    /** Fits and measures contacts of one clip on one basis. */
    private final class Measuring {
        private final Clip clip;
        private final ClipLandmarks landmarks;
        private final Basis basis;
        private final MotionTrack motion;
        private final List<String> warnings;

        Measuring(Clip clip, ClipLandmarks landmarks, Basis basis, MotionTrack motion, List<String> warnings) {
            this.clip = clip;
            this.landmarks = landmarks;
            this.basis = basis;
            this.motion = motion;
            this.warnings = warnings;
        }

        FittedMotion fit(ContactTimeline contacts) {
            return new WholeClipFit(SegmentTable.of(sex(clip)), assumptions(basis)).fit(motion, contacts);
        }

        AttemptMeasures measure(FittedMotion fitted, ContactTimeline contacts) {
            PhaseTimeline phases = PhaseTimeline.of(contacts, sight(landmarks, true), sight(landmarks, false));
            double official = clip.entry().map(AttemptEntry::officialM).orElse(Double.NaN);
            return new AttemptMeasurer()
                    .measure(
                            fitted,
                            contacts,
                            phases,
                            new AttemptMeasurer.Given(
                                    basis.source(),
                                    basis.found(),
                                    official,
                                    landmarks.background().registeredShare(),
                                    landmarks.background().facts(),
                                    athletePx(landmarks, basis),
                                    warnings));
        }
    }

    private static Optional<Pattern> pattern(Clip clip) {
        return clip.entry().flatMap(AttemptEntry::pattern);
    }

    /** Free fall is known in metres only, and of a plane without perspective. */
    private Assumptions assumptions(Basis basis) {
        boolean metres = basis.source() == ScaleSource.MARKS
                || (basis.found().isPresent() && basis.source() != ScaleSource.NONE);
        return metres ? assumptions : assumptions.withoutFlight();
    }

    /** Standing height in pixels of the frames, median over those in which the athlete is seen. */
    private static double athletePx(ClipLandmarks landmarks, Basis basis) {
        double[] heights = new double[landmarks.frameCount()];
        for (int f = 0; f < heights.length; f++) {
            int frame = f;
            heights[f] = landmarks
                    .poses()
                    .at(f)
                    .map(p -> new Point2(p.square().centreXPx(), p.square().centreYPx()))
                    .map(centre -> basis.statureM() / basis.view().metresPerPixel(frame, centre))
                    .orElse(Double.NaN);
        }
        return OrderStatistics.median(heights);
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

    /** Of the reference picture when the clip was matched to it, else of the clip's own. */
    private static Lens fixedPictureLens(Clip clip, ClipLandmarks landmarks) {
        Lens own = new Lens(landmarks.video().widthPx(), landmarks.video().heightPx(), MarkedCamera.distortionK1(clip));
        Optional<org.boardtopit.clips.ReferencePicture> reference =
                clip.camera().flatMap(Camera::reference);
        if (reference.isEmpty() || !landmarks.background().referenceMatched()) {
            return own;
        }
        try (ReferencePicture picture = ReferencePicture.read(reference.get().picture())) {
            return new Lens(picture.widthPx(), picture.heightPx(), MarkedCamera.distortionK1(clip));
        } catch (VideoException e) {
            return own; // it has been read before, when the clip was matched to it; the same size is the best guess
        }
    }

    /** The view in metres; when marks are there but cannot be used the warnings say why. */
    private static Optional<RunwayView> calibrated(Clip clip, ClipLandmarks landmarks, List<String> warnings) {
        return MarkedCamera.find(clip, landmarks.background(), warnings)
                .map(camera -> RunwayView.calibrated(landmarks.background(), camera));
    }

    private static Sex sex(Clip clip) {
        Optional<Athlete.Sex> sex = clip.athlete().flatMap(Athlete::sex);
        return sex.map(s -> s == Athlete.Sex.FEMALE ? Sex.FEMALE : Sex.MALE).orElse(Sex.MALE);
    }

    private static Optional<Foot> takeoffFoot(Clip clip) {
        return clip.entry().flatMap(AttemptEntry::takeoffFoot).map(f -> f == TakeoffFoot.LEFT ? Foot.LEFT : Foot.RIGHT);
    }
}
