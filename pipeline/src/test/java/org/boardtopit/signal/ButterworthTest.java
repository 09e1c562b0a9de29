package org.boardtopit.signal;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ButterworthTest {

    // CALC; the first row is the ratio fs / fc = 10 that Winter prints for a single pass.
    @ParameterizedTest
    @CsvSource({
        "60, 6, 1, .0674553, .1349105, .0674553, 1.1429805, -.4128016",
        "100, 10, 1, .0674553, .1349105, .0674553, 1.1429805, -.4128016",
        "120, 12, 1, .0674553, .1349105, .0674553, 1.1429805, -.4128016",
        "60, 6, 2, .0944467, .1888935, .0944467, .9626413, -.3404283",
        "50, 6, 1, .0913149, .1826298, .0913149, .9824058, -.3476654",
        "50, 6, 2, .1254523, .2509046, .1254523, .7792165, -.2810256",
        "60, 10, 2, .2042538, .4085076, .2042538, .3802319, -.1972471",
        "50, 10, 2, .2644938, .5289875, .2644938, .1159765, -.1739516",
        "120, 10, 2, .0704310, .1408621, .0704310, 1.1218414, -.4035655",
        "240, 12, 2, .0295691, .0591381, .0295691, 1.4581039, -.5763802"
    })
    void hasTheTabulatedCoefficients(
            double fs, double fc, int passes, double a0, double a1, double a2, double b1, double b2) {
        Butterworth filter = passes == 1 ? Butterworth.forOnePass(fc, fs) : Butterworth.forTwoPasses(fc, fs);

        assertArrayEquals(
                new double[] {a0, a1, a2, b1, b2},
                new double[] {filter.a0(), filter.a1(), filter.a2(), filter.b1(), filter.b2()},
                6e-8);
    }

    // CALC: exact corrected cutoffs 7.3495 Hz (60, 6) and 11.7126 Hz (50, 10); the naive fc / 0.802 gives 7.4813 and
    // 12.4688.
    @ParameterizedTest
    @CsvSource({"60, 6, 7.3495", "50, 10, 11.7126"})
    void correctsTheTangentAndNotTheCutoff(double fs, double fc, double correctedHz) {
        Butterworth corrected = Butterworth.forTwoPasses(fc, fs);
        Butterworth plain = Butterworth.forOnePass(correctedHz, fs);

        assertEquals(plain.a0(), corrected.a0(), 1e-5);
        assertEquals(plain.b1(), corrected.b1(), 1e-4);
    }

    // MEM-H, textbook definition of the cutoff: amplitude 1/sqrt(2) = 0.707107.
    @ParameterizedTest
    @CsvSource({"60, 6", "50, 10", "120, 12", "240, 16", "59.94, 8"})
    void letsThroughSevenTenthsOfTheAmplitudeAtTheCutoff(double fs, double fc) {
        double onePass = Butterworth.forOnePass(fc, fs).gainOfOnePass(fc, fs);
        double eachOfTwo = Butterworth.forTwoPasses(fc, fs).gainOfOnePass(fc, fs);

        assertEquals(0.707107, onePass, 1e-6);
        assertEquals(0.707107, eachOfTwo * eachOfTwo, 1e-6);
    }

    @Test
    void lowersASineAtTheCutoffToSevenTenthsAndDoesNotDelayIt() {
        double[] sine = IntStream.range(0, 600)
                .mapToDouble(i -> Math.sin(2 * Math.PI * 6 * i / 60 + 0.3))
                .toArray();
        double[] filtered = Butterworth.forTwoPasses(6, 60).bothWays(sine);

        for (int i = 200; i < 400; i++) {
            assertEquals(0.707107 * sine[i], filtered[i], 1e-6);
        }
    }

    // CALC: kernel of both passes at 60 / 6 Hz.
    @Test
    void spreadsAnImpulseByTheTabulatedKernel() {
        double[] impulse = new double[201];
        impulse[100] = 1;
        double[] kernel = Butterworth.forTwoPasses(6, 60).bothWays(impulse);

        double[] expected = {.259340, .219272, .131714, .052147, .005360, -.012593};
        for (int k = 0; k < expected.length; k++) {
            assertEquals(expected[k], kernel[100 + k], 1e-6);
            assertEquals(expected[k], kernel[100 - k], 1e-6);
        }
        assertEquals(1, Arrays.stream(kernel).sum(), 1e-9);
    }

    // CALC with a reference library: scipy 1.17.1, filtfilt(padtype='odd', padlen=11) with butter(2, 7.349544364576593
    // Hz).
    @Test
    void agreesWithTheReferenceLibraryToTheEnds() {
        double[] series = {0, .1, .3, .2, .7, 1.1, .9, 1.6, 1.4, 2.2, 2.1, 1.8};
        double[] expected = {
            -0.000380056,
            0.112509422,
            0.248073987,
            0.4267938,
            0.653049323,
            0.910023274,
            1.178421247,
            1.442833022,
            1.674148219,
            1.824375848,
            1.857639256,
            1.799525792
        };

        assertArrayEquals(expected, Butterworth.forTwoPasses(6, 60).bothWays(series), 2e-9);
    }

    @Test
    void leavesAStraightLineAlone() {
        double[] line = IntStream.range(0, 40).mapToDouble(i -> 3 - 0.25 * i).toArray();

        // The filter starts at rest, so its first pass disturbs the far end of the continuation: that has died away.
        assertArrayEquals(line, Butterworth.forTwoPasses(8, 50).bothWays(line), 1e-4);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 5})
    void keepsAShortConstantSeries(int length) {
        double[] constant = new double[length];
        Arrays.fill(constant, 4.5);

        assertArrayEquals(constant, Butterworth.forTwoPasses(6, 60).bothWays(constant), 1e-12);
    }

    @Test
    void lagsInOnePass() {
        double[] step = IntStream.range(0, 60).mapToDouble(i -> i < 30 ? 0 : 1).toArray();
        double[] lagged = Butterworth.forOnePass(6, 60).forward(step);

        assertEquals(0, lagged[29], 1e-9);
        // a0 is the first answer to a unit step: table above.
        assertEquals(.0674553, lagged[30], 1e-6);
    }

    @Test
    void refusesAGap() {
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class,
                () -> Butterworth.forTwoPasses(6, 60).bothWays(new double[] {1, Double.NaN, 2}));

        assertEquals("the filter needs a series without gaps, sample 1 was NaN", refused.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"0, 60", "-1, 60", "30, 60", "31, 60", "NaN, 60", "6, NaN", "6, Infinity"})
    void refusesACutoffOutsideTheBand(double fc, double fs) {
        assertThrows(IllegalArgumentException.class, () -> Butterworth.forTwoPasses(fc, fs));
    }

    static IntStream seeds() {
        return IntStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void treatsBothDirectionsOfTimeNearlyAlikeAndShiftsWithTheSeries(int seed) {
        Random random = new Random(seed);
        double[] series = random.doubles(120).toArray();
        double[] backwards = reversed(series);
        double[] raised = Arrays.stream(series).map(v -> v + 7).toArray();
        Butterworth filter = Butterworth.forTwoPasses(8, 60);
        double[] filtered = filter.bothWays(series);

        double[] again = reversed(filter.bothWays(backwards));
        for (int i = 30; i < 90; i++) {
            assertEquals(filtered[i], again[i], 1e-6);
        }
        assertArrayEquals(Arrays.stream(filtered).map(v -> v + 7).toArray(), filter.bothWays(raised), 1e-9);
    }

    private static double[] reversed(double[] series) {
        return IntStream.range(0, series.length)
                .mapToDouble(i -> series[series.length - 1 - i])
                .toArray();
    }
}
