package org.boardtopit.signal;

/** A point or a vector in a plane; the record that holds it says which plane and which unit. */
public record Point2(double x, double y) {

    public Point2 minus(Point2 other) {
        return new Point2(x - other.x, y - other.y);
    }

    public Point2 plus(Point2 other) {
        return new Point2(x + other.x, y + other.y);
    }

    public Point2 times(double factor) {
        return new Point2(x * factor, y * factor);
    }

    public double length() {
        return Math.hypot(x, y);
    }

    public double distanceTo(Point2 other) {
        return Math.hypot(x - other.x, y - other.y);
    }

    /** False when a coordinate is unknown (NaN) or has left the plane (infinite). */
    public boolean isKnown() {
        return Double.isFinite(x) && Double.isFinite(y);
    }

    public static final Point2 UNKNOWN = new Point2(Double.NaN, Double.NaN);
}
