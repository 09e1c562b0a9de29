package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.Correction;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.corrections.CorrectedLandmarks;
import org.boardtopit.corrections.RefusedCorrectionException;
import org.boardtopit.frontal.ClocksNotAlignedException;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.observations.AthleteLevel;
import org.boardtopit.observations.ObservedAttempt;
import org.boardtopit.observations.Observer;
import org.boardtopit.observations.RuleSet;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.Look;
import org.boardtopit.report.AttemptTables;
import org.boardtopit.report.ClipRecords;
import org.boardtopit.report.ObservationTable;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.subject.NoAthleteException;
import org.boardtopit.video.ClipOpener;
import org.boardtopit.video.VideoException;

/**
 * Measures one clip: looks through it for the background and what moves, follows the athlete, reads the landmarks, repairs
 * the motion, finds the contacts, measures, draws overlay and stills, and holds the measures against the rules.
 *
 * <p>A clip from in front or behind is measured together with the one from the side that it is joined to ({@link AttemptViews}):
 * whichever of the two comes first makes the landmarks of both.
 *
 * <p>The landmarks are the expensive half; they are kept in the output folder and used again when clip, network, looks and
 * reference picture are the same. Use from one thread.
 */
public final class ClipProcessor implements ClipMeasurer, LandmarkSource {
    /**
     * What the processor works with; owned and closed by whoever made it.
     *
     * @param looks how the network looks at every frame
     * @param rules by which observations are made
     * @param overlays false to leave the overlay videos and stills out
     */
    public record Tools(
            ClipOpener opener,
            PersonDetector detector,
            LandmarkPool landmarks,
            List<Look> looks,
            int encoderThreads,
            RuleSet rules,
            boolean overlays) {}

    /**
     * What a processor works with that opens no network and goes on from what is kept of the clips.
     *
     * @param card of the network that the landmarks were read with
     * @param looks how it looked at every frame
     * @param digests of the clips' bytes
     * @param rules by which observations are made
     * @param overlays false to leave the overlay videos out
     */
    public record KeptTools(
            ClipOpener opener,
            NetworkCard card,
            List<Look> looks,
            ClipDigests digests,
            int encoderThreads,
            RuleSet rules,
            boolean overlays) {}

    private final MeetSheet meet;
    private final AttemptViews views;
    private final NetworkCard card;
    private final List<Look> looks;
    private final RuleSet rules;
    private final boolean overlays;
    private final ClipSources sources;
    private final LandmarkReading reading;
    private final ClipDrawing drawing;

    /** For one run into one output folder, each clip by itself. */
    public ClipProcessor(MeetSheet meet, Path out, Tools tools) {
        this(meet, AttemptViews.NONE, out, tools);
    }

    /** For one run into one output folder, with the clips that show the same attempt joined. */
    public ClipProcessor(MeetSheet meet, AttemptViews views, Path out, Tools tools) {
        this.meet = meet;
        this.views = views;
        this.card = tools.landmarks().card();
        this.looks = List.copyOf(tools.looks());
        this.rules = tools.rules();
        this.overlays = tools.overlays();
        this.sources = new ClipSources(tools.opener(), card, looks, out);
        PeopleReading people = new PeopleReading(sources, Optional.of(tools.detector()));
        this.reading = new LandmarkReading(
                sources, Optional.of(new LandmarkReading.Networks(tools.detector(), tools.landmarks())), looks, people);
        this.drawing = drawing(sources, meet, people, tools.encoderThreads(), out);
    }

    /** For going on from what is kept in one output folder; a clip of which something is missing is not measured now. */
    public ClipProcessor(MeetSheet meet, AttemptViews views, Path out, KeptTools tools) {
        this.meet = meet;
        this.views = views;
        this.card = tools.card();
        this.looks = List.copyOf(tools.looks());
        this.rules = tools.rules();
        this.overlays = tools.overlays();
        this.sources = new ClipSources(tools.opener(), card, looks, out, tools.digests());
        PeopleReading people = new PeopleReading(sources, Optional.empty());
        this.reading = new LandmarkReading(sources, Optional.empty(), looks, people);
        this.drawing = drawing(sources, meet, people, tools.encoderThreads(), out);
    }

    private static ClipDrawing drawing(
            ClipSources sources, MeetSheet meet, PeopleReading people, int encoderThreads, Path out) {
        return new ClipDrawing(
                sources, people, encoderThreads, out, meet.safeguards().faces(), meet.language());
    }

    @Override
    public ClipResult measure(Clip clip, StageListener listener) throws ClipNotMeasuredException {
        Stages stages = new Stages(listener);
        try {
            requireAccepted(clip);
            if (clip.view() != Camera.View.SIDE) {
                return measureJoined(clip, stages);
            }
            ClipSource source = source(clip, stages);
            boolean withPeople = overlays && drawing.needsPeople();
            ClipLandmarks landmarks = withPeople ? reading.withPeople(source, stages) : reading.of(source, stages);
            stages.begin("measure", 0.70);
            AttemptAnalysis analysis = withOtherViews(clip, new AttemptAnalyser().analyse(clip, landmarks));
            if (overlays) {
                drawing.draw(source, landmarks, analysis, stages);
            }
            stages.begin("done", 1);
            return result(clip, landmarks, analysis);
        } catch (RefusedCorrectionException e) {
            throw new RefusedHereException(e);
        } catch (NoAthleteException | VideoException e) {
            throw new ClipNotMeasuredException(stages.current(), e.getMessage(), e);
        } catch (IOException e) {
            throw unwritable(clip, stages.current(), e);
        }
    }

    private static void requireAccepted(Clip clip) throws ClipNotMeasuredException {
        for (Correction correction : clip.corrections()) {
            if (correction.field() == Correction.Field.REJECT) {
                String by = correction.by().isEmpty() ? "" : " by " + correction.by();
                throw new ClipNotMeasuredException("corrections", "rejected" + by + ": " + correction.text(), null);
            }
        }
    }

    /** Adds what clips of the same attempt from in front or behind tell; one that fails costs its own part only. */
    private AttemptAnalysis withOtherViews(Clip clip, AttemptAnalysis side)
            throws IOException, NotMeasuredNowException {
        AttemptMeasures measures = side.measures();
        for (Clip other : views.joinedTo(clip)) {
            try {
                Stages unheard = Stages.unheard();
                requireAccepted(other);
                ClipLandmarks landmarks = CorrectedLandmarks.ofTheAthlete(
                        reading.of(source(other, unheard), unheard), other.corrections());
                measures = FrontalClip.of(other, landmarks, side).attempt().addedTo(measures);
            } catch (RefusedCorrectionException e) {
                throw e; // said of the other clip's own row too
            } catch (NotMeasuredNowException e) {
                throw e;
            } catch (NoAthleteException | VideoException | ClocksNotAlignedException | ClipNotMeasuredException e) {
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
        ClipLandmarks landmarks =
                CorrectedLandmarks.ofTheAthlete(reading.of(source(clip, stages), stages), clip.corrections());
        stages.begin("measure", 0.70);
        requireAccepted(side);
        AttemptAnalysis sideAnalysis = new AttemptAnalyser().analyse(side, sideLandmarks(side));
        try {
            FrontalClip frontal = FrontalClip.of(clip, landmarks, sideAnalysis);
            stages.begin("done", 1);
            return frontal.result(meet, side, card.name(), looks.size());
        } catch (ClocksNotAlignedException e) {
            throw new ClipNotMeasuredException(
                    stages.current(), "not joined to " + side.fileName() + ": " + e.getMessage(), e);
        }
    }

    private ClipLandmarks sideLandmarks(Clip side) throws IOException, ClipNotMeasuredException {
        Stages unheard = Stages.unheard();
        try {
            return reading.of(source(side, unheard), unheard);
        } catch (NoAthleteException | VideoException e) {
            throw new ClipNotMeasuredException(
                    "join", "not joined to " + side.fileName() + ", which cannot be measured: " + e.getMessage(), e);
        }
    }

    @Override
    public ClipLandmarks landmarks(Clip clip, StageListener listener) throws ClipNotMeasuredException {
        Stages stages = new Stages(listener);
        try {
            return reading.of(source(clip, stages), stages);
        } catch (NoAthleteException | VideoException e) {
            throw new ClipNotMeasuredException(stages.current(), e.getMessage(), e);
        } catch (IOException e) {
            throw unwritable(clip, stages.current(), e);
        }
    }

    private ClipSource source(Clip clip, Stages stages) throws IOException {
        stages.begin("survey", 0);
        return sources.of(clip);
    }

    private static NotMeasuredNowException unwritable(Clip clip, String stage, IOException e) {
        return Files.exists(clip.file())
                ? new NotMeasuredNowException(stage, "cannot write: " + e.getMessage(), e)
                : StoringMeasurer.cannotRead(clip, e);
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
                card.name(),
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
                .rows(new Observer(rules).observe(attempt));
    }

    private ClipRecord record(Clip clip, AttemptAnalysis analysis) {
        return new ClipRecord(
                clip.fileName(),
                ClipRecords.registration(analysis.view()),
                ClipRecords.scale(analysis.measures().scaleSource(), analysis.view(), analysis.found()),
                ClipRecords.measuring(looks.size(), analysis.fitted()),
                clip.corrections());
    }

    static Double meanConfidence(AttemptMeasures measures) {
        double mean = measures.contacts().stream()
                .mapToDouble(m -> m.contact().confidence())
                .average()
                .orElse(Double.NaN);
        return Double.isFinite(mean) ? mean : null;
    }
}
