package org.boardtopit.report.overlay.drawing;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.report.stills.Framing;
import org.boardtopit.report.stills.Still;
import org.boardtopit.report.stills.StillNames;
import org.boardtopit.report.stills.StillsScene;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.opencv.opencv_core.Mat;

/**
 * Makes the still pictures of a clip while its frames go by: shows it every frame, then {@link #finish}. Faces must be hidden in the
 * frames already. It keeps pictures of a fixed size, never frames. Use from one thread.
 */
public final class AttemptPictures implements UnpaintedFrames, AutoCloseable {
    private static final int STILL_QUALITY = 90;
    private static final int STRIP_QUALITY = 88;

    private final StillsScene scene;
    private final Path folder;
    private final String clip;
    private final StillPainter stills;
    private final StripPicture strip;
    private final Optional<PhasePicture> phases;
    private int next;

    /**
     * For one clip.
     *
     * @param folder in which the files go; it must exist
     * @param clip what their names begin with
     */
    public AttemptPictures(StillsScene scene, Path folder, String clip) {
        this.scene = scene;
        this.folder = folder;
        this.clip = clip;
        stills = new StillPainter(scene, Framing.STILL, 1, true);
        strip = new StripPicture(scene);
        phases = scene.phases().map(p -> new PhasePicture(p, scene.who()));
    }

    @Override
    public void see(VideoFrame frame) throws IOException {
        List<Still> all = scene.stills();
        while (next < all.size() && all.get(next).frameIndex() < frame.index()) {
            next++;
        }
        boolean due = next < all.size() && all.get(next).frameIndex() == frame.index();
        boolean inPhases = phases.isPresent() && phases.get().wants(frame.index());
        if (!due && !inPhases) {
            return;
        }
        try (Mat pixels = Warp.pixels(frame)) {
            for (; next < all.size() && all.get(next).frameIndex() == frame.index(); next++) {
                still(pixels, all.get(next));
            }
            if (inPhases) {
                phases.get().add(pixels, frame.index());
            }
        }
    }

    private void still(Mat frame, Still still) throws IOException {
        try (Mat picture = stills.painted(frame, still)) {
            JpegFile.write(
                    picture, STILL_QUALITY, folder.resolve(StillNames.still(clip, still.contact(), still.instant())));
        }
        strip.add(frame, still);
    }

    /** Writes what needs all frames; the strip last, so that it tells that everything is there. */
    public void finish() throws IOException {
        if (phases.isPresent()) {
            try (Mat picture = phases.get().painted()) {
                JpegFile.write(picture, STRIP_QUALITY, folder.resolve(StillNames.phases(clip)));
            }
        }
        if (!scene.columns().isEmpty()) {
            JpegFile.write(strip.picture(), STRIP_QUALITY, folder.resolve(StillNames.strip(clip)));
        }
    }

    @Override
    public void close() {
        phases.ifPresent(PhasePicture::close);
        strip.close();
        stills.close();
    }
}
