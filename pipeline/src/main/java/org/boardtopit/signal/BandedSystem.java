package org.boardtopit.signal;

/**
 * Normal equations of a long chain of unknowns in which every equation touches only unknowns that lie near each other.
 *
 * <p>Minimises the sum of w (c . x - target)^2 over all equations. The matrix is kept as its lower band and factored by Cholesky
 * (Golub and Van Loan, Matrix Computations, 3rd ed., section 4.3.5, from memory): n b^2 multiplications and n b numbers for n
 * unknowns and half band width b. The factor is kept by columns, so that the innermost loops take one number off many others
 * and not many products off one number: the former are computed side by side, and in the same order. Not safe for use by several
 * threads.
 */
public final class BandedSystem {
    private final int size;
    private final int band;
    private final double[][] rows; // rows[i][band - (i - j)] = A(i, j) for i - band <= j <= i
    private final double[] right;
    private double[][]
            columns; // of the factor: columns[k][i - k] = L(i, k) for k <= i <= k + band; null before factor()

    /**
     * An empty system.
     *
     * @param band largest distance between two unknowns of one equation
     */
    public BandedSystem(int size, int band) {
        if (size < 1 || band < 0) {
            throw new IllegalArgumentException(
                    "size must be positive and band not negative, was " + size + ", " + band);
        }
        this.size = size;
        this.band = band;
        this.rows = new double[size][band + 1];
        this.right = new double[size];
    }

    public int size() {
        return size;
    }

    /** Adds one equation of {@code count} terms. */
    public void add(int[] unknowns, double[] coefficients, int count, double target, double weight) {
        if (columns != null) {
            throw new IllegalStateException("the system is factored already");
        }
        for (int a = 0; a < count; a++) {
            int i = unknowns[a];
            double wc = weight * coefficients[a];
            right[i] += wc * target;
            for (int b = 0; b < count; b++) {
                int j = unknowns[b];
                if (j <= i) {
                    rows[i][band - (i - j)] += wc * coefficients[b];
                }
            }
        }
    }

    /**
     * Factors the matrix; afterwards only {@link #solve} may be called.
     *
     * @throws ArithmeticException when the equations leave an unknown open
     */
    public void factor() {
        columns = new double[size][];
        for (int i = 0; i < size; i++) {
            double[] row = rows[i];
            rows[i] = null;
            int first = Math.max(0, i - band);
            int shift = band - i;
            for (int k = first; k < i; k++) {
                double v = row[k + shift] / columns[k][0];
                row[k + shift] = v;
                subtract(row, k + 1 + shift, columns[k], 1, v, i - k - 1);
            }
            double d = row[band];
            for (int k = first; k < i; k++) {
                double v = row[k + shift];
                d -= v * v;
                columns[k][i - k] = v;
            }
            if (!(d > 0)) {
                throw new ArithmeticException("the equations leave unknown " + i + " open");
            }
            columns[i] = new double[Math.min(band, size - 1 - i) + 1];
            columns[i][0] = Math.sqrt(d);
        }
    }

    /** Takes v times some numbers off as many others. */
    private static void subtract(double[] from, int at, double[] numbers, int first, double v, int count) {
        for (int k = 0; k < count; k++) {
            from[at + k] -= v * numbers[first + k];
        }
    }

    /** The least-squares solution. */
    public double[] solve() {
        return solve(right.clone());
    }

    /** Solves A x = b in place and returns it. */
    public double[] solve(double[] b) {
        if (columns == null) {
            throw new IllegalStateException("factor() comes first");
        }
        forward(b, 0);
        for (int i = size - 1; i >= 0; i--) {
            double[] column = columns[i];
            double v = b[i];
            for (int k = column.length - 1; k > 0; k--) {
                v -= column[k] * b[i + k];
            }
            b[i] = v / column[0];
        }
        return b;
    }

    /** Variance of the combination c . x of the solution, the weights being inverse variances. */
    public double variance(int[] unknowns, double[] coefficients) {
        double[] b = new double[size];
        int first = size;
        for (int a = 0; a < unknowns.length; a++) {
            b[unknowns[a]] += coefficients[a];
            first = Math.min(first, unknowns[a]);
        }
        forward(b, first);
        double sum = 0;
        for (int i = first; i < size; i++) {
            sum += b[i] * b[i];
        }
        return sum;
    }

    private void forward(double[] b, int start) {
        for (int k = start; k < size; k++) {
            double[] column = columns[k];
            double v = b[k] / column[0];
            b[k] = v;
            subtract(b, k + 1, column, 1, v, column.length - 1);
        }
    }
}
