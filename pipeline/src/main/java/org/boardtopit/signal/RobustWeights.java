package org.boardtopit.signal;

/** How much a residual counts, by its size u in standard deviations. */
public enum RobustWeights {
    /** Ordinary least squares: every sample counts alike. */
    EQUAL {
        @Override
        double weight(double u) {
            return 1;
        }

        @Override
        double influenceSlope(double u) {
            return 1;
        }
    },

    /** Tukey's biweight, (1 - (u/4.685)^2)^2: gross errors do not count at all; 95 % efficient for Gaussian noise. */
    TUKEY {
        @Override
        double weight(double u) {
            double q = 1 - (u / TUKEY_REACH) * (u / TUKEY_REACH);
            return q > 0 ? q * q : 0;
        }

        @Override
        double influenceSlope(double u) {
            double r2 = (u / TUKEY_REACH) * (u / TUKEY_REACH);
            return r2 < 1 ? (1 - r2) * (1 - 5 * r2) : 0;
        }
    },

    /** Student's t with 4 degrees of freedom, 5 / (4 + u^2): gross errors count little, never quite nothing. */
    STUDENT {
        @Override
        double weight(double u) {
            return (STUDENT_FREEDOM + 1) / (STUDENT_FREEDOM + u * u);
        }

        @Override
        double influenceSlope(double u) {
            double d = STUDENT_FREEDOM + u * u;
            return (STUDENT_FREEDOM + 1) * (STUDENT_FREEDOM - u * u) / (d * d);
        }
    };

    private static final double TUKEY_REACH = 4.685;
    private static final double STUDENT_FREEDOM = 4;

    abstract double weight(double u);

    /** Derivative of u times weight(u), which the covariance needs. */
    abstract double influenceSlope(double u);
}
