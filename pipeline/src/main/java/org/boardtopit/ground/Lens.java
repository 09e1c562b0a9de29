package org.boardtopit.ground;

import org.boardtopit.signal.Point2;

/**
 * What a lens does to a picture: one radial coefficient about the picture's middle.
 *
 * <p>A pixel p is put where a lens that does not bend would have shown it by
 *
 * <pre>straight = m + (p - m) (1 + k1 r^2),   r = |p - m| / h</pre>
 *
 * with m the middle of the picture and h half its longer side. So k1 is the share by which a point at the middle of a short
 * edge has to be moved outwards: positive for a barrel, negative for a cushion. Method: the first term of the correction of
 * Brown (1966, Photogrammetric Engineering 32:444-462, from memory); h instead of the focal length because nobody knows the
 * focal length of a phone before the marks are fitted. Other terms, and a middle that is not the picture's, are left out:
 * they are smaller than what a volunteer can measure of the first.
 *
 * @param widthPx of the picture
 * @param heightPx of the picture
 * @param k1 above {@value #LEAST_K1}, from which on two pixels of one picture would belong to the same place
 */
public record Lens(int widthPx, int heightPx, double k1) {
    /** 1 + 3 k1 r^2 must stay positive up to the corners, which are at most sqrt(2) away. */
    static final double LEAST_K1 = -1.0 / 6;

    private static final int MOST_STEPS = 50;
    private static final double EXACT = 1e-12;

    public Lens {
        if (widthPx <= 0 || heightPx <= 0) {
            throw new IllegalArgumentException("a picture has a size, was " + widthPx + " x " + heightPx);
        }
        if (!(k1 > LEAST_K1) || !Double.isFinite(k1)) {
            throw new IllegalArgumentException("k1 must be above " + LEAST_K1 + ", was " + k1);
        }
    }

    /** One that bends nothing. */
    public static Lens ideal(int widthPx, int heightPx) {
        return new Lens(widthPx, heightPx, 0);
    }

    /** Middle of the picture. */
    Point2 middle() {
        return new Point2(widthPx / 2.0, heightPx / 2.0);
    }

    /** Where a lens that does not bend would have shown what is at a pixel. */
    public Point2 straightened(Point2 px) {
        if (k1 == 0 || !px.isKnown()) {
            return px;
        }
        double r = px.distanceTo(middle()) / unitPx();
        return stretched(px, 1 + k1 * r * r);
    }

    /** The pixel that {@link #straightened} puts there; unknown where a cushion shows nothing, far outside the picture. */
    public Point2 bent(Point2 straight) {
        if (k1 == 0 || !straight.isKnown()) {
            return straight;
        }
        double wanted = straight.distanceTo(middle()) / unitPx();
        if (k1 < 0 && wanted >= 2.0 / 3 / Math.sqrt(-3 * k1)) {
            return Point2.UNKNOWN;
        }
        double r = radius(wanted);
        return wanted == 0 ? straight : stretched(straight, r / wanted);
    }

    /** Newton's method on r (1 + k1 r^2) = wanted, which from this start nears the solution from one side. */
    private double radius(double wanted) {
        double r = wanted;
        for (int i = 0; i < MOST_STEPS; i++) {
            double step = (r * (1 + k1 * r * r) - wanted) / (1 + 3 * k1 * r * r);
            r -= step;
            if (Math.abs(step) < EXACT * wanted) {
                break;
            }
        }
        return r;
    }

    private Point2 stretched(Point2 px, double by) {
        Point2 m = middle();
        return new Point2(m.x() + by * (px.x() - m.x()), m.y() + by * (px.y() - m.y()));
    }

    private double unitPx() {
        return Math.max(widthPx, heightPx) / 2.0;
    }
}
