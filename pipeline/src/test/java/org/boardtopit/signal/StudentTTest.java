package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StudentTTest {
    /** Table of critical values of Student's t, NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.6.7.2, column 0.975. */
    @ParameterizedTest
    @CsvSource({
        "1, 12.706",
        "2, 4.303",
        "3, 3.182",
        "4, 2.776",
        "5, 2.571",
        "6, 2.447",
        "7, 2.365",
        "8, 2.306",
        "9, 2.262",
        "10, 2.228",
        "15, 2.131",
        "20, 2.086",
        "30, 2.042",
        "60, 2.000",
        "100, 1.984"
    })
    void agreesWithThePublishedTable(int degrees, double critical) {
        assertEquals(critical, StudentT.half95(degrees), 0.0006);
    }

    @Test
    void comesDownToTheGaussianWithoutAStep() {
        assertEquals(StudentT.half95(999), StudentT.half95(1000), 0.003);
        assertEquals(1.96, StudentT.half95(100_000), 0.001);
    }

    /** One degree of freedom is Cauchy's distribution: 2 / pi arctan t. */
    @Test
    void isCauchyWithOneDegree() {
        assertEquals(0.5, StudentT.within(1, 1), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> StudentT.half95(0));
    }
}
