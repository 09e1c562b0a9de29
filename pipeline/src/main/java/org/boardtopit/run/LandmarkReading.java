package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.ReferencePicture;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.Survey;
import org.boardtopit.ground.opencv.BackgroundSurvey;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.ClipLandmarksFile;
import org.boardtopit.pose.Look;
import org.boardtopit.pose.PoseReader;
import org.boardtopit.pose.PoseTrack;
import org.boardtopit.subject.AthleteTracker;
import org.boardtopit.subject.NoAthleteException;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;

/**
 * The expensive half: the background, the athlete and the landmarks of a clip, read from its pixels with the networks and kept in
 * the folder of work, where the next one finds them.
 */
final class LandmarkReading {
    private final ClipSources sources;
    private final Optional<Networks> networks;
    private final List<Look> looks;
    private final PeopleReading people;

    /** Open networks; owned by whoever made them. */
    record Networks(PersonDetector detector, LandmarkPool landmarks) {}

    /**
     * Of one run.
     *
     * @param networks empty when nothing may be read anew
     */
    LandmarkReading(ClipSources sources, Optional<Networks> networks, List<Look> looks, PeopleReading people) {
        this.sources = sources;
        this.networks = networks;
        this.looks = List.copyOf(looks);
        this.people = people;
    }

    /**
     * Those that are kept, or else made and kept now.
     *
     * @throws NotMeasuredNowException when none are kept and there are no networks to make them
     */
    ClipLandmarks of(ClipSource source, Stages stages) throws IOException, NoAthleteException, NotMeasuredNowException {
        return of(source, false, stages);
    }

    /** The same, and everybody in the picture on the way, because the clip will be drawn. */
    ClipLandmarks withPeople(ClipSource source, Stages stages)
            throws IOException, NoAthleteException, NotMeasuredNowException {
        return of(source, true, stages);
    }

    private ClipLandmarks of(ClipSource source, boolean withPeople, Stages stages)
            throws IOException, NoAthleteException, NotMeasuredNowException {
        Path kept = source.kept(".landmarks");
        Files.createDirectories(kept.getParent());
        Optional<ClipLandmarks> earlier = ClipLandmarksFile.read(kept, source.fingerprint());
        if (earlier.isPresent()) {
            return earlier.get();
        }
        if (networks.isEmpty()) {
            throw new NotMeasuredNowException(
                    "landmarks",
                    "what was read from " + source.clip().fileName() + " is missing in the folder work, or it was read"
                            + " from another file, picture of the camera or network; start process again to read it",
                    null);
        }
        ClipLandmarks made = read(source, networks.get(), withPeople, stages);
        ClipLandmarksFile.write(kept, source.fingerprint(), made);
        return made;
    }

    private ClipLandmarks read(ClipSource source, Networks open, boolean withPeople, Stages stages)
            throws IOException, NoAthleteException {
        Survey survey = withPeople ? people.beside(source, stages, "survey", r -> survey(source, r)) : survey(source);
        stages.begin("track", 0.25);
        SubjectTrack subject;
        Camera.View view = source.clip().view();
        Optional<RunwayCamera> camera = view == Camera.View.SIDE
                ? Optional.empty()
                : MarkedCamera.find(source.clip(), survey.background(), new ArrayList<>()); // warned of when measured
        try (FrameReader reader = sources.open(source)) {
            subject =
                    new AthleteTracker(open.detector(), open.landmarks().worker(0)).track(survey, reader, view, camera);
        }
        stages.begin("landmarks", 0.35);
        PoseTrack poses;
        try (FrameReader reader = sources.open(source)) {
            poses = new PoseReader(open.landmarks(), looks).read(reader, subject);
        }
        return new ClipLandmarks(
                survey.video(), survey.timestampsUs(), survey.undecodableFrames(), survey.background(), subject, poses);
    }

    private Survey survey(ClipSource source) throws VideoException {
        try (FrameReader reader = sources.open(source)) {
            return survey(source, reader);
        }
    }

    private static Survey survey(ClipSource source, FrameReader reader) throws VideoException {
        Optional<ReferencePicture> picture = ClipSources.reference(source.clip());
        if (picture.isEmpty()) {
            return new BackgroundSurvey(Optional.empty()).survey(reader);
        }
        try (var reference =
                org.boardtopit.ground.opencv.ReferencePicture.read(picture.get().picture())) {
            return new BackgroundSurvey(Optional.of(reference)).survey(reader);
        }
    }
}
