package org.boardtopit.corrections;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Correction;
import org.boardtopit.clips.Correction.Field;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.PoseTrack;

/** Landmarks with what the analyst said of them: frames of somebody else count as not seen, sides may be exchanged. */
public final class CorrectedLandmarks {
    private CorrectedLandmarks() {}

    /**
     * Without the frames in which the program followed somebody else.
     *
     * @throws RefusedCorrectionException when a span is outside the clip or nothing would be left
     */
    public static ClipLandmarks ofTheAthlete(ClipLandmarks landmarks, List<Correction> corrections) {
        List<Correction> spans = corrections.stream()
                .filter(c -> c.field() == Field.NOT_THE_ATHLETE)
                .toList();
        if (spans.isEmpty()) {
            return landmarks;
        }
        ClipInstants instants = new ClipInstants(landmarks);
        List<Optional<PoseTrack.FramePose>> poses = new ArrayList<>();
        for (int f = 0; f < landmarks.frameCount(); f++) {
            double timeS = landmarks.timeS(f);
            boolean others = spans.stream().anyMatch(s -> timeS >= instants.fromS(s) && timeS <= instants.toS(s));
            poses.add(others ? Optional.empty() : landmarks.poses().at(f));
        }
        if (poses.stream().allMatch(Optional::isEmpty)) {
            throw new RefusedCorrectionException(
                    spans.get(0), "value", "nothing of the athlete would be left; reject the clip instead");
        }
        return with(landmarks, poses);
    }

    /** With left and right exchanged in every frame, for a clip in which the program took one for the other throughout. */
    static ClipLandmarks sidesExchanged(ClipLandmarks landmarks) {
        List<Optional<PoseTrack.FramePose>> poses = new ArrayList<>();
        for (int f = 0; f < landmarks.frameCount(); f++) {
            poses.add(landmarks.poses().at(f).map(CorrectedLandmarks::exchanged));
        }
        return with(landmarks, poses);
    }

    private static PoseTrack.FramePose exchanged(PoseTrack.FramePose pose) {
        float[] from = pose.toArray();
        float[] to = new float[from.length];
        for (int i = 0; i < BodyPoint.COUNT; i++) {
            int other = BodyPoint.at(i).otherSide().index();
            System.arraycopy(from, other * PoseTrack.NUMBERS, to, i * PoseTrack.NUMBERS, PoseTrack.NUMBERS);
        }
        return new PoseTrack.FramePose(pose.square(), to);
    }

    private static ClipLandmarks with(ClipLandmarks landmarks, List<Optional<PoseTrack.FramePose>> poses) {
        return new ClipLandmarks(
                landmarks.video(),
                landmarks.timestampsUs(),
                landmarks.undecodableFrames(),
                landmarks.background(),
                landmarks.subject(),
                new PoseTrack(poses));
    }
}
