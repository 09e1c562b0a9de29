package org.boardtopit.cli;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.check.CameraPictures;
import org.boardtopit.check.Finding;
import org.boardtopit.check.Finding.Weight;
import org.boardtopit.clips.Camera;
import org.boardtopit.ground.Lens;
import org.boardtopit.ground.MarksCheck;
import org.boardtopit.ground.Placement;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.opencv.ReferencePicture;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;

/** Reference pictures that stay open while clips are looked for in them. */
final class OpenCameraPictures implements CameraPictures, AutoCloseable {
    private final Map<String, ReferencePicture> pictures = new HashMap<>();
    private final Map<String, RunwayCamera> seers = new HashMap<>();
    private final List<Finding> findings = new ArrayList<>();

    /** Opens those of all cameras; one that cannot be read is among the findings. */
    OpenCameraPictures(List<Camera> cameras) {
        for (Camera camera : cameras) {
            camera.reference().ifPresent(reference -> open(camera, reference));
        }
    }

    private void open(Camera camera, org.boardtopit.clips.ReferencePicture reference) {
        String place = "camera " + camera.name();
        try {
            ReferencePicture picture = ReferencePicture.read(reference.picture());
            pictures.put(camera.name(), picture);
            MarksCheck check = MarksCheck.of(
                    reference.marks().marks(), new Lens(picture.widthPx(), picture.heightPx(), camera.distortionK1()));
            check.camera().filter(c -> check.agree()).ifPresent(c -> seers.put(camera.name(), c));
            if (!check.agree()) {
                findings.add(new Finding(
                        Weight.PROBLEM,
                        place,
                        "the marks in " + reference.marksFile().getFileName() + " do not agree with one another",
                        "boardtopit cameras says which is off"));
            }
        } catch (VideoException e) {
            findings.add(new Finding(
                    Weight.PROBLEM,
                    place,
                    "its reference picture " + reference.picture().getFileName() + " cannot be read",
                    "a JPEG or PNG is needed"));
        }
    }

    /** What is wrong with pictures and marks. */
    List<Finding> findings() {
        return List.copyOf(findings);
    }

    @Override
    public Optional<Placement> place(Camera camera, VideoFrame frame) {
        ReferencePicture picture = pictures.get(camera.name());
        return picture == null ? Optional.empty() : picture.place(frame);
    }

    @Override
    public Optional<RunwayCamera> seer(Camera camera) {
        return Optional.ofNullable(seers.get(camera.name()));
    }

    @Override
    public void close() {
        pictures.values().forEach(ReferencePicture::close);
    }
}
