package org.boardtopit.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.AttemptEntry;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.Safeguards.Faces;
import org.boardtopit.frontal.ClocksNotAlignedException;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.Survey;
import org.boardtopit.ground.opencv.BackgroundSurvey;
import org.boardtopit.ground.opencv.ReferencePicture;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.observations.AthleteLevel;
import org.boardtopit.observations.ObservedAttempt;
import org.boardtopit.observations.Observer;
import org.boardtopit.observations.RuleSet;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.ClipLandmarksFile;
import org.boardtopit.pose.Look;
import org.boardtopit.pose.PoseReader;
import org.boardtopit.pose.PoseTrack;
import org.boardtopit.report.AttemptOverlay;
import org.boardtopit.report.AttemptTables;
import org.boardtopit.report.ClipRecords;
import org.boardtopit.report.FaceCovers;
import org.boardtopit.report.ObservationTable;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.drawing.OverlayVideo;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.WholeFile;
import org.boardtopit.subject.AthleteTracker;
import org.boardtopit.subject.NoAthleteException;
import org.boardtopit.subject.PeopleFile;
import org.boardtopit.subject.PeopleSearch;
import org.boardtopit.subject.PersonInView;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.video.ClipOpener;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.PrefetchingReader;
import org.boardtopit.video.RetimedReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoWriter;
import org.boardtopit.video.WriteBehindWriter;
import org.boardtopit.video.ffmpeg.FfmpegVideoWriter;

/**
 * Measures one clip: looks through it for the background and what moves, follows the athlete, reads the landmarks, repairs
 * the motion, finds the contacts, measures, draws the overlay, and holds the measures against the rules.
 *
 * <p>A clip from in front or behind is measured together with the one from the side that it is joined to ({@link AttemptViews}):
 * whichever of the two comes first makes the landmarks of both.
 *
 * <p>The landmarks are the expensive half; they are kept in the output folder and used again when clip, network, looks and
 * reference picture are the same. Use from one thread.
 */
public final class ClipProcessor implements ClipMeasurer, LandmarkSource {
    /** A stated capture rate this much above the file's means slow motion; below it is a rounding of the same rate. */
    private static final double LEAST_SLOW_DOWN = 1.2;

    /**
     * What the processor works with; owned and closed by whoever made it.
     *
     * @param looks how the network looks at every frame
     * @param rules by which observations are made
     * @param overlays false to leave the overlay videos out
     */
    public record Tools(
            ClipOpener opener,
            PersonDetector detector,
            LandmarkPool landmarks,
            List<Look> looks,
            int encoderThreads,
            RuleSet rules,
            boolean overlays) {}

    private final MeetSheet meet;
    private final AttemptViews views;
    private final Path out;
    private final Tools tools;

    /** For one run into one output folder, each clip by itself. */
    public ClipProcessor(MeetSheet meet, Path out, Tools tools) {
        this(meet, AttemptViews.NONE, out, tools);
    }

    /** For one run into one output folder, with the clips that show the same attempt joined. */
    public ClipProcessor(MeetSheet meet, AttemptViews views, Path out, Tools tools) {
        this.meet = meet;
        this.views = views;
        this.out = out;
        this.tools = tools;
    }

    @Override
    public ClipResult measure(Clip clip, StageListener listener) throws ClipNotMeasuredException {
        Stages stages = new Stages(listener);
        try {
            if (clip.view() != Camera.View.SIDE) {
                return measureJoined(clip, stages);
            }
            Source source = source(clip, stages);
            ClipLandmarks landmarks = landmarks(source, stages);
            stages.begin("measure", 0.70);
            AttemptAnalysis analysis = withOtherViews(clip, new AttemptAnalyser().analyse(clip, landmarks));
            if (tools.overlays()) {
                OverlayScene scene = scene(source, landmarks, analysis);
                FaceCovers covers = covers(source, landmarks, scene, stages);
                stages.begin("overlay", 0.76);
                tryOverlay(clip, scene, covers);
            }
            stages.begin("done", 1);
            return result(clip, landmarks, analysis);
        } catch (NoAthleteException | VideoException e) {
            throw new ClipNotMeasuredException(stages.current(), e.getMessage(), e);
        } catch (IOException e) {
            throw unwritable(clip, stages.current(), e);
        }
    }

    /** Adds what clips of the same attempt from in front or behind tell; one that fails costs its own part only. */
    private AttemptAnalysis withOtherViews(Clip clip, AttemptAnalysis side) throws IOException {
        AttemptMeasures measures = side.measures();
        for (Clip other : views.joinedTo(clip)) {
            try {
                Stages unheard = new Stages((stage, share) -> {});
                ClipLandmarks landmarks = landmarks(source(other, unheard), unheard);
                measures = FrontalClip.of(other, landmarks, side).attempt().addedTo(measures);
            } catch (NoAthleteException | VideoException | ClocksNotAlignedException e) {
                measures = measures.withWarning(other.fileName() + " could not be joined: " + e.getMessage());
            } catch (RuntimeException e) {
                // A fault of the program, told in full with the other clip's own row; it must not cost this one.
                measures = measures.withWarning(other.fileName() + " could not be joined: a fault of the program");
            }
        }
        return side.with(measures);
    }

    /** A clip from in front or behind takes its contacts from the one from the side. */
    private ClipResult measureJoined(Clip clip, Stages stages)
            throws IOException, NoAthleteException, ClipNotMeasuredException {
        Clip side = views.sideOf(clip)
                .orElseThrow(() -> new ClipNotMeasuredException(
                        "join",
                        "a clip from in front or behind is measured together with one from the side, and the attempts"
                                + " sheet has no clip from the side of the same bib and attempt",
                        null));
        ClipLandmarks landmarks = landmarks(source(clip, stages), stages);
        stages.begin("measure", 0.70);
        AttemptAnalysis sideAnalysis = new AttemptAnalyser().analyse(side, sideLandmarks(side));
        try {
            FrontalClip frontal = FrontalClip.of(clip, landmarks, sideAnalysis);
            stages.begin("done", 1);
            return frontal.result(
                    meet, side, tools.landmarks().card().name(), tools.looks().size());
        } catch (ClocksNotAlignedException e) {
            throw new ClipNotMeasuredException(
                    stages.current(), "not joined to " + side.fileName() + ": " + e.getMessage(), e);
        }
    }

    private ClipLandmarks sideLandmarks(Clip side) throws IOException, ClipNotMeasuredException {
        Stages unheard = new Stages((stage, share) -> {});
        try {
            return landmarks(source(side, unheard), unheard);
        } catch (NoAthleteException | VideoException e) {
            throw new ClipNotMeasuredException(
                    "join", "not joined to " + side.fileName() + ", which cannot be measured: " + e.getMessage(), e);
        }
    }

    @Override
    public ClipLandmarks landmarks(Clip clip, StageListener listener) throws ClipNotMeasuredException {
        Stages stages = new Stages(listener);
        try {
            return landmarks(source(clip, stages), stages);
        } catch (NoAthleteException | VideoException e) {
            throw new ClipNotMeasuredException(stages.current(), e.getMessage(), e);
        } catch (IOException e) {
            throw unwritable(clip, stages.current(), e);
        }
    }

    /** Remembers the stage, for the listener and for the reason of a failure. */
    private static final class Stages {
        private final StageListener listener;
        private String current = "open";

        Stages(StageListener listener) {
            this.listener = listener;
        }

        void begin(String stage, double share) {
            current = stage;
            listener.at(stage, share);
        }

        String current() {
            return current;
        }
    }

    /**
     * A clip as it is read.
     *
     * @param slowDown how many times slower it is stored than it was captured
     * @param fingerprint of all that its landmarks are made from, so that its bytes are read for it once
     */
    private record Source(Clip clip, double slowDown, String fingerprint) {}

    private Source source(Clip clip, Stages stages) throws IOException {
        double slowDown = slowDown(clip);
        stages.begin("survey", 0);
        return new Source(clip, slowDown, fingerprint(clip, slowDown));
    }

    private double slowDown(Clip clip) throws VideoException {
        double capture = clip.entry().map(AttemptEntry::captureFps).orElse(Double.NaN);
        if (!(capture > 0)) {
            return 1;
        }
        try (FrameReader reader = tools.opener().open(clip.file())) {
            double ratio = capture / reader.info().nominalFps();
            return ratio >= LEAST_SLOW_DOWN ? ratio : 1;
        }
    }

    private FrameReader open(Clip clip, double slowDown) throws VideoException {
        FrameReader reader = new PrefetchingReader(tools.opener().open(clip.file()));
        return slowDown == 1 ? reader : new RetimedReader(reader, slowDown);
    }

    private Optional<org.boardtopit.clips.ReferencePicture> reference(Clip clip) {
        return clip.camera().flatMap(Camera::reference);
    }

    private ClipLandmarks landmarks(Source source, Stages stages) throws IOException, NoAthleteException {
        Path kept = kept(source, ".landmarks");
        Files.createDirectories(kept.getParent());
        Optional<ClipLandmarks> earlier = ClipLandmarksFile.read(kept, source.fingerprint());
        if (earlier.isPresent()) {
            return earlier.get();
        }
        ClipLandmarks made = readLandmarks(source.clip(), source.slowDown(), stages);
        ClipLandmarksFile.write(kept, source.fingerprint(), made);
        return made;
    }

    private Path kept(Source source, String ending) {
        return out.resolve("work").resolve(source.clip().name() + ending);
    }

    private ClipLandmarks readLandmarks(Clip clip, double slowDown, Stages stages)
            throws VideoException, NoAthleteException {
        Survey survey = survey(clip, slowDown);
        stages.begin("track", 0.25);
        SubjectTrack subject;
        Optional<RunwayCamera> camera = clip.view() == Camera.View.SIDE
                ? Optional.empty()
                : MarkedCamera.find(clip, survey.background(), new ArrayList<>()); // warned of when it is measured
        try (FrameReader reader = open(clip, slowDown)) {
            subject = new AthleteTracker(tools.detector(), tools.landmarks().worker(0))
                    .track(survey, reader, clip.view(), camera);
        }
        stages.begin("landmarks", 0.35);
        PoseTrack poses;
        try (FrameReader reader = open(clip, slowDown)) {
            poses = new PoseReader(tools.landmarks(), tools.looks()).read(reader, subject);
        }
        return new ClipLandmarks(
                survey.video(), survey.timestampsUs(), survey.undecodableFrames(), survey.background(), subject, poses);
    }

    private Survey survey(Clip clip, double slowDown) throws VideoException {
        Optional<org.boardtopit.clips.ReferencePicture> picture = reference(clip);
        try (FrameReader reader = open(clip, slowDown)) {
            if (picture.isEmpty()) {
                return new BackgroundSurvey(Optional.empty()).survey(reader);
            }
            try (ReferencePicture reference =
                    ReferencePicture.read(picture.get().picture())) {
                return new BackgroundSurvey(Optional.of(reference)).survey(reader);
            }
        }
    }

    private String fingerprint(Clip clip, double slowDown) throws IOException {
        MessageDigest digest = FileDigests.sha256();
        FileDigests.add(digest, clip.file());
        digest.update(tools.landmarks().card().sha256().getBytes(StandardCharsets.UTF_8));
        digest.update(tools.looks().toString().getBytes(StandardCharsets.UTF_8));
        digest.update(Double.toString(slowDown).getBytes(StandardCharsets.UTF_8));
        Optional<org.boardtopit.clips.ReferencePicture> picture = reference(clip);
        if (picture.isPresent()) {
            FileDigests.add(digest, picture.get().picture());
        }
        if (clip.view() != Camera.View.SIDE) {
            digest.update(clip.view().name().getBytes(StandardCharsets.UTF_8));
            digest.update(Double.toString(MarkedCamera.distortionK1(clip)).getBytes(StandardCharsets.UTF_8));
            if (picture.isPresent()) {
                FileDigests.add(digest, picture.get().marksFile());
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /** The clip has been read three times by now: what fails is the writing, and that is no fault of the clip. */
    private void tryOverlay(Clip clip, OverlayScene scene, FaceCovers covers)
            throws IOException, NotMeasuredNowException {
        try {
            overlay(clip, scene, covers);
        } catch (VideoException e) {
            throw new NotMeasuredNowException("overlay", e.getMessage(), e);
        }
    }

    private static NotMeasuredNowException unwritable(Clip clip, String stage, IOException e) {
        return Files.exists(clip.file())
                ? new NotMeasuredNowException(stage, "cannot write: " + e.getMessage(), e)
                : StoringMeasurer.cannotRead(clip, e);
    }

    private static OverlayScene scene(Source source, ClipLandmarks landmarks, AttemptAnalysis analysis) {
        return new AttemptOverlay(
                        source.clip(),
                        landmarks,
                        analysis.view(),
                        analysis.fitted(),
                        analysis.measures(),
                        source.slowDown())
                .scene();
    }

    private FaceCovers covers(Source source, ClipLandmarks landmarks, OverlayScene scene, Stages stages)
            throws IOException {
        Faces faces = meet.safeguards().faces();
        List<PersonInView> people = List.of();
        if (faces != Faces.SHOW) {
            stages.begin("faces", 0.72);
            people = people(source, landmarks);
        }
        return FaceCovers.of(landmarks, scene, people, faces);
    }

    private List<PersonInView> people(Source source, ClipLandmarks landmarks) throws IOException {
        Path kept = kept(source, ".people");
        Optional<List<PersonInView>> earlier = PeopleFile.read(kept, source.fingerprint());
        if (earlier.isPresent()) {
            return earlier.get();
        }
        List<PersonInView> people;
        try (FrameReader reader = open(source.clip(), source.slowDown())) {
            people = new PeopleSearch(tools.detector()).search(reader, landmarks.frameCount());
        }
        PeopleFile.write(kept, source.fingerprint(), people);
        return people;
    }

    private void overlay(Clip clip, OverlayScene scene, FaceCovers covers) throws IOException {
        Path target = out.resolve("overlays").resolve(clip.name() + ".mp4");
        Files.createDirectories(target.getParent());
        try (FrameReader reader = open(clip, 1);
                VideoWriter writer = new WriteBehindWriter(new FfmpegVideoWriter(
                        target,
                        reader.info().widthPx(),
                        reader.info().heightPx(),
                        reader.info().nominalFps(),
                        tools.encoderThreads()))) {
            OverlayVideo.write(reader, scene, covers::at, writer);
        }
        WholeFile.force(target); // before the result says that it is there
    }

    /** Outcome and seconds are the run's to judge ({@link MeetRunner}). */
    private ClipResult result(Clip clip, ClipLandmarks landmarks, AttemptAnalysis analysis) {
        AttemptTables tables = new AttemptTables(
                clip, meet, analysis.measures(), analysis.fitted().repaired());
        double fps = 1 / landmarks.frameStepS();
        AttemptRow attempt = tables.attempt(landmarks.subject().direction() > 0, fps);
        double duration = landmarks.timeS(landmarks.frameCount() - 1) + landmarks.frameStepS();
        ClipRow row = new ClipRow(
                clip.fileName(),
                Outcome.MEASURED,
                "",
                String.join("; ", analysis.measures().warnings()),
                landmarks.frameCount(),
                fps,
                duration,
                landmarks.video().widthPx(),
                landmarks.video().heightPx(),
                null,
                tools.landmarks().card().name(),
                100 * landmarks.subject().seenShare(),
                100 * landmarks.background().registeredShare(),
                meanConfidence(analysis.measures()));
        return new ClipResult(
                attempt,
                tables.phases(),
                tables.contacts(),
                tables.intervals(),
                observations(clip, analysis),
                row,
                record(clip, analysis));
    }

    private List<ObservationRow> observations(Clip clip, AttemptAnalysis analysis) {
        if (analysis.measures().isDrill()) {
            return List.of(); // the guides are those of a triple jump at full speed
        }
        AthleteLevel level =
                clip.athlete().map(a -> AthleteLevel.of(a, meet.date())).orElse(AthleteLevel.NOT_STATED);
        ObservedAttempt attempt =
                ObservedAttempt.of(analysis.measures(), level, clip.athlete().flatMap(Athlete::sex));
        return new ObservationTable(clip.fileName(), analysis.fitted().repaired())
                .rows(new Observer(tools.rules()).observe(attempt));
    }

    private ClipRecord record(Clip clip, AttemptAnalysis analysis) {
        return new ClipRecord(
                clip.fileName(),
                ClipRecords.registration(analysis.view()),
                ClipRecords.scale(analysis.measures().scaleSource(), analysis.view(), analysis.found()),
                ClipRecords.measuring(tools.looks().size(), analysis.fitted()));
    }

    static Double meanConfidence(AttemptMeasures measures) {
        double mean = measures.contacts().stream()
                .mapToDouble(m -> m.contact().confidence())
                .average()
                .orElse(Double.NaN);
        return Double.isFinite(mean) ? mean : null;
    }
}
