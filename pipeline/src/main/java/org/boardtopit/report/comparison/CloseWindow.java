package org.boardtopit.report.comparison;

import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/**
 * Which part of a frame is shown enlarged, and where: a view that goes with the athlete.
 *
 * @param centre frame px that comes to lie in the middle of the view
 * @param zoom px of the view per px of the frame, above 0
 * @param mirrored true when left and right are exchanged
 * @param middle px of the whole picture in the middle of the view
 */
public record CloseWindow(Point2 centre, double zoom, boolean mirrored, Point2 middle) {

    public CloseWindow {
        if (!centre.isKnown() || !(zoom > 0) || !Double.isFinite(zoom)) {
            throw new IllegalArgumentException("a view needs a centre and a zoom, was " + centre + ", " + zoom);
        }
    }

    /** From frame px to px of the whole picture. */
    public Homography toPicture() {
        double side = mirrored ? -zoom : zoom;
        return new Homography(
                side, 0, middle.x() - side * centre.x(), 0, zoom, middle.y() - zoom * centre.y(), 0, 0, 1);
    }

    /** The same view elsewhere in the picture, moved over the frame by some px of it. */
    CloseWindow over(Point2 movedPx, Point2 otherMiddle) {
        return new CloseWindow(centre.plus(movedPx), zoom, mirrored, otherMiddle);
    }

    /** From frame px to px of the whole picture; unknown stays unknown. */
    public Point2 place(Point2 px) {
        double side = mirrored ? -zoom : zoom;
        return new Point2(middle.x() + side * (px.x() - centre.x()), middle.y() + zoom * (px.y() - centre.y()));
    }
}
