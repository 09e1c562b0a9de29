package org.boardtopit.run;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.report.stills.StillNames;

/** Which pictures a measured clip has in the output folder. */
public final class ClipPictures {
    private ClipPictures() {}

    /** True when overlay and stills are there, or the clip gets none. */
    public static boolean arePresent(Clip clip, StoredResult result, Path out) {
        Optional<ClipResult> measured = result.result().filter(r -> clip.view() == Camera.View.SIDE);
        if (measured.isEmpty()) {
            return true;
        }
        Path strip = out.resolve(StillNames.FOLDER).resolve(StillNames.strip(clip.name()));
        return Files.isRegularFile(out.resolve("overlays").resolve(clip.name() + ".mp4"))
                && (Files.isRegularFile(strip)
                        || !StillNames.hasStrip(measured.get().contacts()));
    }
}
