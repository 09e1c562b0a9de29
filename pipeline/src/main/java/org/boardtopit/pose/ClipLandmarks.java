package org.boardtopit.pose;

import java.util.List;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.video.VideoInfo;

/**
 * All that the expensive half of the pipeline yields for one clip; everything later is computed from it without the clip.
 *
 * @param timestampsUs presentation time of every frame since the first
 * @param undecodableFrames frames that were passed over
 */
public record ClipLandmarks(
        VideoInfo video,
        List<Long> timestampsUs,
        long undecodableFrames,
        BackgroundMotion background,
        SubjectTrack subject,
        PoseTrack poses) {

    public ClipLandmarks {
        timestampsUs = List.copyOf(timestampsUs);
        int n = timestampsUs.size();
        if (background.frameCount() != n || subject.frameCount() != n || poses.frameCount() != n) {
            throw new IllegalArgumentException("landmarks of a clip need the same frames throughout, was " + n + ", "
                    + background.frameCount() + ", " + subject.frameCount() + ", " + poses.frameCount());
        }
    }

    public int frameCount() {
        return timestampsUs.size();
    }

    /** Presentation time of a frame in seconds. */
    public double timeS(int frame) {
        return timestampsUs.get(frame) / 1e6;
    }

    /** The frame nearest to a time in seconds. */
    public int nearestFrame(double timeS) {
        int nearest = 0;
        for (int i = 1; i < frameCount(); i++) {
            nearest = Math.abs(timeS(i) - timeS) < Math.abs(timeS(nearest) - timeS) ? i : nearest;
        }
        return nearest;
    }

    /** Median time between frames in seconds. */
    public double frameStepS() {
        long[] steps = new long[Math.max(0, timestampsUs.size() - 1)];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = timestampsUs.get(i + 1) - timestampsUs.get(i);
        }
        java.util.Arrays.sort(steps);
        return steps.length == 0 ? 1 / video.nominalFps() : Math.max(1, steps[steps.length / 2]) / 1e6;
    }
}
