package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Safeguards.Faces;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.report.FaceCovers;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.subject.PeopleFile;
import org.boardtopit.subject.PeopleSearch;
import org.boardtopit.subject.PersonInView;
import org.boardtopit.video.FrameReader;

/** Which faces of a clip must not be seen: from the people that were found in it, which are kept in the folder of work. */
final class HiddenFaces {
    private static final String ENDING = ".people";

    private final ClipSources sources;
    private final Faces faces;

    /**
     * For the clips of one run.
     *
     * @param faces whose faces may be seen
     */
    HiddenFaces(ClipSources sources, Faces faces) {
        this.sources = sources;
        this.faces = faces;
    }

    /** True when the clip must be searched for people, and has not been. */
    boolean mustSearch(ClipSource source) {
        return faces != Faces.SHOW
                && PeopleFile.read(source.kept(ENDING), source.fingerprint()).isEmpty();
    }

    /** Searches the clip and keeps what is found. */
    void search(ClipSource source, ClipLandmarks landmarks, PersonDetector detector) throws IOException {
        Path kept = source.kept(ENDING);
        try (FrameReader reader = sources.open(source)) {
            PeopleFile.write(
                    kept, source.fingerprint(), new PeopleSearch(detector).search(reader, landmarks.frameCount()));
        }
    }

    /** Of a clip that need not be searched any more. */
    FaceCovers of(ClipSource source, ClipLandmarks landmarks, OverlayScene scene) throws IOException {
        Optional<List<PersonInView>> people = faces == Faces.SHOW
                ? Optional.of(List.of())
                : PeopleFile.read(source.kept(ENDING), source.fingerprint());
        return FaceCovers.of(
                landmarks,
                scene,
                people.orElseThrow(() -> new IOException(
                        "what was kept of the people in " + source.clip().fileName() + " has been taken away")),
                faces);
    }
}
