package org.boardtopit.run;

import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.Mark;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.CalibrationException;
import org.boardtopit.ground.Lens;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.opencv.ReferencePicture;
import org.boardtopit.video.VideoException;

/** The camera of a clip, from the marks on its reference picture. */
final class MarkedCamera {
    private MarkedCamera() {}

    /** The camera of the fixed picture; when marks are there but cannot be used the warnings say why. */
    static Optional<RunwayCamera> find(Clip clip, BackgroundMotion background, List<String> warnings) {
        Optional<org.boardtopit.clips.ReferencePicture> reference =
                clip.camera().flatMap(Camera::reference);
        if (reference.isEmpty()) {
            return Optional.empty();
        }
        if (!background.referenceMatched()) {
            warnings.add("the clip does not match the reference picture "
                    + reference.get().picture().getFileName() + "; is it another camera position?");
            return Optional.empty();
        }
        List<Mark> marks = reference.get().marks().marks();
        try (ReferencePicture picture = ReferencePicture.read(reference.get().picture())) {
            Lens lens = new Lens(picture.widthPx(), picture.heightPx(), distortionK1(clip));
            return Optional.of(camera(marks, lens, background.facts()));
        } catch (CalibrationException | VideoException e) {
            warnings.add(reference.get().marksFile().getFileName() + ": " + e.getMessage());
            return Optional.empty();
        }
    }

    static double distortionK1(Clip clip) {
        return clip.camera().map(Camera::distortionK1).orElse(0.0);
    }

    /** The turns of a panned clip tell the focal length better than marks near one line do. */
    private static RunwayCamera camera(List<Mark> marks, Lens lens, RegistrationFacts facts)
            throws CalibrationException {
        return facts.tellsFocalLength()
                ? RunwayCamera.fromMarks(marks, lens, facts.focalPx(), facts.honestLogFocalSd())
                : RunwayCamera.fromMarks(marks, lens);
    }
}
