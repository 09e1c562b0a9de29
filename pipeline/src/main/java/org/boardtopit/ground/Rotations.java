package org.boardtopit.ground;

import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.SingularValueDecomposition_F64;

/** Rotation matrices (row-major, nine numbers) and rotation vectors (axis times angle in radians). */
final class Rotations {
    private Rotations() {}

    /** Rodrigues' formula. */
    static double[] fromVector(double x, double y, double z) {
        double angle = Math.sqrt(x * x + y * y + z * z);
        if (angle < 1e-12) {
            return new double[] {1, -z, y, z, 1, -x, -y, x, 1};
        }
        double a = x / angle;
        double b = y / angle;
        double c = z / angle;
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        double k = 1 - cos;
        return new double[] {
            cos + a * a * k,
            a * b * k - c * sin,
            a * c * k + b * sin,
            a * b * k + c * sin,
            cos + b * b * k,
            b * c * k - a * sin,
            a * c * k - b * sin,
            b * c * k + a * sin,
            cos + c * c * k
        };
    }

    /** The rotation nearest to a matrix with a positive determinant, whatever its scale (Arun et al. 1987, from memory). */
    static double[] nearest(double[] m) {
        SingularValueDecomposition_F64<DMatrixRMaj> svd = DecompositionFactory_DDRM.svd(3, 3, true, true, false);
        if (!svd.decompose(new DMatrixRMaj(3, 3, true, m.clone()))) {
            throw new IllegalArgumentException("not a matrix of finite numbers");
        }
        DMatrixRMaj u = svd.getU(null, false);
        DMatrixRMaj v = svd.getV(null, true);
        double sign = Math.signum(CommonOps_DDRM.det(u) * CommonOps_DDRM.det(v));
        double[] s = svd.getSingularValues();
        int least = s[0] <= s[1] && s[0] <= s[2] ? 0 : s[1] <= s[2] ? 1 : 2;
        for (int i = 0; i < 3; i++) {
            u.set(i, least, sign * u.get(i, least));
        }
        DMatrixRMaj r = new DMatrixRMaj(3, 3);
        CommonOps_DDRM.mult(u, v, r);
        return r.data.clone();
    }

    /** The rotation vector of a matrix, also near half a turn. */
    static double[] toVector(double[] r) {
        double cos = Math.max(-1, Math.min(1, (r[0] + r[4] + r[8] - 1) / 2));
        double angle = Math.acos(cos);
        if (angle < 1e-9) {
            return new double[] {0, 0, 0};
        }
        if (Math.PI - angle < 1e-4) {
            return nearHalfTurn(r, angle);
        }
        double k = angle / (2 * Math.sin(angle));
        return new double[] {k * (r[7] - r[5]), k * (r[2] - r[6]), k * (r[3] - r[1])};
    }

    private static double[] nearHalfTurn(double[] r, double angle) {
        double x = Math.sqrt(Math.max(0, (r[0] + 1) / 2));
        double y = Math.sqrt(Math.max(0, (r[4] + 1) / 2));
        double z = Math.sqrt(Math.max(0, (r[8] + 1) / 2));
        if (x >= y && x >= z) {
            y = Math.copySign(y, r[1]);
            z = Math.copySign(z, r[2]);
        } else if (y >= z) {
            x = Math.copySign(x, r[1]);
            z = Math.copySign(z, r[5]);
        } else {
            x = Math.copySign(x, r[2]);
            y = Math.copySign(y, r[5]);
        }
        return new double[] {x * angle, y * angle, z * angle};
    }
}
