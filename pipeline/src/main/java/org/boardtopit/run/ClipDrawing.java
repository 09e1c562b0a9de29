package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.Safeguards.Faces;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.report.AttemptOverlay;
import org.boardtopit.report.FaceCovers;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.drawing.OverlayVideo;
import org.boardtopit.report.tables.WholeFile;
import org.boardtopit.subject.PeopleFile;
import org.boardtopit.subject.PeopleSearch;
import org.boardtopit.subject.PersonInView;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoWriter;
import org.boardtopit.video.WriteBehindWriter;
import org.boardtopit.video.ffmpeg.FfmpegVideoWriter;
import org.boardtopit.wording.Language;

/** Everything that is drawn of a measured clip, with the faces hidden that must not be seen. */
final class ClipDrawing {
    private final ClipSources sources;
    private final PersonDetector detector;
    private final int encoderThreads;
    private final Path out;
    private final Faces faces;
    private final Language language;

    /**
     * For one run.
     *
     * @param out the output folder
     * @param meet says whose faces may be seen, and the language of what is written
     */
    ClipDrawing(ClipSources sources, PersonDetector detector, int encoderThreads, Path out, MeetSheet meet) {
        this.sources = sources;
        this.detector = detector;
        this.encoderThreads = encoderThreads;
        this.out = out;
        this.faces = meet.safeguards().faces();
        this.language = meet.language();
    }

    /** Draws it all. The clip has been read three times by now: what fails is the writing, and that is no fault of the clip. */
    void draw(ClipSource source, ClipLandmarks landmarks, AttemptAnalysis analysis, Stages stages)
            throws IOException, NotMeasuredNowException {
        OverlayScene scene = scene(source, landmarks, analysis);
        FaceCovers covers = covers(source, landmarks, scene, stages);
        stages.begin("overlay", 0.76);
        try {
            overlay(source.clip(), scene, covers);
        } catch (VideoException e) {
            throw new NotMeasuredNowException("overlay", e.getMessage(), e);
        }
    }

    private OverlayScene scene(ClipSource source, ClipLandmarks landmarks, AttemptAnalysis analysis) {
        return new AttemptOverlay(
                        source.clip(),
                        landmarks,
                        analysis.view(),
                        analysis.fitted(),
                        analysis.measures(),
                        source.slowDown(),
                        language)
                .scene();
    }

    private FaceCovers covers(ClipSource source, ClipLandmarks landmarks, OverlayScene scene, Stages stages)
            throws IOException {
        List<PersonInView> people = List.of();
        if (faces != Faces.SHOW) {
            stages.begin("faces", 0.72);
            people = people(source, landmarks);
        }
        return FaceCovers.of(landmarks, scene, people, faces);
    }

    private List<PersonInView> people(ClipSource source, ClipLandmarks landmarks) throws IOException {
        Path kept = source.kept(".people");
        Optional<List<PersonInView>> earlier = PeopleFile.read(kept, source.fingerprint());
        if (earlier.isPresent()) {
            return earlier.get();
        }
        List<PersonInView> people;
        try (FrameReader reader = sources.open(source)) {
            people = new PeopleSearch(detector).search(reader, landmarks.frameCount());
        }
        PeopleFile.write(kept, source.fingerprint(), people);
        return people;
    }

    private void overlay(Clip clip, OverlayScene scene, FaceCovers covers) throws IOException {
        Path target = out.resolve("overlays").resolve(clip.name() + ".mp4");
        Files.createDirectories(target.getParent());
        try (FrameReader reader = sources.asStored(clip);
                VideoWriter writer = new WriteBehindWriter(new FfmpegVideoWriter(
                        target,
                        reader.info().widthPx(),
                        reader.info().heightPx(),
                        reader.info().nominalFps(),
                        encoderThreads))) {
            OverlayVideo.write(reader, scene, covers::at, writer);
        }
        WholeFile.force(target); // before the result says that it is there
    }
}
