package org.boardtopit.measures;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FlightUncertaintyTest {

    // CALC: noise of 2 cm, flights of .42, .52 and .65 s; sd of the fitted gravity in per cent of 9.81, one decimal.
    @ParameterizedTest
    @CsvSource({
        "50, .42, 6.8",
        "50, .52, 4.0",
        "50, .65, 2.4",
        "120, .42, 4.5",
        "120, .52, 2.6",
        "120, .65, 1.5",
        "240, .42, 3.2",
        "240, .52, 1.8",
        "240, .65, 1.0"
    })
    void givesTheTabulatedGravityErrors(double fs, double flightS, double percent) {
        int samples = (int) (flightS * fs);

        assertEquals(percent, 100 * FlightUncertainty.gravitySdMs2(0.02, samples, fs) / 9.81, 0.06);
        // The long-flight form, 2 s sqrt(180 / n^5) fs^2, is within a per cent of it.
        double longForm = 2 * 0.02 * Math.sqrt(180 / Math.pow(samples, 5)) * fs * fs;
        assertEquals(1, FlightUncertainty.gravitySdMs2(0.02, samples, fs) / longForm, 0.01);
    }

    // CALC: noise of 2 cm over .52 s at 50 frames a second leaves .026 m/s.
    @Test
    void givesTheTabulatedSpeedError() {
        assertEquals(.026, FlightUncertainty.speedSdMs(0.02, 26, 50), 5e-4);
    }

    /** Least squares by hand, with discrete orthogonal polynomials on k = -m..m, on 20000 noisy flights. */
    @Test
    void tellsTheSpreadThatRepeatedFlightsShow() {
        Random random = new Random(29);
        int m = 12;
        int n = 2 * m + 1;
        double fs = 60;
        double meanSquare = m * (m + 1) / 3.0;
        double sumLine = 0;
        double sumBend = 0;
        for (int k = -m; k <= m; k++) {
            sumLine += (double) k * k;
            sumBend += (k * k - meanSquare) * (k * k - meanSquare);
        }
        int runs = 20_000;
        double squaresSpeed = 0;
        double squaresGravity = 0;
        for (int run = 0; run < runs; run++) {
            double line = 0;
            double bend = 0;
            for (int k = -m; k <= m; k++) {
                double noise = 0.02 * random.nextGaussian();
                line += k * noise / sumLine;
                bend += (k * k - meanSquare) * noise / sumBend;
            }
            squaresSpeed += line * fs * line * fs;
            squaresGravity += 4 * bend * bend * fs * fs * fs * fs;
        }

        double speedSd = FlightUncertainty.speedSdMs(0.02, n, fs);
        double gravitySd = FlightUncertainty.gravitySdMs2(0.02, n, fs);
        assertEquals(speedSd, Math.sqrt(squaresSpeed / runs), 0.02 * speedSd);
        assertEquals(gravitySd, Math.sqrt(squaresGravity / runs), 0.02 * gravitySd);
    }

    @Test
    void isUnknownForTooFewSamples() {
        assertEquals(Double.NaN, FlightUncertainty.speedSdMs(0.02, 1, 50));
        assertEquals(Double.NaN, FlightUncertainty.gravitySdMs2(0.02, 2, 50));
    }
}
