package org.boardtopit.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.boardtopit.report.tables.AthleteMeasure;
import org.boardtopit.season.Trend.Direction;
import org.boardtopit.season.Trend.Line;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrendTest {
    /** Data set Norris of the NIST Statistical Reference Datasets (linear regression), y and x in turn. */
    private static final double[] NORRIS = {
        0.1, 0.2, 338.8, 337.4, 118.1, 118.2, 888.0, 884.6, 9.2, 10.1, 228.1, 226.5, 668.5, 666.3, 998.5, 996.3,
        449.1, 448.6, 778.9, 777.0, 559.2, 558.2, 0.3, 0.4, 0.1, 0.6, 778.1, 775.5, 668.8, 666.9, 339.3, 338.0,
        448.9, 447.5, 10.8, 11.6, 557.7, 556.0, 228.3, 228.1, 998.0, 995.8, 888.8, 887.6, 119.6, 120.2, 0.3, 0.3,
        0.6, 0.3, 557.6, 556.8, 339.3, 339.1, 888.0, 887.2, 998.5, 999.0, 778.9, 779.0, 10.2, 11.1, 117.6, 118.3,
        228.9, 229.2, 668.4, 669.1, 449.2, 448.9, 0.2, 0.5
    };

    /** Certified: slope 1.00211681802045, its standard deviation 0.429796848199937E-03. Equal errors smaller than the residuals. */
    @Test
    void agreesWithTheCertifiedValuesOfNorris() {
        double[] y = every(NORRIS, 0);
        double[] x = every(NORRIS, 1);
        assertEquals(36, x.length);
        double[] errors = new double[x.length];
        Arrays.fill(errors, 0.01);
        Line line = Line.through(x, y, errors);
        assertEquals(1.00211681802045, line.slope(), 1e-12);
        assertEquals(0.429796848199937e-3, line.slopeError(), 1e-14);
    }

    private static double[] every(double[] pairs, int from) {
        double[] half = new double[pairs.length / 2];
        for (int i = 0; i < half.length; i++) {
            half[i] = pairs[2 * i + from];
        }
        return half;
    }

    /**
     * By hand: x 0, 10, 20 with errors 1, 2, 1 has weights 1, 1/4, 1 about 10, so S = 200; a perfect line leaves no residual, and the
     * error is that of the errors alone, 1 / sqrt(200).
     */
    @Test
    void aPerfectLineIsNoSurerThanItsPoints() {
        Line line = Line.through(new double[] {0, 10, 20}, new double[] {5, 6, 7}, new double[] {1, 2, 1});
        assertEquals(0.1, line.slope(), 1e-12);
        assertEquals(1 / Math.sqrt(200), line.slopeError(), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2})
    void fewerThanThreeCompetitionsHaveNoTrend(int competitions) {
        Trend trend = Trend.of(series(new double[competitions][2]));
        assertEquals(Direction.TOO_FEW, trend.direction());
        assertTrue(Double.isNaN(trend.perMonth()));
    }

    @Test
    void oneAttemptEachTellsNothing() {
        assertEquals(
                Direction.TOO_FEW,
                Trend.of(series(new double[][] {{1}, {2}, {3}, {4}, {5}})).direction());
    }

    @Test
    void aPlainRiseIsNamedAndMirroredItIsAFall() {
        double[][] rise = {{28.0, 28.2}, {29.1, 28.9}, {30.0, 30.2}, {31.1, 30.9}, {32.0, 32.2}};
        Trend up = Trend.of(series(rise));
        assertEquals(Direction.RISING, up.direction());
        // one point in 20 days
        assertEquals(1.5, up.perMonth(), 0.05);
        double[][] fall = Arrays.stream(rise)
                .map(c -> Arrays.stream(c).map(v -> -v).toArray())
                .toArray(double[][]::new);
        Trend down = Trend.of(series(fall));
        assertEquals(Direction.FALLING, down.direction());
        assertEquals(up.pm(), down.pm(), 1e-9);
    }

    /** Days of good and bad form, attempts that scatter, errors of measuring that last a day, and no trend at all. */
    @Test
    void ofSeasonsWithoutATrendHardlyMoreThanOneInTwentyIsNamed() {
        int named = 0;
        int seasons = 600;
        for (int seed = 0; seed < seasons; seed++) {
            Random random = new Random(seed);
            double[][] competitions = new double[3 + seed % 5][];
            for (int c = 0; c < competitions.length; c++) {
                double day = 0.6 * random.nextGaussian() + 0.2 * random.nextGaussian();
                competitions[c] = new double[1 + random.nextInt(5)];
                for (int i = 0; i < competitions[c].length; i++) {
                    competitions[c][i] = 29 + day + 0.5 * random.nextGaussian();
                }
            }
            Direction direction = Trend.of(series(competitions)).direction();
            named += direction == Direction.RISING || direction == Direction.FALLING ? 1 : 0;
        }
        // 5 % of 600 is 30; three standard deviations of the count are 16.
        assertTrue(named <= 46, named + " of " + seasons);
        assertTrue(named >= 3, "a test that names nothing says nothing: " + named);
    }

    /** And of seasons with a trend that a coach would see, most are. */
    @Test
    void aTrendLikeTheScatterIsFoundInMostSeasonsOfSeven() {
        int named = 0;
        for (int seed = 0; seed < 100; seed++) {
            Random random = new Random(seed);
            double[][] competitions = new double[7][3];
            for (int c = 0; c < 7; c++) {
                for (int i = 0; i < 3; i++) {
                    competitions[c][i] = 29 + 0.5 * c + 0.5 * random.nextGaussian();
                }
            }
            named += Trend.of(series(competitions)).direction() == Direction.RISING ? 1 : 0;
        }
        assertTrue(named >= 90, named + " of 100");
    }

    /** Competitions 20 days apart, each with its attempts. */
    private static Series series(double[][] competitions) {
        List<Entrant> entrants = new ArrayList<>();
        for (int c = 0; c < competitions.length; c++) {
            List<MeasuredAttempt> attempts = new ArrayList<>();
            for (double value : competitions[c]) {
                attempts.add(new MeasuredAttempt(
                        c + "-" + attempts.size(),
                        Double.NaN,
                        Double.NaN,
                        false,
                        Map.of(AthleteMeasure.STEP_SHARE, new Estimate(value, 0.2))));
            }
            entrants.add(new Entrant(
                    Path.of("c" + c),
                    "Meeting " + c,
                    LocalDate.of(2026, 5, 1).plusDays(20L * c),
                    "",
                    "214",
                    "Corin Vask",
                    "Corin Vask",
                    null,
                    attempts,
                    List.of()));
        }
        return Series.of(new SeasonAthlete("Corin Vask", JoinedBy.NAME, entrants), AthleteMeasure.STEP_SHARE)
                .orElseThrow();
    }

    /**
     * By hand: 28, 29 and 31, 32 scatter by 0.7071 each, so s^2 = 0.5 with 2 degrees of freedom; u = 0.2; se^2 = 0.25 + 0.04; the difference 3
     * has the error sqrt(0.58), times 4.303.
     */
    @Test
    void aChangeHasTheErrorsOfBothSides() {
        Series series = series(new double[][] {{28, 29}, {31, 32}});
        assertEquals(2, series.degrees());
        Series.Change change = series.change().orElseThrow();
        assertEquals(3, change.value(), 1e-9);
        assertEquals(4.3027 * Math.sqrt(0.58), change.pm(), 1e-3);
        assertEquals(false, change.isBeyondUncertainty());
    }

    @Test
    void withOneAttemptEachTheChangeHasNoIntervalAndIsNotNamed() {
        Series.Change change = series(new double[][] {{28}, {40}}).change().orElseThrow();
        assertEquals(12, change.value(), 1e-9);
        assertTrue(Double.isNaN(change.pm()));
        assertEquals(false, change.isBeyondUncertainty());
    }
}
