package org.boardtopit.ground;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;

/**
 * Pictures from one place: directions and focal lengths that explain the same points in several pictures of a camera that
 * only turned and zoomed in between.
 *
 * <p>Method: a point p of picture i is seen in picture j at K_j R_j R_i' K_i^-1 p, with K = diag(f, f, 1) about the middle of
 * the picture (Hartley and Zisserman, Multiple View Geometry, 2nd ed., section 8.4, from memory). All R and log f are found
 * together by Levenberg-Marquardt with the derivatives written out; each pair of points counts by Cauchy's function of its
 * distance over the tie's own noise, so that a wrong pair pulls little. Four unknowns a picture instead of the eight of a free
 * homography: where few points lie, the others hold it. The focal length of the first picture that is free to take one is
 * held near 1.2 widths by a weak prior (a factor of 1.6 for one sd): pictures that hardly turn do not tell it.
 *
 * <p>Assumes square pixels, a principal point in the middle and no lens distortion. When the camera was carried, residuals
 * grow against those of free homographies: compare {@link #residualPx}. Use from one thread.
 */
public final class TurningViews {
    private static final double PRIOR_FOCAL_WIDTHS = 1.2;
    private static final double PRIOR_LOG_SD = 0.47;
    private static final double[] START_FOCAL_WIDTHS = {0.7, 1.2, 1.9, 3.0};
    /** Cauchy's constant for 95 % efficiency with normal noise (Holland and Welsch 1977, from memory). */
    private static final double CAUCHY = 2.385;

    private static final int MAX_STEPS = 60;
    private static final double RELATIVE_GAIN = 1e-9;
    private static final int UNKNOWNS_PER_VIEW = 4;

    private final List<View> views = new ArrayList<>();
    private final List<Tie> ties = new ArrayList<>();
    private int prior = -1;
    private DMatrixRMaj lastNormal;

    /** One picture; what is held keeps its start. */
    private static final class View {
        final double widthPx;
        final double cx;
        final double cy;
        double logFocal;
        double[] rotation = Rotations.fromVector(0, 0, 0);
        int rotationAt = -1; // its three unknowns begin here
        int focalAt = -1;

        View(double widthPx, double heightPx, double focalPx) {
            this.widthPx = widthPx;
            this.cx = widthPx / 2;
            this.cy = heightPx / 2;
            this.logFocal = Math.log(focalPx);
        }

        View at(double newLogFocal, double[] newRotation) {
            View moved = new View(widthPx, 2 * cy, 1);
            moved.logFocal = newLogFocal;
            moved.rotation = newRotation;
            moved.rotationAt = rotationAt;
            moved.focalAt = focalAt;
            return moved;
        }

        double focal() {
            return Math.exp(logFocal);
        }
    }

    private record Tie(int from, int to, PointPairs pairs, double sdPx, Homography start) {}

    /** Adds a picture; gives its number. */
    public int add(double widthPx, double heightPx) {
        return addKnown(widthPx, heightPx, PRIOR_FOCAL_WIDTHS * widthPx);
    }

    /** Adds a picture whose focal length is known, or is a good start when it is not held. */
    public int addKnown(double widthPx, double heightPx, double focalPx) {
        views.add(new View(widthPx, heightPx, focalPx));
        return views.size() - 1;
    }

    /**
     * Says that points of one picture were found in another.
     *
     * @param start a map between the two that is about right
     * @param sdPx noise of a pair along one axis, in pixels of the second picture
     * @return number of the tie
     */
    public int tie(int from, int to, PointPairs pairs, Homography start, double sdPx) {
        ties.add(new Tie(from, to, pairs, sdPx, start));
        return ties.size() - 1;
    }

    /**
     * Finds all directions and focal lengths; every picture must hang together with the held one by ties.
     *
     * @param held its direction is the one from which the others are counted; its focal length is found
     */
    public void solve(int held) {
        List<View> best = null;
        double bestCost = Double.POSITIVE_INFINITY;
        number(held, false);
        prior = held;
        for (double widths : START_FOCAL_WIDTHS) {
            start(held, widths * views.get(held).widthPx);
            double cost = minimise();
            if (cost < bestCost) {
                bestCost = cost;
                best = new ArrayList<>(views);
            }
        }
        if (best != null) {
            views.clear();
            views.addAll(best);
            minimise(); // leaves the normal matrix of the best start
        }
    }

    /** Finds direction and focal length of the others, the held picture being known. */
    public void solveAround(int held) {
        number(held, true);
        prior = -1;
        start(held, views.get(held).focal());
        minimise();
    }

    private void number(int held, boolean focalKnown) {
        int next = 0;
        for (int i = 0; i < views.size(); i++) {
            View v = views.get(i);
            v.rotationAt = i == held ? -1 : next;
            next += i == held ? 0 : 3;
            v.focalAt = i == held && focalKnown ? -1 : next;
            next += v.focalAt < 0 ? 0 : 1;
        }
    }

    /** Walks the ties from the held picture outwards; a tie's own map gives the turn and the ratio of the focal lengths. */
    private void start(int held, double focalPx) {
        boolean[] placed = new boolean[views.size()];
        place(held, Math.log(focalPx), Rotations.fromVector(0, 0, 0), placed);
        boolean grown = true;
        while (grown) {
            grown = false;
            for (Tie tie : ties) {
                if (placed[tie.from] != placed[tie.to]) {
                    boolean forwards = placed[tie.from];
                    int known = forwards ? tie.from : tie.to;
                    int other = forwards ? tie.to : tie.from;
                    follow(known, other, forwards ? tie.start : tie.start.inverse(), placed);
                    grown = true;
                }
            }
        }
        for (boolean p : placed) {
            if (!p) {
                throw new IllegalArgumentException("a picture hangs on no other");
            }
        }
    }

    private void place(int view, double logFocal, double[] rotation, boolean[] placed) {
        views.set(view, views.get(view).at(logFocal, rotation));
        placed[view] = true;
    }

    private void follow(int known, int other, Homography map, boolean[] placed) {
        View a = views.get(known);
        View b = views.get(other);
        Point2 o = map.apply(a.cx, a.cy);
        Point2 x = map.apply(a.cx + 1, a.cy);
        Point2 y = map.apply(a.cx, a.cy + 1);
        double area = (x.x() - o.x()) * (y.y() - o.y()) - (x.y() - o.y()) * (y.x() - o.x());
        double ratio = area > 1e-4 && area < 1e4 ? Math.sqrt(area) : 1; // a wild map must not spoil the start
        double logFocal = a.logFocal + Math.log(ratio);
        View turned = b.at(logFocal, b.rotation);
        Homography rays = pixelsToRays(turned).after(map.after(raysToPixels(a)));
        place(other, logFocal, times(Rotations.nearest(rays.toArray()), a.rotation), placed);
    }

    private double minimise() {
        int n = unknowns();
        DMatrixRMaj normal = new DMatrixRMaj(n, n);
        DMatrixRMaj gradient = new DMatrixRMaj(n, 1);
        double cost = linearise(normal, gradient);
        double damping = 1e-4;
        for (int step = 0; step < MAX_STEPS; step++) {
            List<View> before = new ArrayList<>(views);
            double previous = cost;
            boolean improved = false;
            for (int tries = 0; tries < 10 && !improved; tries++) {
                improved = moved(before, normal, gradient, damping) && cost() < cost;
                damping *= improved ? 0.2 : 5;
            }
            if (!improved) {
                views.clear();
                views.addAll(before);
                break;
            }
            cost = linearise(normal, gradient);
            if (previous - cost < RELATIVE_GAIN * (previous + 1e-12)) {
                break;
            }
        }
        lastNormal = normal;
        return cost;
    }

    private int unknowns() {
        int n = 0;
        for (View v : views) {
            n += (v.rotationAt < 0 ? 0 : 3) + (v.focalAt < 0 ? 0 : 1);
        }
        return n;
    }

    private boolean moved(List<View> before, DMatrixRMaj normal, DMatrixRMaj gradient, double damping) {
        DMatrixRMaj damped = normal.copy();
        for (int i = 0; i < damped.numRows; i++) {
            damped.set(i, i, normal.get(i, i) * (1 + damping) + 1e-12);
        }
        DMatrixRMaj step = new DMatrixRMaj(damped.numRows, 1);
        if (!CommonOps_DDRM.solve(damped, gradient, step)) {
            return false;
        }
        for (int i = 0; i < views.size(); i++) {
            View v = before.get(i);
            double logFocal = v.logFocal - (v.focalAt < 0 ? 0 : step.get(v.focalAt, 0));
            double[] rotation = v.rotation;
            if (v.rotationAt >= 0) {
                int r = v.rotationAt;
                double[] turn = Rotations.fromVector(-step.get(r, 0), -step.get(r + 1, 0), -step.get(r + 2, 0));
                rotation = times(turn, rotation);
            }
            if (!Double.isFinite(logFocal) || Math.abs(logFocal - v.logFocal) > 1) {
                return false;
            }
            views.set(i, v.at(logFocal, rotation));
        }
        return true;
    }

    private double cost() {
        return linearise(null, null);
    }

    /** Cost, and where asked for the normal matrix and the gradient of half the cost, weighted as robust fits are. */
    private double linearise(DMatrixRMaj normal, DMatrixRMaj gradient) {
        double cost = 0;
        if (normal != null) {
            normal.zero();
            gradient.zero();
        }
        for (Tie tie : ties) {
            cost += new Pairwise(views.get(tie.from), views.get(tie.to)).add(tie, normal, gradient);
        }
        if (prior >= 0 && views.get(prior).focalAt >= 0) {
            View v = views.get(prior);
            double r = (v.logFocal - Math.log(PRIOR_FOCAL_WIDTHS * v.widthPx)) / PRIOR_LOG_SD;
            cost += r * r;
            if (normal != null) {
                normal.add(v.focalAt, v.focalAt, 1 / (PRIOR_LOG_SD * PRIOR_LOG_SD));
                gradient.add(v.focalAt, 0, r / PRIOR_LOG_SD);
            }
        }
        return cost;
    }

    /** Residuals and derivatives of the ties between two views. */
    private static final class Pairwise {
        private final View a;
        private final View b;
        private final double fa;
        private final double fb;
        private final double[] turn; // R_b R_a'
        private final int[] at = new int[2 * UNKNOWNS_PER_VIEW];
        private final double[][] row = new double[2][2 * UNKNOWNS_PER_VIEW];

        Pairwise(View a, View b) {
            this.a = a;
            this.b = b;
            this.fa = a.focal();
            this.fb = b.focal();
            this.turn = times(b.rotation, transposed(a.rotation));
            for (int k = 0; k < 3; k++) {
                at[k] = a.rotationAt < 0 ? -1 : a.rotationAt + k;
                at[4 + k] = b.rotationAt < 0 ? -1 : b.rotationAt + k;
            }
            at[3] = a.focalAt;
            at[7] = b.focalAt;
        }

        double add(Tie tie, DMatrixRMaj normal, DMatrixRMaj gradient) {
            double cost = 0;
            double c = CAUCHY * tie.sdPx;
            for (int i = 0; i < tie.pairs.count(); i++) {
                Point2 p = tie.pairs.from(i);
                Point2 q = tie.pairs.to(i);
                double rx = (p.x() - a.cx) / fa;
                double ry = (p.y() - a.cy) / fa;
                double[] d = rotated(turn, rx, ry, 1);
                double z = Math.max(d[2], 0.01); // behind the picture: a large residual, not a division by zero
                double ex = fb * d[0] / z + b.cx - q.x();
                double ey = fb * d[1] / z + b.cy - q.y();
                double square = (ex * ex + ey * ey) / (c * c);
                cost += CAUCHY * CAUCHY * Math.log1p(square);
                if (normal != null) {
                    derive(rx, ry, d, z);
                    accumulate(ex, ey, 1 / ((1 + square) * tie.sdPx * tie.sdPx), normal, gradient);
                }
            }
            return cost;
        }

        private void derive(double rx, double ry, double[] d, double z) {
            double[][] byUnknown = {
                rotated(turn, 0, 1, -ry), // ray x axis 1: the columns of [ray]x
                rotated(turn, -1, 0, rx),
                rotated(turn, ry, -rx, 0),
                rotated(turn, -rx, -ry, 0),
                {0, -d[2], d[1]}, // axis 1 x d: the columns of -[d]x
                {d[2], 0, -d[0]},
                {-d[1], d[0], 0},
                {0, 0, 0}
            };
            for (int k = 0; k < byUnknown.length; k++) {
                double[] v = byUnknown[k];
                row[0][k] = fb * (v[0] - d[0] / z * v[2]) / z;
                row[1][k] = fb * (v[1] - d[1] / z * v[2]) / z;
            }
            row[0][7] = fb * d[0] / z;
            row[1][7] = fb * d[1] / z;
        }

        private void accumulate(double ex, double ey, double weight, DMatrixRMaj normal, DMatrixRMaj gradient) {
            for (int k = 0; k < at.length; k++) {
                if (at[k] >= 0) {
                    gradient.add(at[k], 0, weight * (row[0][k] * ex + row[1][k] * ey));
                    for (int l = 0; l < at.length; l++) {
                        if (at[l] >= 0) {
                            normal.add(at[k], at[l], weight * (row[0][k] * row[0][l] + row[1][k] * row[1][l]));
                        }
                    }
                }
            }
        }
    }

    /** Pixels of one picture to those of another. */
    public Homography map(int from, int to) {
        View a = views.get(from);
        View b = views.get(to);
        Homography turn = Homography.of(times(b.rotation, transposed(a.rotation)));
        return raysToPixels(b).after(turn.after(pixelsToRays(a)));
    }

    public double focalPx(int view) {
        return views.get(view).focal();
    }

    /** Standard deviation of log focal length that the noise of the ties implies; NaN when it was held. */
    public double logFocalSd(int view) {
        int at = views.get(view).focalAt;
        if (at < 0 || lastNormal == null) {
            return Double.NaN;
        }
        DMatrixRMaj inverse = new DMatrixRMaj(lastNormal.numRows, lastNormal.numCols);
        return CommonOps_DDRM.invert(lastNormal, inverse) ? Math.sqrt(Math.max(0, inverse.get(at, at))) : Double.NaN;
    }

    /** Median distance of a tie's points from where the views put them, in pixels of its second picture. */
    public double residualPx(int tie) {
        Tie t = ties.get(tie);
        return t.pairs.medianDistancePx(map(t.from, t.to));
    }

    private static Homography pixelsToRays(View v) {
        double f = v.focal();
        return new Homography(1 / f, 0, -v.cx / f, 0, 1 / f, -v.cy / f, 0, 0, 1);
    }

    private static Homography raysToPixels(View v) {
        double f = v.focal();
        return new Homography(f, 0, v.cx, 0, f, v.cy, 0, 0, 1);
    }

    private static double[] rotated(double[] r, double x, double y, double z) {
        return new double[] {
            r[0] * x + r[1] * y + r[2] * z, r[3] * x + r[4] * y + r[5] * z, r[6] * x + r[7] * y + r[8] * z
        };
    }

    private static double[] transposed(double[] r) {
        return new double[] {r[0], r[3], r[6], r[1], r[4], r[7], r[2], r[5], r[8]};
    }

    private static double[] times(double[] a, double[] b) {
        double[] c = new double[9];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                c[3 * i + j] = a[3 * i] * b[j] + a[3 * i + 1] * b[3 + j] + a[3 * i + 2] * b[6 + j];
            }
        }
        return c;
    }
}
