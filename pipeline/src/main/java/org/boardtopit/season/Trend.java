package org.boardtopit.season;

import java.time.temporal.ChronoUnit;
import java.util.List;
import org.boardtopit.clips.Label;
import org.boardtopit.signal.StudentT;

/**
 * Whether a measure rises or falls over the season.
 *
 * <p>Weighted regression of the competitions' means on their days: with weights {@code w = 1/se^2}, days {@code x}, their weighted mean
 * {@code m} and {@code S = sum w (x - m)^2}
 * <pre>  slope b = sum w (x - m) y / S      var b = q / S      q = max(1, sum w r^2 / (k - 2))</pre>
 * for k competitions with residuals r, and the interval b +- t(0.975, k - 2) sqrt(var b). This is regression of known errors with the scale
 * q of Knapp and Hartung (Improved tests for a random effects meta-regression with a single covariate, Statistics in Medicine 22,
 * 2693-2710, 2003; from memory): competitions differ by more than their errors (wind, form, surface), q takes that from the
 * competitions themselves, and t pays for how few they are. It is never less than 1, for three points lie on a line by chance.
 *
 * <p>A straight line is assumed, and that days of competition have no order but time: with a first half against the wind it
 * fails. With q = 1 and equal weights it is ordinary regression, with q as the mean square of the residuals.
 *
 * @param competitions with the measure
 * @param perMonth slope in units of the measure per 30 days; NaN when it cannot be told
 * @param pm half of its 95 % interval; likewise
 */
public record Trend(int competitions, double perMonth, double pm, Direction direction) {
    /** Of a line through two points nothing says how sure it is. */
    public static final int LEAST_COMPETITIONS = 3;

    private static final double MONTH_DAYS = 30;

    /** What may be said. */
    public enum Direction implements Label {
        RISING("rising"),
        FALLING("falling"),
        /** The interval holds 0: nothing is shown, which is not the same as "unchanged". */
        NOT_SHOWN("not_shown"),
        TOO_FEW("too_few");

        private final String label;

        Direction(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /** Of one measure of an athlete. */
    public static Trend of(Series series) {
        List<Series.Point> points = series.points();
        long days = points.stream().map(Series.Point::date).distinct().count();
        if (days < LEAST_COMPETITIONS || series.degrees() == 0) {
            return new Trend(points.size(), Double.NaN, Double.NaN, Direction.TOO_FEW);
        }
        double[] x = points.stream()
                .mapToDouble(p -> ChronoUnit.DAYS.between(points.get(0).date(), p.date()))
                .toArray();
        double[] y = points.stream().mapToDouble(p -> p.mean().mean()).toArray();
        double[] errors =
                points.stream().mapToDouble(Series.Point::standardError).toArray();
        return of(x, y, errors);
    }

    /** Of days, values and their standard errors; three or more, not all on one day. */
    static Trend of(double[] x, double[] y, double[] errors) {
        Line line = Line.through(x, y, errors);
        double pm = StudentT.half95(x.length - 2) * line.slopeError();
        return new Trend(x.length, MONTH_DAYS * line.slope(), MONTH_DAYS * pm, direction(line.slope(), pm));
    }

    private static Direction direction(double slope, double pm) {
        if (Math.abs(slope) <= pm) {
            return Direction.NOT_SHOWN;
        }
        return slope > 0 ? Direction.RISING : Direction.FALLING;
    }

    /** The line and the standard error of its slope. */
    record Line(double slope, double slopeError) {

        static Line through(double[] x, double[] y, double[] errors) {
            double weights = 0;
            double meanX = 0;
            double meanY = 0;
            for (int i = 0; i < x.length; i++) {
                double w = 1 / (errors[i] * errors[i]);
                weights += w;
                meanX += w * x[i];
                meanY += w * y[i];
            }
            meanX /= weights;
            meanY /= weights;
            double xx = 0;
            double xy = 0;
            for (int i = 0; i < x.length; i++) {
                double w = 1 / (errors[i] * errors[i]);
                xx += w * (x[i] - meanX) * (x[i] - meanX);
                xy += w * (x[i] - meanX) * (y[i] - meanY);
            }
            double slope = xy / xx;
            double misfit = 0;
            for (int i = 0; i < x.length; i++) {
                double r = (y[i] - meanY - slope * (x[i] - meanX)) / errors[i];
                misfit += r * r;
            }
            return new Line(slope, Math.sqrt(Math.max(1, misfit / (x.length - 2)) / xx));
        }
    }
}
