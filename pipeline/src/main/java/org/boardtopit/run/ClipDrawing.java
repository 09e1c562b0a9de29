package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.Safeguards.Faces;
import org.boardtopit.corrections.CorrectedLandmarks;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.report.AttemptOverlay;
import org.boardtopit.report.FaceCovers;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.drawing.AttemptPictures;
import org.boardtopit.report.overlay.drawing.OverlayVideo;
import org.boardtopit.report.stills.AttemptStills;
import org.boardtopit.report.stills.StillNames;
import org.boardtopit.report.stills.StillsScene;
import org.boardtopit.report.tables.WholeFile;
import org.boardtopit.subject.PersonInView;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoWriter;
import org.boardtopit.video.WriteBehindWriter;
import org.boardtopit.video.ffmpeg.FfmpegVideoWriter;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;

/** Everything that is drawn of a measured clip, with the faces hidden that must not be seen. */
final class ClipDrawing {
    private final ClipSources sources;
    private final PeopleReading reading;
    private final int encoderThreads;
    private final Path out;
    private final Faces faces;
    private final Language language;

    /**
     * For one run.
     *
     * @param people finds where heads are that must be hidden
     * @param faces whose faces may be seen
     * @param language of what is written into the pictures
     * @param out the output folder
     */
    ClipDrawing(
            ClipSources sources, PeopleReading people, int encoderThreads, Path out, Faces faces, Language language) {
        this.sources = sources;
        this.reading = people;
        this.encoderThreads = encoderThreads;
        this.out = out;
        this.faces = faces;
        this.language = language;
    }

    /** Whether places of people are needed to draw. */
    boolean needsPeople() {
        return faces != Faces.SHOW;
    }

    /** Draws it all. The clip has been read three times by now: what fails is the writing, and that is no fault of the clip. */
    void draw(ClipSource source, ClipLandmarks landmarks, AttemptAnalysis analysis, Stages stages)
            throws IOException, NotMeasuredNowException {
        OverlayScene scene = scene(source, landmarks, analysis, language);
        FaceCovers covers = covers(source, landmarks, scene, stages);
        stages.begin("overlay", 0.76);
        try {
            overlay(source.clip(), scene, covers, stills(analysis, scene));
        } catch (VideoException e) {
            throw new NotMeasuredNowException("overlay", e.getMessage(), e);
        }
    }

    static OverlayScene scene(ClipSource source, ClipLandmarks landmarks, AttemptAnalysis analysis, Language language) {
        return new AttemptOverlay(
                        source.clip(),
                        CorrectedLandmarks.ofTheAthlete(landmarks, source.clip().corrections()),
                        analysis.view(),
                        analysis.drawn(),
                        analysis.measures(),
                        source.slowDown(),
                        language)
                .scene();
    }

    private StillsScene stills(AttemptAnalysis analysis, OverlayScene scene) {
        Words words = Words.of("picture", language);
        return new AttemptStills(analysis.view(), analysis.drawn(), analysis.measures(), scene, words).scene();
    }

    /** Of all who were followed, also where that was somebody else. */
    private FaceCovers covers(ClipSource source, ClipLandmarks landmarks, OverlayScene scene, Stages stages)
            throws IOException, NotMeasuredNowException {
        List<PersonInView> people = List.of();
        if (needsPeople()) {
            stages.begin(PeopleReading.STAGE, 0.72);
            people = reading.of(source);
        }
        return FaceCovers.of(landmarks, scene, people, faces);
    }

    /** The video, and the stills from the same frames; when the stills are there so is the video. */
    private void overlay(Clip clip, OverlayScene scene, FaceCovers covers, StillsScene stills) throws IOException {
        Path target = out.resolve("overlays").resolve(clip.name() + ".mp4");
        Path folder = out.resolve(StillNames.FOLDER);
        Files.createDirectories(target.getParent());
        Files.createDirectories(folder);
        OutputFiles.deleteStills(folder, clip.name());
        try (AttemptPictures pictures = new AttemptPictures(stills, folder, clip.name())) {
            try (FrameReader reader = sources.asStored(clip);
                    VideoWriter writer = new WriteBehindWriter(new FfmpegVideoWriter(
                            target,
                            reader.info().widthPx(),
                            reader.info().heightPx(),
                            reader.info().nominalFps(),
                            encoderThreads))) {
                OverlayVideo.write(reader, scene, covers::at, pictures, writer);
            }
            WholeFile.force(target); // before the result says that it is there
            pictures.finish();
        }
    }
}
