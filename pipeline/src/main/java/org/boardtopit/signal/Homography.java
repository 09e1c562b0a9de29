package org.boardtopit.signal;

/**
 * A projective map of one plane onto another: {@code (u, v, w) = H (x, y, 1)}, the image is {@code (u/w, v/w)}.
 *
 * <p>The nine numbers are H row by row; any common factor gives the same map.
 */
public record Homography(
        double h00, double h01, double h02, double h10, double h11, double h12, double h20, double h21, double h22) {

    public static final Homography IDENTITY = new Homography(1, 0, 0, 0, 1, 0, 0, 0, 1);

    public Homography {
        double sum = h00 + h01 + h02 + h10 + h11 + h12 + h20 + h21 + h22;
        if (!Double.isFinite(sum)) {
            throw new IllegalArgumentException("a homography needs nine finite numbers");
        }
    }

    /** From nine numbers, row by row. */
    public static Homography of(double... rows) {
        if (rows.length != 9) {
            throw new IllegalArgumentException("a homography has nine numbers, was " + rows.length);
        }
        return new Homography(rows[0], rows[1], rows[2], rows[3], rows[4], rows[5], rows[6], rows[7], rows[8]);
    }

    /**
     * The map of the unit square onto a quadrangle: (0, 0), (1, 0), (1, 1), (0, 1) onto a, b, c, d.
     *
     * <p>In closed form (Heckbert, Fundamentals of Texture Mapping and Image Warping, 1989, section 2.2.3). Throws
     * IllegalArgumentException when the corners lie on one line or one of them is unknown.
     */
    public static Homography ofUnitSquare(Point2 a, Point2 b, Point2 c, Point2 d) {
        double dx1 = b.x() - c.x();
        double dx2 = d.x() - c.x();
        double dx3 = a.x() - b.x() + c.x() - d.x();
        double dy1 = b.y() - c.y();
        double dy2 = d.y() - c.y();
        double dy3 = a.y() - b.y() + c.y() - d.y();
        double det = dx1 * dy2 - dx2 * dy1;
        if (!(Math.abs(det) > 1e-12 * (Math.abs(dx1 * dy2) + Math.abs(dx2 * dy1)))) {
            throw new IllegalArgumentException("no square maps onto " + a + ", " + b + ", " + c + ", " + d);
        }
        double g = (dx3 * dy2 - dx2 * dy3) / det;
        double h = (dx1 * dy3 - dx3 * dy1) / det;
        return new Homography(
                b.x() - a.x() + g * b.x(),
                d.x() - a.x() + h * d.x(),
                a.x(),
                b.y() - a.y() + g * b.y(),
                d.y() - a.y() + h * d.y(),
                a.y(),
                g,
                h,
                1);
    }

    public double[] toArray() {
        return new double[] {h00, h01, h02, h10, h11, h12, h20, h21, h22};
    }

    /**
     * Image of a point; unknown when the point lies on the horizon of the map. Which side of the horizon is the visible one
     * cannot be told from the nine numbers: whoever made the map knows.
     */
    public Point2 apply(double x, double y) {
        double w = h20 * x + h21 * y + h22;
        double size = Math.abs(h20 * x) + Math.abs(h21 * y) + Math.abs(h22);
        if (Math.abs(w) <= 1e-12 * size) {
            return Point2.UNKNOWN;
        }
        return new Point2((h00 * x + h01 * y + h02) / w, (h10 * x + h11 * y + h12) / w);
    }

    public Point2 apply(Point2 p) {
        return apply(p.x(), p.y());
    }

    /** The map that applies {@code first} and then this one. */
    public Homography after(Homography first) {
        double[] a = toArray();
        double[] b = first.toArray();
        double[] c = new double[9];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                c[3 * i + j] = a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j];
            }
        }
        return of(c).normalised();
    }

    /** The map back. Throws IllegalArgumentException when this one squeezes the plane into a line. */
    public Homography inverse() {
        double c00 = h11 * h22 - h12 * h21;
        double c01 = h12 * h20 - h10 * h22;
        double c02 = h10 * h21 - h11 * h20;
        double det = h00 * c00 + h01 * c01 + h02 * c02;
        double size = Math.abs(h00 * c00) + Math.abs(h01 * c01) + Math.abs(h02 * c02);
        // Against its own terms, so that a common factor of the nine numbers does not matter.
        if (!(Math.abs(det) > 1e-13 * size)) {
            throw new IllegalArgumentException("the homography has no inverse, its determinant is " + det);
        }
        return new Homography(
                        c00,
                        h02 * h21 - h01 * h22,
                        h01 * h12 - h02 * h11,
                        c01,
                        h00 * h22 - h02 * h20,
                        h02 * h10 - h00 * h12,
                        c02,
                        h01 * h20 - h00 * h21,
                        h00 * h11 - h01 * h10)
                .normalised();
    }

    private Homography normalised() {
        double s = Math.abs(h22) > 1e-12 ? h22 : Math.sqrt(h20 * h20 + h21 * h21 + h22 * h22);
        return new Homography(h00 / s, h01 / s, h02 / s, h10 / s, h11 / s, h12 / s, h20 / s, h21 / s, h22 / s);
    }
}
