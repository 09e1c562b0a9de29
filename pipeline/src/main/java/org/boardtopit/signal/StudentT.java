package org.boardtopit.signal;

/**
 * Quantiles of Student's t distribution with a whole number of degrees of freedom.
 *
 * <p>The distribution function has closed forms for whole numbers (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3
 * for odd and 26.7.4 for even ones); it is inverted by bisection, which never fails and is used a few dozen times.
 */
public final class StudentT {
    /** From here on the sum of the closed form is long and the Gaussian is as good: they differ by less than 0.1 %. */
    private static final int GAUSSIAN_FROM = 1000;

    private static final double GAUSSIAN_975 = 1.959964;

    private static final int HALVINGS = 100;

    private StudentT() {}

    /**
     * The number within which t lies to either side with a probability of 95 %.
     *
     * @param degrees of freedom, 1 or more
     */
    public static double half95(int degrees) {
        if (degrees < 1) {
            throw new IllegalArgumentException("degrees of freedom must be 1 or more, was " + degrees);
        }
        if (degrees >= GAUSSIAN_FROM) {
            return GAUSSIAN_975;
        }
        double low = 0;
        double high = 20;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + high) / 2;
            if (within(middle, degrees) < 0.95) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Probability of a t within t to either side: A(t|n) of the handbook. */
    static double within(double t, int degrees) {
        double theta = Math.atan(t / Math.sqrt(degrees));
        double cos = Math.cos(theta);
        boolean odd = degrees % 2 == 1;
        double term = odd ? cos : 1;
        double sum = 0;
        for (int k = odd ? 3 : 2; k <= degrees; k += 2) {
            sum += term;
            term *= cos * cos * (k - 1) / k;
        }
        return odd ? 2 / Math.PI * (theta + Math.sin(theta) * sum) : Math.sin(theta) * sum;
    }
}
