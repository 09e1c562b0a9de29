package org.boardtopit.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ErrorStatisticsTest {

    @Test
    void countsWhatIsMissingAndTakesTheRest() {
        ErrorStatistics s = ErrorStatistics.of(1, -2, 3, Double.NaN);

        assertEquals(3, s.n());
        assertEquals(1, s.missing());
        assertEquals(2.0 / 3, s.bias(), 1e-12);
        assertEquals(2, s.mae(), 1e-12);
        assertEquals(3, s.max(), 0);
        // Sizes 1, 2, 3: 95 % of the way from the first to the last is 1.9 steps, so 2.9.
        assertEquals(2.9, s.p95(), 1e-12);
    }

    @Test
    void knowsNothingOfNoErrors() {
        ErrorStatistics s = ErrorStatistics.of(Double.NaN, Double.NaN);

        assertEquals(new ErrorStatistics(0, 2, Double.NaN, Double.NaN, Double.NaN, Double.NaN), s);
    }

    private static List<MeasuredError> errors(double sd, double... errors) {
        List<MeasuredError> list = new ArrayList<>();
        for (double error : errors) {
            list.add(new MeasuredError(Measure.TOUCHDOWN, error, sd));
        }
        return list;
    }

    @Test
    void countsHowOftenTheTruthLiesWithinTheInterval() {
        // Errors of 0.5, 1, 1.7 and 3 standard deviations.
        Coverage c = Coverage.of(errors(2, 1, -2, 3.4, -6));

        assertEquals(4, c.n());
        assertEquals(50, c.within90Pct(), 1e-12);
        assertEquals(75, c.within2SdPct(), 1e-12);
        assertEquals(1.35, c.medianRatio(), 1e-12);
    }

    @Test
    void leavesOutWhatHasNoIntervalOrWasNotMeasured() {
        List<MeasuredError> some = new ArrayList<>(errors(Double.NaN, 1, 2));
        some.addAll(errors(1, Double.NaN));

        assertEquals(new Coverage(0, Double.NaN, Double.NaN, Double.NaN), Coverage.of(some));
    }

    @Test
    void findsGaussianErrorsCoveredAsTheTableOfTheNormalDistributionSays() {
        // 90 % within 1.645, 95.45 % within 2, half within 0.6745 (table of the normal distribution, MEM-H).
        Random random = new Random(7);
        double[] noise =
                random.doubles(40_000).map(x -> 3 * random.nextGaussian()).toArray();

        Coverage c = Coverage.of(errors(3, noise));

        assertEquals(90, c.within90Pct(), 0.5);
        assertEquals(95.45, c.within2SdPct(), 0.4);
        assertEquals(0.6745, c.medianRatio(), 0.015);
    }

    @Test
    void givesErrorsInTheUnitOfTheReport() {
        MeasuredError e = MeasuredError.of(Measure.TOE_PLACE, 5.50, 5.48, 0.015);

        assertEquals(2, e.error(), 1e-9);
        assertEquals(1.5, e.sd(), 1e-9);
    }
}
