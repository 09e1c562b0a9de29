package org.boardtopit.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.clips.Athlete;
import org.boardtopit.report.tables.AthleteMeasure;
import org.boardtopit.report.tables.AthleteRow;
import org.boardtopit.report.tables.AthleteRow.Spread;
import org.boardtopit.report.tables.AttemptRow;

/**
 * Makes the rows of athletes.csv of one competition, in the order of each athlete's first attempt.
 *
 * <p>Attempts belong to one athlete when they have the same bib, or the same name where there is no bib. Attempts with
 * neither are nobody's and are left out: a bare folder has no athletes.
 */
public final class AthleteTable {
    private final AthleteRegister register;
    private final Map<String, Group> groups = new LinkedHashMap<>();

    private static final class Group {
        private final String bib;
        private final String competition;
        private final List<MeasuredAttempt> attempts = new ArrayList<>();
        private String name;

        private Group(AttemptRow row) {
            this.bib = row.bib();
            this.name = row.athlete();
            this.competition = row.competition();
        }
    }

    public AthleteTable(AthleteRegister register) {
        this.register = register;
    }

    /** Adds an attempt; {@code attempt} is what is followed of it. */
    public void add(AttemptRow row, MeasuredAttempt attempt) {
        String bib = row.bib() == null ? "" : row.bib();
        String name = row.athlete() == null ? "" : row.athlete();
        if (bib.isEmpty() && name.isEmpty()) {
            return;
        }
        Group group = groups.computeIfAbsent(bib.isEmpty() ? "name " + name : "bib " + bib, key -> new Group(row));
        group.name = group.name == null || group.name.isEmpty() ? name : group.name;
        group.attempts.add(attempt);
    }

    public List<AthleteRow> rows() {
        return groups.values().stream().map(this::row).toList();
    }

    private AthleteRow row(Group group) {
        String bib = group.bib == null ? "" : group.bib;
        Optional<Athlete> athlete = register.find(bib, group.name);
        Integer born = register.showsBorn()
                        && athlete.isPresent()
                        && athlete.get().bornYear().isPresent()
                ? athlete.get().bornYear().getAsInt()
                : null;
        Optional<MeasuredAttempt> best = best(group.attempts);
        return new AthleteRow(
                athlete.map(Athlete::id).orElse(""),
                bib,
                group.name,
                born,
                group.competition,
                register.date().orElse(null),
                group.attempts.size(),
                (int) group.attempts.stream().filter(MeasuredAttempt::poor).count(),
                best.map(MeasuredAttempt::bestM).orElse(null),
                best.map(MeasuredAttempt::windMs).orElse(null),
                best.map(MeasuredAttempt::clip).orElse(null),
                spreads(group.attempts));
    }

    static Optional<MeasuredAttempt> best(List<MeasuredAttempt> attempts) {
        return attempts.stream()
                .filter(attempt -> Double.isFinite(attempt.bestM()))
                .max(Comparator.comparingDouble(MeasuredAttempt::bestM));
    }

    private static Map<AthleteMeasure, Spread> spreads(List<MeasuredAttempt> attempts) {
        Map<AthleteMeasure, Spread> spreads = new EnumMap<>(AthleteMeasure.class);
        for (AthleteMeasure measure : AthleteMeasure.values()) {
            CompetitionMean.of(attempts, measure)
                    .ifPresent(m -> spreads.put(measure, new Spread(m.mean(), m.sd(), null, null)));
        }
        return spreads;
    }
}
