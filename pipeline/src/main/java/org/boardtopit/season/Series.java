package org.boardtopit.season;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.report.tables.AthleteMeasure;
import org.boardtopit.signal.StudentT;

/**
 * One measure of one athlete over the competitions, in the order of their days.
 *
 * <p>How sure the mean of a competition is: attempts scatter, by {@code s}, pooled over the athlete's competitions (the within-group
 * mean square of an analysis of variance), and the measuring errs by {@code u}. Of {@code n} attempts
 * <pre>  se^2 = s^2 / n + u^2</pre>
 * The error of measuring is not divided by n: camera, marks and light are the same for all attempts of a day, so most of it is. What
 * is random in it is in {@code s} a second time; the mean is therefore rather less sure than it could be, never surer.
 *
 * @param points in the order of their days; not empty
 * @param scatter s; NaN where no competition has two attempts, and then nothing is claimed
 * @param degrees degrees of freedom of s
 */
public record Series(AthleteMeasure measure, List<Point> points, double scatter, int degrees) {

    /** The mean of one competition and its standard error; NaN where the scatter of attempts is not known. */
    public record Point(LocalDate date, String competition, CompetitionMean mean, double standardError) {}

    public Series {
        points = List.copyOf(points);
    }

    /** Of one athlete; empty when the measure is known nowhere. */
    public static Optional<Series> of(SeasonAthlete athlete, AthleteMeasure measure) {
        List<Point> bare = new ArrayList<>();
        double squares = 0;
        int degrees = 0;
        for (List<Entrant> competition : athlete.competitions()) {
            Entrant first = competition.get(0);
            Optional<CompetitionMean> mean = CompetitionMean.of(SeasonAthlete.attempts(competition), measure);
            if (mean.isPresent()) {
                bare.add(new Point(first.date(), first.competition(), mean.get(), Double.NaN));
                int free = mean.get().attempts() - 1;
                squares += free == 0 ? 0 : free * mean.get().sd() * mean.get().sd();
                degrees += free;
            }
        }
        if (bare.isEmpty()) {
            return Optional.empty();
        }
        double scatter = degrees == 0 ? Double.NaN : Math.sqrt(squares / degrees);
        List<Point> points = bare.stream()
                .map(p -> new Point(p.date(), p.competition(), p.mean(), standardError(p.mean(), scatter)))
                .toList();
        return Optional.of(new Series(measure, points, scatter, degrees));
    }

    private static double standardError(CompetitionMean mean, double scatter) {
        double own = scatter * scatter / mean.attempts();
        return Math.sqrt(own + mean.measuringSd() * mean.measuringSd());
    }

    /** Half the 95 % interval of a competition's mean; NaN where nothing is claimed. */
    public double halfInterval(Point point) {
        return degrees == 0 ? Double.NaN : StudentT.half95(degrees) * point.standardError();
    }

    public Point last() {
        return points.get(points.size() - 1);
    }

    /**
     * The latest competition less the mean of the earlier ones.
     *
     * @return with NaN for an interval that cannot be told; empty when there is no earlier competition
     */
    public Optional<Change> change() {
        List<Point> earlier = points.subList(0, points.size() - 1);
        if (earlier.isEmpty()) {
            return Optional.empty();
        }
        if (degrees == 0) {
            double mean =
                    earlier.stream().mapToDouble(p -> p.mean().mean()).average().orElseThrow();
            return Optional.of(new Change(last().mean().mean() - mean, Double.NaN));
        }
        WeightedMean before = WeightedMean.of(earlier);
        double error = Math.hypot(last().standardError(), before.standardError());
        return Optional.of(new Change(last().mean().mean() - before.mean(), StudentT.half95(degrees) * error));
    }

    /**
     * A difference.
     *
     * @param pm half its 95 % interval; NaN where it cannot be told
     */
    public record Change(double value, double pm) {
        /** False also where the interval cannot be told. */
        public boolean isBeyondUncertainty() {
            return Math.abs(value) > pm;
        }
    }
}
