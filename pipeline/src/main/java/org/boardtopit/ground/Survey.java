package org.boardtopit.ground;

import java.util.List;
import org.boardtopit.video.VideoInfo;

/**
 * What the first look through a clip tells: its frames' times, how the camera moved, and where things move.
 *
 * @param timestampsUs presentation time of every frame since the first
 * @param undecodableFrames frames that were passed over
 */
public record Survey(
        VideoInfo video,
        List<Long> timestampsUs,
        long undecodableFrames,
        BackgroundMotion background,
        Movement movement) {

    public Survey {
        timestampsUs = List.copyOf(timestampsUs);
        if (timestampsUs.size() != background.frameCount() || timestampsUs.size() != movement.frameCount()) {
            throw new IllegalArgumentException("a survey needs time, background and movement of the same frames, was "
                    + timestampsUs.size() + ", " + background.frameCount() + ", " + movement.frameCount());
        }
    }

    public int frameCount() {
        return timestampsUs.size();
    }
}
