package org.boardtopit.ground;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/**
 * How every frame of a clip lies in one fixed picture: a homography per frame, because a camera that only turns and zooms
 * about its tripod changes the picture by exactly a homography (Hartley and Zisserman, 2nd ed., section 8.4, from memory).
 *
 * <p>The fixed picture is the camera's reference picture when the clip could be matched to it, else the middle key frame of
 * the clip itself.
 */
public final class BackgroundMotion {

    /**
     * One frame.
     *
     * @param toFixed pixels of the frame to pixels of the fixed picture
     * @param registered false when too little background was recognised; {@code toFixed} then repeats the last known one
     * @param inliers background points that agree with it
     * @param residualPx median distance of these points, in pixels of the frame
     */
    public record FrameRegistration(Homography toFixed, boolean registered, int inliers, double residualPx) {}

    private final List<FrameRegistration> frames;
    private final List<Homography> fromFixed;
    private final boolean referenceMatched;
    private final RegistrationFacts facts;

    public BackgroundMotion(List<FrameRegistration> frames, boolean referenceMatched, RegistrationFacts facts) {
        this.frames = List.copyOf(frames);
        this.referenceMatched = referenceMatched;
        this.facts = facts;
        this.fromFixed = new ArrayList<>(frames.size());
        for (FrameRegistration frame : frames) {
            fromFixed.add(frame.toFixed().inverse());
        }
    }

    public int frameCount() {
        return frames.size();
    }

    public FrameRegistration frame(int index) {
        return frames.get(index);
    }

    public Point2 toFixed(int frame, Point2 px) {
        return frames.get(frame).toFixed().apply(px);
    }

    public Homography fromFixed(int frame) {
        return fromFixed.get(frame);
    }

    /** True when the fixed picture is the camera's reference picture, on which the marks were made. */
    public boolean referenceMatched() {
        return referenceMatched;
    }

    /** True when the camera was panned, zoomed or knocked. */
    public boolean cameraMoves() {
        return facts.model() != CameraModel.STILL;
    }

    /** How well it all fits together. */
    public RegistrationFacts facts() {
        return facts;
    }

    /** Share of frames that are registered, 0 to 1. */
    public double registeredShare() {
        return frames.isEmpty()
                ? 0
                : frames.stream().filter(FrameRegistration::registered).count() / (double) frames.size();
    }
}
