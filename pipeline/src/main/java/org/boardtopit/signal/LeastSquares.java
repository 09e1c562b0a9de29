package org.boardtopit.signal;

import java.util.Optional;
import java.util.function.Function;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;

/**
 * Levenberg-Marquardt with a numerical Jacobian, for problems of a handful of unknowns.
 *
 * <p>Method: Marquardt 1963, "An algorithm for least-squares estimation of nonlinear parameters", J SIAM 11:431-441
 * (damping scaled by the diagonal of the normal matrix). Minimises the sum of squared residuals; weights and robustness
 * belong into the residual function. Fails softly: when no step lowers the cost the best point so far is returned.
 */
public final class LeastSquares {
    private static final int MAX_STEPS = 60;
    private static final double RELATIVE_GAIN = 1e-10;
    /** Beyond this the numerical Jacobian no longer tells an unknown from a sum of others. */
    private static final double LARGEST_INFLATION = 1e10;

    private LeastSquares() {}

    /** The result of a fit: the best point found and the sum of squared residuals there. */
    public static final class Fit {
        private final double[] parameters;
        private final double cost;
        private final DMatrixRMaj normal;

        private Fit(double[] parameters, double cost, DMatrixRMaj normal) {
            this.parameters = parameters;
            this.cost = cost;
            this.normal = normal;
        }

        public double[] parameters() {
            return parameters.clone();
        }

        public double cost() {
            return cost;
        }

        /**
         * As many points as there are parameters, each one standard deviation away from the best one: the columns of a root of
         * the covariance are added to it. The covariance is the inverse of J^T J, for residuals in units of their own standard
         * deviation. Whatever is computed from the parameters has, to first order, the sum of the squares of its changes at
         * these points as variance. Empty when the residuals do not determine every parameter.
         */
        public Optional<double[][]> oneSdAway() {
            int n = parameters.length;
            DMatrixRMaj covariance = new DMatrixRMaj(n, n);
            CholeskyDecomposition_F64<DMatrixRMaj> root = DecompositionFactory_DDRM.chol(n, true);
            if (!CommonOps_DDRM.invert(normal, covariance)
                    || !isDetermined(covariance)
                    || !root.decompose(covariance.copy())) {
                return Optional.empty();
            }
            DMatrixRMaj lower = root.getT(null);
            double[][] points = new double[n][];
            for (int j = 0; j < n; j++) {
                points[j] = parameters.clone();
                for (int i = j; i < n; i++) {
                    points[j][i] += lower.get(i, j);
                }
            }
            return Optional.of(points);
        }

        /** Each parameter's variance against the one it had if the others were known. */
        private boolean isDetermined(DMatrixRMaj covariance) {
            for (int i = 0; i < parameters.length; i++) {
                if (!(covariance.get(i, i) * normal.get(i, i) < LARGEST_INFLATION)) {
                    return false;
                }
            }
            return true;
        }
    }

    /** Minimises |residuals(p)|^2 from {@code start}; {@code scale} is a typical size of each parameter. */
    public static Fit minimise(Function<double[], double[]> residuals, double[] start, double[] scale) {
        double[] best = start.clone();
        double[] r = residuals.apply(best);
        double cost = squares(r);
        double damping = 1e-3;
        for (int step = 0; step < MAX_STEPS; step++) {
            DMatrixRMaj jacobian = jacobian(residuals, best, r, scale);
            DMatrixRMaj normal = new DMatrixRMaj(best.length, best.length);
            CommonOps_DDRM.multInner(jacobian, normal);
            DMatrixRMaj gradient = new DMatrixRMaj(best.length, 1);
            CommonOps_DDRM.multTransA(jacobian, new DMatrixRMaj(r.length, 1, true, r), gradient);
            boolean improved = false;
            double previous = cost;
            for (int tries = 0; tries < 12 && !improved; tries++) {
                double[] candidate = stepped(best, normal, gradient, damping);
                double[] at = candidate == null ? null : residuals.apply(candidate);
                double c = at == null ? Double.POSITIVE_INFINITY : squares(at);
                if (c < cost) {
                    best = candidate;
                    r = at;
                    cost = c;
                    damping = Math.max(damping / 5, 1e-12);
                    improved = true;
                } else {
                    damping *= 4;
                }
            }
            if (!improved || previous - cost < RELATIVE_GAIN * (previous + 1e-30)) {
                break;
            }
        }
        DMatrixRMaj jacobian = jacobian(residuals, best, r, scale);
        DMatrixRMaj normal = new DMatrixRMaj(best.length, best.length);
        CommonOps_DDRM.multInner(jacobian, normal);
        return new Fit(best, cost, normal);
    }

    /**
     * Covariance of the parameters at the best point, for residuals that have been divided by their standard deviation: the
     * inverse of J'J. Empty of meaning, and NaN throughout, when the residuals do not determine the parameters.
     */
    public static double[][] covariance(Function<double[], double[]> residuals, double[] at, double[] scale) {
        DMatrixRMaj jacobian = jacobian(residuals, at, residuals.apply(at), scale);
        DMatrixRMaj normal = new DMatrixRMaj(at.length, at.length);
        CommonOps_DDRM.multInner(jacobian, normal);
        DMatrixRMaj inverse = new DMatrixRMaj(at.length, at.length);
        boolean known = CommonOps_DDRM.invert(normal, inverse);
        double[][] covariance = new double[at.length][at.length];
        for (int i = 0; i < at.length; i++) {
            for (int j = 0; j < at.length; j++) {
                covariance[i][j] = known ? inverse.get(i, j) : Double.NaN;
            }
        }
        return covariance;
    }

    private static double[] stepped(double[] at, DMatrixRMaj normal, DMatrixRMaj gradient, double damping) {
        DMatrixRMaj damped = normal.copy();
        for (int i = 0; i < at.length; i++) {
            damped.set(i, i, normal.get(i, i) * (1 + damping) + 1e-300);
        }
        DMatrixRMaj move = new DMatrixRMaj(at.length, 1);
        if (!CommonOps_DDRM.solve(damped, gradient, move)) {
            return null;
        }
        double[] next = new double[at.length];
        for (int i = 0; i < at.length; i++) {
            next[i] = at[i] - move.get(i, 0);
            if (!Double.isFinite(next[i])) {
                return null;
            }
        }
        return next;
    }

    private static DMatrixRMaj jacobian(
            Function<double[], double[]> residuals, double[] at, double[] r, double[] scale) {
        DMatrixRMaj jacobian = new DMatrixRMaj(r.length, at.length);
        for (int j = 0; j < at.length; j++) {
            double h = 1e-6 * scale[j];
            double[] moved = at.clone();
            moved[j] += h;
            double[] up = residuals.apply(moved);
            moved[j] = at[j] - h;
            double[] down = residuals.apply(moved);
            for (int i = 0; i < r.length; i++) {
                jacobian.set(i, j, (up[i] - down[i]) / (2 * h));
            }
        }
        return jacobian;
    }

    private static double squares(double[] r) {
        double sum = 0;
        for (double v : r) {
            sum += v * v;
        }
        return Double.isNaN(sum) ? Double.POSITIVE_INFINITY : sum;
    }
}
