package org.boardtopit.signal;

/**
 * Normal equations of a long chain of unknowns in which every equation touches only unknowns that lie near each other.
 *
 * <p>Minimises the sum of w (c . x - target)^2 over all equations. The matrix is kept as its lower band and factored by Cholesky
 * (Golub and Van Loan, Matrix Computations, 3rd ed., section 4.3.5, from memory): n b^2 multiplications and n b numbers for n
 * unknowns and half band width b. Not safe for use by several threads.
 */
public final class BandedSystem {
    private final int size;
    private final int band;
    private final double[][] rows; // rows[i][band - (i - j)] = A(i, j) for i - band <= j <= i
    private final double[] right;
    private boolean factored;

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
        if (factored) {
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
        for (int i = 0; i < size; i++) {
            double[] row = rows[i];
            int first = Math.max(0, i - band);
            for (int j = first; j < i; j++) {
                double[] other = rows[j];
                int from = Math.max(first, j - band);
                double s = row[band - (i - j)];
                int p = band - (i - from);
                int q = band - (j - from);
                for (int k = from; k < j; k++) {
                    s -= row[p++] * other[q++];
                }
                row[band - (i - j)] = s / other[band];
            }
            double d = row[band];
            for (int k = first; k < i; k++) {
                double v = row[band - (i - k)];
                d -= v * v;
            }
            if (!(d > 0)) {
                throw new ArithmeticException("the equations leave unknown " + i + " open");
            }
            row[band] = Math.sqrt(d);
        }
        factored = true;
    }

    /** The least-squares solution. */
    public double[] solve() {
        return solve(right.clone());
    }

    /** Solves A x = b in place and returns it. */
    public double[] solve(double[] b) {
        if (!factored) {
            throw new IllegalStateException("factor() comes first");
        }
        forward(b, 0);
        for (int i = size - 1; i >= 0; i--) {
            double[] row = rows[i];
            b[i] /= row[band];
            double v = b[i];
            for (int k = Math.max(0, i - band); k < i; k++) {
                b[k] -= row[band - (i - k)] * v;
            }
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
        for (int i = start; i < size; i++) {
            double[] row = rows[i];
            double s = b[i];
            for (int k = Math.max(start, i - band); k < i; k++) {
                s -= row[band - (i - k)] * b[k];
            }
            b[i] = s / row[band];
        }
    }
}
