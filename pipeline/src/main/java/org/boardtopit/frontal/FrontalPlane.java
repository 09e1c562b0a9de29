package org.boardtopit.frontal;

import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.signal.Point2;

/**
 * From pixels of a frame to the plane across the runway: (across, height), across positive to the athlete's left, height
 * upwards.
 *
 * <p>With a camera from marks both are metres, from the middle of the runway and from the ground. Without one the picture is
 * taken for the plane and its edges for level: units are pixels of the fixed picture, from its corner, and only directions
 * mean something. From in front the athlete's left is on the picture's right, from behind on its left.
 */
final class FrontalPlane {
    private final BackgroundMotion background;
    private final Optional<RunwayCamera> camera;
    private final int leftInPicture;

    FrontalPlane(BackgroundMotion background, Optional<RunwayCamera> camera, Camera.View view) {
        if (view == Camera.View.SIDE) {
            throw new IllegalArgumentException("a camera at the side does not see the plane across the runway");
        }
        this.background = background;
        this.camera = camera;
        this.leftInPicture = view == Camera.View.FRONT ? 1 : -1;
    }

    boolean isMetric() {
        return camera.isPresent();
    }

    /** A pixel on the plane at a place along the runway; where there is no camera from marks, the place does not matter. */
    Point2 place(int frame, Point2 px, double alongM) {
        if (!px.isKnown()) {
            return Point2.UNKNOWN;
        }
        Point2 fixed = background.toFixed(frame, px);
        return camera.map(c -> c.onAcross(fixed, alongM))
                .orElseGet(() -> new Point2(leftInPicture * fixed.x(), -fixed.y()));
    }

    /** A place along the runway from which a body of this height looks as tall as it does; any, without marks. */
    double alongOfSize(double staturePx, double statureM) {
        return camera.map(c -> c.alongM() + Math.signum(-c.alongM()) * c.focalPx() * statureM / staturePx)
                .orElse(0.0);
    }
}
