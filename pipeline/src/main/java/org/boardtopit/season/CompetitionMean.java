package org.boardtopit.season;

import java.util.List;
import java.util.Optional;
import org.boardtopit.report.tables.AthleteMeasure;

/**
 * One measure of one athlete over the attempts of a competition.
 *
 * @param attempts in which the measure is known
 * @param mean plain, for the attempts are the athlete's and not the camera's
 * @param sd standard deviation between the attempts; NaN with fewer than two
 * @param measuringSd root mean square of the attempts' own errors
 */
public record CompetitionMean(int attempts, double mean, double sd, double measuringSd) {

    /** Of the attempts of one competition; empty when none has the measure. */
    public static Optional<CompetitionMean> of(List<MeasuredAttempt> attempts, AthleteMeasure measure) {
        List<Estimate> known = attempts.stream()
                .filter(attempt -> attempt.values().containsKey(measure))
                .map(attempt -> attempt.values().get(measure))
                .toList();
        if (known.isEmpty()) {
            return Optional.empty();
        }
        int n = known.size();
        double mean = known.stream().mapToDouble(Estimate::value).sum() / n;
        double squares = known.stream()
                .mapToDouble(e -> (e.value() - mean) * (e.value() - mean))
                .sum();
        double errors = known.stream().mapToDouble(e -> e.sd() * e.sd()).sum();
        double sd = n < 2 ? Double.NaN : Math.sqrt(squares / (n - 1));
        return Optional.of(new CompetitionMean(n, mean, sd, Math.sqrt(errors / n)));
    }
}
