package org.boardtopit.ground;

import java.util.List;
import org.boardtopit.clips.Mark;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.SingularValueDecomposition_F64;

/**
 * A starting point for {@link RunwayCamera}: the plane homography of the marks (normalised direct linear transform) taken
 * apart for a given focal length.
 */
final class PlaneStart {
    private PlaneStart() {}

    /** (log focal, rotation vector, translation), or null when the marks do not span the plane. */
    static double[] of(List<Mark> marks, double sign, double focalPx, double cx, double cy) {
        Homography h = planeToPicture(marks, sign);
        if (h == null) {
            return null;
        }
        double[] a = h.toArray();
        double[][] col = new double[3][3];
        for (int j = 0; j < 3; j++) {
            col[j][0] = (a[j] - cx * a[6 + j]) / focalPx;
            col[j][1] = (a[3 + j] - cy * a[6 + j]) / focalPx;
            col[j][2] = a[6 + j];
        }
        double scale = 2 / (norm(col[0]) + norm(col[1]));
        if (!Double.isFinite(scale)) {
            return null;
        }
        double depthAtMarks = 0;
        for (Mark m : marks) {
            depthAtMarks += a[6] * m.alongM() + a[7] * sign * m.acrossM() + a[8];
        }
        scale *= depthAtMarks < 0 ? -1 : 1; // the marks must lie in front of the camera
        double[] r1 = times(col[0], 1 / norm(col[0]) * Math.signum(scale));
        double[] r2 = times(col[1], Math.signum(scale));
        double dot = r1[0] * r2[0] + r1[1] * r2[1] + r1[2] * r2[2];
        r2 = new double[] {r2[0] - dot * r1[0], r2[1] - dot * r1[1], r2[2] - dot * r1[2]};
        r2 = times(r2, 1 / norm(r2));
        double[] r3 = {r1[1] * r2[2] - r1[2] * r2[1], r1[2] * r2[0] - r1[0] * r2[2], r1[0] * r2[1] - r1[1] * r2[0]};
        double[] v = Rotations.toVector(new double[] {r1[0], r2[0], r3[0], r1[1], r2[1], r3[1], r1[2], r2[2], r3[2]});
        double along = 1 / norm(col[0]) * Math.signum(scale);
        double[] t = times(col[2], along);
        double[] start = {Math.log(focalPx), v[0], v[1], v[2], t[0], t[1], t[2]};
        for (double p : start) {
            if (!Double.isFinite(p)) {
                return null;
            }
        }
        return start;
    }

    /** Ground (along, across) to picture; null when the marks lie on one line. */
    static Homography planeToPicture(List<Mark> marks, double sign) {
        double[] world = spread(marks.stream()
                .map(m -> new Point2(m.alongM(), sign * m.acrossM()))
                .toList());
        double[] picture = spread(marks.stream().map(Mark::pixel).toList());
        DMatrixRMaj a = new DMatrixRMaj(Math.max(9, 2 * marks.size()), 9);
        for (int i = 0; i < marks.size(); i++) {
            Mark m = marks.get(i);
            double x = (m.alongM() - world[0]) / world[2];
            double y = (sign * m.acrossM() - world[1]) / world[2];
            double u = (m.pixel().x() - picture[0]) / picture[2];
            double v = (m.pixel().y() - picture[1]) / picture[2];
            double[][] rows = {{x, y, 1, 0, 0, 0, -u * x, -u * y, -u}, {0, 0, 0, x, y, 1, -v * x, -v * y, -v}};
            for (int k = 0; k < 9; k++) {
                a.set(2 * i, k, rows[0][k]);
                a.set(2 * i + 1, k, rows[1][k]);
            }
        }
        SingularValueDecomposition_F64<DMatrixRMaj> svd =
                DecompositionFactory_DDRM.svd(a.numRows, 9, false, true, false);
        if (!svd.decompose(a)) {
            return null;
        }
        double[] s = svd.getSingularValues();
        int smallest = 0;
        int tiny = 0;
        double largest = 0;
        for (int i = 0; i < 9; i++) {
            smallest = s[i] < s[smallest] ? i : smallest;
            largest = Math.max(largest, s[i]);
        }
        for (double value : s) {
            tiny += value < 1e-7 * largest ? 1 : 0;
        }
        if (tiny > 1) {
            return null;
        }
        DMatrixRMaj vt = svd.getV(null, true);
        double[] h = new double[9];
        for (int k = 0; k < 9; k++) {
            h[k] = vt.get(smallest, k);
        }
        Homography normal = Homography.of(h);
        Homography toNormal =
                new Homography(1 / world[2], 0, -world[0] / world[2], 0, 1 / world[2], -world[1] / world[2], 0, 0, 1);
        Homography fromNormal = new Homography(picture[2], 0, picture[0], 0, picture[2], picture[1], 0, 0, 1);
        return fromNormal.after(normal.after(toNormal));
    }

    private static double[] spread(List<Point2> points) {
        double mx = points.stream().mapToDouble(Point2::x).average().orElse(0);
        double my = points.stream().mapToDouble(Point2::y).average().orElse(0);
        double s = points.stream()
                .mapToDouble(p -> Math.hypot(p.x() - mx, p.y() - my))
                .average()
                .orElse(1);
        return new double[] {mx, my, s > 0 ? s / Math.sqrt(2) : 1};
    }

    private static double norm(double[] v) {
        return Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    }

    private static double[] times(double[] v, double k) {
        return new double[] {v[0] * k, v[1] * k, v[2] * k};
    }
}
