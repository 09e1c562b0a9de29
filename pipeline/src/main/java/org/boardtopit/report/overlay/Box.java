package org.boardtopit.report.overlay;

import java.util.List;
import org.boardtopit.signal.Point2;

/** An upright rectangle in frame px: left and top inclusive, right and bottom exclusive. */
public record Box(double left, double top, double right, double bottom) {

    public Box {
        if (!(right >= left) || !(bottom >= top)) {
            throw new IllegalArgumentException("a box needs right >= left and bottom >= top, was " + left + ".." + right
                    + ", " + top + ".." + bottom);
        }
    }

    /** A box by its top-left corner and its size. */
    public static Box at(double left, double top, double width, double height) {
        return new Box(left, top, left + width, top + height);
    }

    /** A box by its centre and its size. */
    public static Box centredOn(double x, double y, double width, double height) {
        return at(x - width / 2, y - height / 2, width, height);
    }

    /** The smallest box around at least one known point. */
    public static Box around(List<Point2> points) {
        double left = Double.POSITIVE_INFINITY;
        double top = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (Point2 p : points) {
            left = Math.min(left, p.x());
            top = Math.min(top, p.y());
            right = Math.max(right, p.x());
            bottom = Math.max(bottom, p.y());
        }
        return new Box(left, top, right, bottom);
    }

    public double width() {
        return right - left;
    }

    public double height() {
        return bottom - top;
    }

    public double centreX() {
        return (left + right) / 2;
    }

    public double centreY() {
        return (top + bottom) / 2;
    }

    /** True when the two share some area; touching edges do not count. */
    public boolean overlaps(Box other) {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    public boolean contains(Box other) {
        return left <= other.left && top <= other.top && right >= other.right && bottom >= other.bottom;
    }

    public boolean contains(Point2 p) {
        return p.x() >= left && p.x() < right && p.y() >= top && p.y() < bottom;
    }

    /** Larger by the margin on all four sides. */
    public Box grown(double margin) {
        return new Box(left - margin, top - margin, right + margin, bottom + margin);
    }

    /** The smallest box around both. */
    public Box joined(Box other) {
        return new Box(
                Math.min(left, other.left),
                Math.min(top, other.top),
                Math.max(right, other.right),
                Math.max(bottom, other.bottom));
    }
}
