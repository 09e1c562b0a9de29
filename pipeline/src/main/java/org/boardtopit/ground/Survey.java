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

    /** Median time between frames in seconds; 1/60 for a clip of one frame. */
    public double frameStepS() {
        long[] steps = new long[Math.max(0, timestampsUs.size() - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = timestampsUs.get(i + 1) - timestampsUs.get(i);
        }
        java.util.Arrays.sort(steps);
        return steps.length == 0 ? 1 / 60.0 : Math.max(1, steps[steps.length / 2]) / 1e6;
    }
}
