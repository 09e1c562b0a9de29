package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Random;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.junit.jupiter.api.Test;

class BandedSystemTest {

    @Test
    void halvesTheWayBetweenTwoEqualStatements() {
        BandedSystem system = new BandedSystem(1, 0);
        system.add(new int[] {0}, new double[] {1}, 1, 3, 4);
        system.add(new int[] {0}, new double[] {1}, 1, 5, 4);
        system.factor();
        assertEquals(4, system.solve()[0], 1e-12);
        // Two statements of variance 1/4 make one of variance 1/8.
        assertEquals(0.125, system.variance(new int[] {0}, new double[] {1}), 1e-12);
    }

    @Test
    void carriesAStatementAlongAChain() {
        BandedSystem system = new BandedSystem(3, 1);
        system.add(new int[] {0}, new double[] {1}, 1, 10, 1);
        system.add(new int[] {0, 1}, new double[] {-1, 1}, 2, 2, 1);
        system.add(new int[] {1, 2}, new double[] {-1, 1}, 2, 2, 1);
        system.factor();
        double[] x = system.solve();
        assertEquals(14, x[2], 1e-12);
        // Variances of independent steps add up: 1 + 1 + 1; their difference has but two of them.
        assertEquals(3, system.variance(new int[] {2}, new double[] {1}), 1e-12);
        assertEquals(2, system.variance(new int[] {0, 2}, new double[] {-1, 1}), 1e-12);
    }

    /** Against a dense solution by a linear algebra library (EJML). */
    @Test
    void agreesWithADenseSolution() {
        int n = 40;
        int band = 7;
        Random random = new Random(5);
        BandedSystem system = new BandedSystem(n, band);
        DMatrixRMaj normal = new DMatrixRMaj(n, n);
        DMatrixRMaj right = new DMatrixRMaj(n, 1);
        for (int e = 0; e < 200; e++) {
            int first = random.nextInt(n - band);
            int[] unknowns = {first, first + 2, first + band};
            double[] factors = {random.nextGaussian(), random.nextGaussian(), random.nextGaussian()};
            double target = random.nextGaussian();
            double weight = 0.1 + random.nextDouble();
            system.add(unknowns, factors, 3, target, weight);
            for (int i = 0; i < 3; i++) {
                right.add(unknowns[i], 0, weight * factors[i] * target);
                for (int j = 0; j < 3; j++) {
                    normal.add(unknowns[i], unknowns[j], weight * factors[i] * factors[j]);
                }
            }
        }
        system.factor();
        double[] x = system.solve();
        DMatrixRMaj inverse = new DMatrixRMaj(n, n);
        DMatrixRMaj dense = new DMatrixRMaj(n, 1);
        CommonOps_DDRM.invert(normal, inverse);
        CommonOps_DDRM.mult(inverse, right, dense);
        for (int i = 0; i < n; i++) {
            assertEquals(dense.get(i, 0), x[i], 1e-9);
            assertEquals(inverse.get(i, i), system.variance(new int[] {i}, new double[] {1}), 1e-9);
        }
        double both = inverse.get(3, 3) + 4 * inverse.get(30, 30) - 4 * inverse.get(3, 30);
        assertEquals(both, system.variance(new int[] {3, 30}, new double[] {1, -2}), 1e-9);
    }

    @Test
    void saysWhichUnknownIsLeftOpen() {
        BandedSystem system = new BandedSystem(2, 1);
        system.add(new int[] {0}, new double[] {1}, 1, 1, 1);
        ArithmeticException e = assertThrows(ArithmeticException.class, system::factor);
        assertEquals("the equations leave unknown 1 open", e.getMessage());
    }
}
