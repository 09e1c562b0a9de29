package org.boardtopit.synthetic;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.BackgroundMotion.FrameRegistration;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.PoseTrack;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.VideoInfo;

/** The same clip filmed later, in a mirror, or with more pixels. */
public final class Variants {
    private Variants() {}

    /** Changes the numbers of a frame's points in place; see {@link PoseTrack} for their order. */
    public interface Edit {
        void change(int frame, float[] numbers);
    }

    /** The same clip as another network would read it. */
    public static ClipLandmarks edited(ClipLandmarks clip, Edit edit) {
        List<Optional<FramePose>> poses = new ArrayList<>();
        for (int f = 0; f < clip.frameCount(); f++) {
            int frame = f;
            poses.add(clip.poses().at(f).map(p -> {
                float[] numbers = p.toArray();
                edit.change(frame, numbers);
                return new FramePose(p.square(), numbers);
            }));
        }
        return new ClipLandmarks(
                clip.video(),
                clip.timestampsUs(),
                clip.undecodableFrames(),
                clip.background(),
                clip.subject(),
                new PoseTrack(poses));
    }

    /** Every frame shown later. */
    public static ClipLandmarks delayed(ClipLandmarks clip, long byUs) {
        return new ClipLandmarks(
                clip.video(),
                clip.timestampsUs().stream().map(t -> t + byUs).toList(),
                clip.undecodableFrames(),
                clip.background(),
                clip.subject(),
                clip.poses());
    }

    /** The picture in a mirror: who runs to the right runs to the left, and the left leg looks like a right one. */
    public static ClipLandmarks mirrored(ClipLandmarks clip) {
        double width = clip.video().widthPx();
        Homography flip = new Homography(-1, 0, width, 0, 1, 0, 0, 0, 1);
        return changed(clip, flip, 1, true);
    }

    /** A picture with more pixels of the same scene. */
    public static ClipLandmarks enlarged(ClipLandmarks clip, double factor) {
        return changed(clip, new Homography(factor, 0, 0, 0, factor, 0, 0, 0, 1), factor, false);
    }

    private static ClipLandmarks changed(ClipLandmarks clip, Homography map, double factor, boolean mirrored) {
        VideoInfo v = clip.video();
        List<FrameRegistration> registrations = new ArrayList<>();
        List<Optional<FramePose>> poses = new ArrayList<>();
        List<Optional<Square>> squares = new ArrayList<>();
        for (int f = 0; f < clip.frameCount(); f++) {
            FrameRegistration r = clip.background().frame(f);
            registrations.add(new FrameRegistration(
                    map.after(r.toFixed().after(map.inverse())), r.registered(), r.inliers(), factor * r.residualPx()));
            UnaryOperator<FramePose> change = p -> pose(p, map, factor, mirrored);
            poses.add(clip.poses().at(f).map(change));
            squares.add(clip.subject().at(f).map(s -> square(s, map, factor)));
        }
        return new ClipLandmarks(
                new VideoInfo(
                        (int) Math.round(factor * v.widthPx()),
                        (int) Math.round(factor * v.heightPx()),
                        v.nominalFps(),
                        v.durationUs(),
                        v.estimatedFrames(),
                        false,
                        0,
                        v.codec()),
                clip.timestampsUs(),
                clip.undecodableFrames(),
                new BackgroundMotion(
                        registrations,
                        clip.background().referenceMatched(),
                        clip.background().facts()),
                new SubjectTrack(squares, (mirrored ? -1 : 1) * clip.subject().direction()),
                new PoseTrack(poses));
    }

    private static Square square(Square s, Homography map, double factor) {
        Point2 centre = map.apply(s.centreXPx(), s.centreYPx());
        return new Square(centre.x(), centre.y(), factor * s.sidePx());
    }

    private static FramePose pose(FramePose pose, Homography map, double factor, boolean mirrored) {
        float[] numbers = pose.toArray();
        float[] out = numbers.clone();
        for (int i = 0; i < BodyPoint.COUNT; i++) {
            int to = mirrored ? BodyPoint.at(i).otherSide().index() : i;
            for (int k = 0; k < PoseTrack.NUMBERS; k += 4) {
                int a = i * PoseTrack.NUMBERS + k;
                int b = to * PoseTrack.NUMBERS + k;
                Point2 p = map.apply(numbers[a], numbers[a + 1]);
                out[b] = numbers[a + 3] > 0 ? (float) p.x() : Float.NaN;
                out[b + 1] = numbers[a + 3] > 0 ? (float) p.y() : Float.NaN;
                out[b + 2] = (float) (factor * numbers[a + 2]);
                out[b + 3] = numbers[a + 3];
            }
        }
        return new FramePose(square(pose.square(), map, factor), out);
    }
}
