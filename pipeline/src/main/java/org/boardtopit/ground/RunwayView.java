package org.boardtopit.ground;

import java.util.Optional;
import org.boardtopit.signal.Point2;

/**
 * From pixels of a frame to the upright plane of the run and back.
 *
 * <p>Plane coordinates: along = in the running direction, height = up. With a camera found from marks both are metres, along
 * counts from the take-off line, height from the ground, and each point may lie in a plane of its own beside the centre
 * line, so that perspective and the slant of a panned camera drop out. A camera that was found from the run itself ({@link
 * SelfCalibration}) does the same, but along counts from an arbitrary place and lengths are as good as its scale. Without
 * either the picture itself is taken for the plane: along and height are pixels of the fixed picture times a nominal scale,
 * from an arbitrary origin; angles are then those in the picture, and metres are only as good as the scale.
 */
public final class RunwayView {
    private final BackgroundMotion background;
    private final Optional<RunwayCamera> camera;
    private final boolean fromMarks;
    private final int direction;
    private final double flatMetresPerPixel;
    private final double flatStartM;

    private RunwayView(
            BackgroundMotion background,
            Optional<RunwayCamera> camera,
            boolean fromMarks,
            int direction,
            double flatMetresPerPixel,
            double flatStartM) {
        this.background = background;
        this.camera = camera;
        this.fromMarks = fromMarks;
        this.direction = direction;
        this.flatMetresPerPixel = flatMetresPerPixel;
        this.flatStartM = flatStartM;
    }

    /** A view in metres; the background must be matched to the picture on which the camera's marks were made. */
    public static RunwayView calibrated(BackgroundMotion background, RunwayCamera camera) {
        if (!background.referenceMatched()) {
            throw new IllegalArgumentException("a clip that does not match the reference picture has no metres");
        }
        Point2 start = camera.project(0, 0, 0);
        Point2 later = camera.project(1, 0, 0);
        return new RunwayView(
                background, Optional.of(camera), true, later.x() >= start.x() ? 1 : -1, Double.NaN, Double.NaN);
    }

    /** A view without marks through a camera that was found from the run; it stands on the side that it was found on. */
    public static RunwayView selfCalibrated(BackgroundMotion background, FoundCamera found) {
        int direction = found.camera().acrossM() < 0 ? 1 : -1;
        return new RunwayView(background, Optional.of(found.camera()), false, direction, Double.NaN, Double.NaN);
    }

    /**
     * A view without marks.
     *
     * @param direction +1 when the run goes to the right in the picture, -1 to the left
     * @param metresPerPixel nominal scale in the fixed picture
     */
    public static RunwayView flat(BackgroundMotion background, int direction, double metresPerPixel) {
        return flat(background, direction, metresPerPixel, 0);
    }

    /** The same with along counted so that the left edge of the fixed picture lies at {@code startM}. */
    public static RunwayView flat(BackgroundMotion background, int direction, double metresPerPixel, double startM) {
        if (!(metresPerPixel > 0)) {
            throw new IllegalArgumentException("metresPerPixel must be positive, was " + metresPerPixel);
        }
        return new RunwayView(background, Optional.empty(), false, direction, metresPerPixel, startM);
    }

    /** True when along and height are metres from the take-off line and the ground. */
    public boolean isCalibrated() {
        return fromMarks;
    }

    public Optional<RunwayCamera> camera() {
        return camera;
    }

    /** +1 when running to the pit goes to the right in the picture, -1 to the left. */
    public int direction() {
        return direction;
    }

    public BackgroundMotion background() {
        return background;
    }

    /**
     * Place of a pixel of a frame in the plane (along, height) that stands {@code acrossM} to the athlete's left of the
     * centre line.
     */
    public Point2 place(int frame, Point2 px, double acrossM) {
        if (!px.isKnown()) {
            return Point2.UNKNOWN;
        }
        Point2 fixed = background.toFixed(frame, px);
        return camera.map(c -> c.onUpright(fixed, acrossM))
                .orElseGet(() -> new Point2(
                        flatStartM + direction * fixed.x() * flatMetresPerPixel, -fixed.y() * flatMetresPerPixel));
    }

    /** Pixel of the fixed picture of a place in the plane. */
    public Point2 inFixedPicture(Point2 place, double acrossM) {
        return camera.map(c -> c.project(place.x(), acrossM, place.y()))
                .orElseGet(() -> new Point2(
                        direction * (place.x() - flatStartM) / flatMetresPerPixel, -place.y() / flatMetresPerPixel));
    }

    /** Pixel of a frame of a place in the plane. */
    public Point2 inFrame(int frame, Point2 place, double acrossM) {
        return background.fromFixed(frame).apply(inFixedPicture(place, acrossM));
    }

    /** Metres (or nominal metres) that one pixel of the frame covers there. */
    public double metresPerPixel(int frame, Point2 px) {
        Point2 a = place(frame, new Point2(px.x(), px.y() - 2), 0);
        Point2 b = place(frame, new Point2(px.x(), px.y() + 2), 0);
        return a.distanceTo(b) / 4;
    }

    /** True when the camera stands on the athlete's left; from the running direction when there are no marks. */
    public boolean seenFromLeft() {
        return camera.map(c -> c.acrossM() > 0).orElse(direction < 0);
    }
}
